import {
  type Color,
  converter,
  differenceCiede2000,
  formatHex,
  type Lab65,
  type Oklab as LibraryOklab,
  modeLab65,
  modeLrgb,
  modeOklab,
  modeRgb,
  modeXyz65,
  parseHex,
  type Rgb,
  useMode,
  wcagContrast,
} from 'culori/fn';

// The library knows only the spaces that it is told of, so that no other comes into the bundle.
useMode(modeRgb);
useMode(modeLrgb);
useMode(modeXyz65);
useMode(modeOklab);
useMode(modeLab65);

const toOklab = converter('oklab');
const toLab = converter('lab65');
const difference = differenceCiede2000();

/** Lightness from 0 to 1; a and b, about -0.4 to 0.4 (Ottosson 2020). */
export interface Oklab {
  readonly l: number;
  readonly a: number;
  readonly b: number;
}

/** CIELAB under D65: lightness from 0 to 100; a and b, about -128 to 128. */
export interface Cielab {
  readonly l: number;
  readonly a: number;
  readonly b: number;
}

/** Lab under D65 and OKLab are made of sRGB; `hex` is `#rrggbb` or `#rgb` in any case. */
export function oklabOf(hex: string): Oklab {
  return bare(toOklab(rgbOf(hex)));
}

/** OKLab of linear sRGB, each channel from 0 to 1. */
export function oklabOfLinear(r: number, g: number, b: number): Oklab {
  return bare(toOklab({ mode: 'lrgb', r, g, b }));
}

/** OKLab of CIE XYZ under D65, where the white's Y is 1. */
export function oklabOfXyz(x: number, y: number, z: number): Oklab {
  return bare(toOklab({ mode: 'xyz65', x, y, z }));
}

/** The nearest `#rrggbb`: what lies outside sRGB is cut off channel by channel. */
export function hexOfOklab({ l, a, b }: Oklab): string {
  return formatHex({ mode: 'oklab', l, a, b } satisfies LibraryOklab);
}

export function cielabOf(hex: string): Cielab {
  return bare(toLab(rgbOf(hex)));
}

/** The colour difference CIEDE2000 (CIE 142-2001), with all weights 1. */
export function ciede2000(one: Cielab, other: Cielab): number {
  return difference(
    { mode: 'lab65', ...one } satisfies Lab65,
    { mode: 'lab65', ...other } satisfies Lab65,
  );
}

/** Contrast by WCAG 2: 1 for equal colours to 21 for black on white. */
export function contrast(one: string, other: string): number {
  return wcagContrast(rgbOf(one), rgbOf(other));
}

/** @throws RangeError when it is no colour of three or six digits */
export function rgbOf(hex: string): Rgb {
  const colour = /^#(?:[0-9a-f]{3}|[0-9a-f]{6})$/i.test(hex) ? parseHex(hex) : undefined;
  if (colour === undefined) throw new RangeError(`"${hex.slice(0, 20)}" is no colour.`);
  return colour;
}

function bare({ l, a, b }: Extract<Color, { l: number; a: number }>): Oklab {
  return { l, a, b };
}
