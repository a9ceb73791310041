interface Oklch {
  readonly lightness: number;
  readonly chroma: number;
  /** Degrees, 0 to 360. */
  readonly hue: number;
}

/**
 * A plain word or two for each colour, such as "dark blue", so that no colour is told by its look
 * alone; colours that would get the same words are numbered.
 *
 * @param hexes `#rrggbb`
 */
export function nameColours(hexes: readonly string[]): string[] {
  const names = hexes.map(nameColour);
  const counts = new Map<string, number>();
  return names.map((name) => {
    if (names.indexOf(name) === names.lastIndexOf(name)) return name;
    const count = (counts.get(name) ?? 0) + 1;
    counts.set(name, count);
    return `${name} ${count}`;
  });
}

function nameColour(hex: string): string {
  const { lightness, chroma, hue } = oklch(hex);
  if (chroma < 0.03) return nameGrey(lightness);
  if (lightness < 0.17) return 'black';
  // Brown is dark orange, olive is dark yellow and pink is light red: words of their own.
  if (hue >= 40 && hue < 95 && lightness < 0.6) return lightness < 0.38 ? 'dark brown' : 'brown';
  if (hue >= 95 && hue < 122 && lightness < 0.65) return 'olive';
  if ((hue >= 340 || hue < 40) && lightness > 0.72) return 'pink';
  if (hue >= 55 && hue < 100 && chroma < 0.09) return lightness > 0.88 ? 'cream' : 'sand';
  if (hue >= 80 && hue < 122) return lightness > 0.93 ? 'light yellow' : 'yellow';
  if (lightness < 0.42) return `dark ${nameHue(hue)}`;
  return lightness > 0.8 && chroma < 0.16 ? `light ${nameHue(hue)}` : nameHue(hue);
}

function nameGrey(lightness: number): string {
  if (lightness < 0.2) return 'black';
  if (lightness < 0.48) return 'dark grey';
  if (lightness < 0.75) return 'grey';
  return lightness < 0.95 ? 'light grey' : 'white';
}

function nameHue(hue: number): string {
  if (hue < 40) return 'red';
  if (hue < 80) return 'orange';
  if (hue < 122) return 'yellow';
  if (hue < 168) return 'green';
  if (hue < 215) return 'turquoise';
  if (hue < 282) return 'blue';
  if (hue < 320) return 'violet';
  return hue < 350 ? 'magenta' : 'red';
}

/** OKLab in polar form, by the formulas of B. Ottosson, "A perceptual color space", 2020. */
export function oklch(hex: string): Oklch {
  const channel = (at: number): number => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  const [r, g, b] = [channel(1), channel(3), channel(5)];
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  const lightness = 0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s;
  const a = 1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s;
  const yellow = 0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s;
  return {
    lightness,
    chroma: Math.hypot(a, yellow),
    hue: ((Math.atan2(yellow, a) * 180) / Math.PI + 360) % 360,
  };
}
