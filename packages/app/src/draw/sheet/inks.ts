/** The page's own colours, for what is drawn on a canvas. */
export interface Inks {
  readonly ink: string;
  readonly soft: string;
  readonly card: string;
  readonly ground: string;
  readonly lake: string;
  readonly buoy: string;
}

const NAMES = ['ink', 'soft', 'card', 'ground', 'lake', 'buoy'] as const;

/** What a reader of few colours has chosen in the system stands instead of the page's own. */
const FORCED: Inks = {
  ink: 'CanvasText',
  soft: 'CanvasText',
  card: 'Canvas',
  ground: 'Canvas',
  lake: 'Highlight',
  buoy: 'CanvasText',
};

/** As they are now; a canvas knows no variables and no `light-dark()`. */
export function inksOf(element: HTMLElement): Inks {
  if (matchMedia('(forced-colors: active)').matches) return FORCED;
  const probe = document.createElement('span');
  element.append(probe);
  const entries = NAMES.map((name) => {
    probe.style.color = `var(--${name})`;
    return [name, getComputedStyle(probe).color];
  });
  probe.remove();
  return Object.fromEntries(entries) as unknown as Inks;
}

/** Whether white shows better on a colour than black: relative luminance as WCAG 2 has it. */
export function isDark(hex: string): boolean {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b < 0.179;
}
