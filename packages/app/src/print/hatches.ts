import type { Chart } from '@halfhitch/core';
import { nothing, svg, type TemplateResult } from 'lit';
import { MOST_BY_HATCH } from './chart-layout.js';

const INK = '#1a1a1a';

/** Draws a hatch into cells: path data for a box, mm. */
interface Hatch {
  /** Width of the line, mm; 0 for a filled shape. */
  readonly line: number;
  readonly draw: (x: number, y: number, width: number, height: number) => string;
}

/** Strokes between places of a cell, each from 0 to 1 across and down. */
function strokes(
  line: number,
  ...ends: readonly (readonly [number, number, number, number])[]
): Hatch {
  return {
    line,
    draw: (x, y, width, height) =>
      ends
        .map(
          ([x1, y1, x2, y2]) =>
            `M${short(x + x1 * width)} ${short(y + y1 * height)}L${short(x + x2 * width)} ${short(y + y2 * height)}`,
        )
        .join(''),
  };
}

/** Filled boxes in a cell: left, top, width and height, each from 0 to 1. */
function boxes(...of: readonly (readonly [number, number, number, number])[]): Hatch {
  return {
    line: 0,
    draw: (x, y, width, height) =>
      of
        .map(
          ([left, top, wide, high]) =>
            `M${short(x + left * width)} ${short(y + top * height)}h${short(wide * width)}v${short(high * height)}h${short(-wide * width)}z`,
        )
        .join(''),
  };
}

const level = (y: number) => [0, y, 1, y] as const;
const plumb = (x: number) => [x, 0, x, 1] as const;
const RISING = [
  [0, 1, 1, 0],
  [0, 0.5, 0.5, 0],
  [0.5, 1, 1, 0.5],
] as const;
const FALLING = [
  [0, 0, 1, 1],
  [0, 0.5, 0.5, 1],
  [0.5, 0, 1, 0.5],
] as const;
const dot = (x: number, y: number, side: number) =>
  [x - side / 2, y - side / 2, side, side] as const;

/**
 * From no ink to all of it, each unlike the others in more than its darkness. They are drawn cell
 * by cell: patterns to fill with become pictures of many megabytes in some printers' files.
 */
const HATCHES: readonly Hatch[] = [
  strokes(0),
  boxes(dot(0.5, 0.5, 0.2)),
  strokes(0.2, level(0.25), level(0.75)),
  strokes(0.2, plumb(0.25), plumb(0.75)),
  strokes(0.2, ...RISING),
  strokes(0.2, ...FALLING),
  boxes(
    dot(0.2, 0.2, 0.22),
    dot(0.8, 0.2, 0.22),
    dot(0.5, 0.5, 0.22),
    dot(0.2, 0.8, 0.22),
    dot(0.8, 0.8, 0.22),
  ),
  strokes(0.22, level(0.2), level(0.8), plumb(0.2), plumb(0.8)),
  strokes(0.22, ...RISING, ...FALLING),
  strokes(0.45, level(0.125), level(0.375), level(0.625), level(0.875)),
  boxes([0, 0, 0.5, 0.5], [0.5, 0.5, 0.5, 0.5]),
  boxes([0, 0, 1, 1]),
];

/** How one colour of the chart is marked on paper. */
export interface Marking {
  /** Place in the chart's colours. */
  readonly colour: number;
  /** Place in the hatches. */
  readonly hatch: number;
  readonly solid: boolean;
  /** Behind the hatch: the thread's colour, lightened so that the hatch is seen on it. */
  readonly tint: string;
}

/**
 * A hatch for each colour that is drawn, darker ones for darker threads, so that a print in black
 * and white still looks like the piece. Beyond twelve colours hatches come again.
 */
export function markingsOf({ colours, cells }: Chart): readonly Marking[] {
  const drawn = [...new Set(cells)].sort((one, other) => one - other);
  const byLight = drawn
    .map((colour) => ({ colour, light: lightOf(colours[colour]?.hex ?? '#808080') }))
    .sort((one, other) => other.light - one.light || one.colour - other.colour);
  const last = HATCHES.length - 1;
  const spread = byLight.length - 1;
  const found = byLight.map(({ colour }, i): Marking => {
    const hatch =
      byLight.length > MOST_BY_HATCH
        ? i % HATCHES.length
        : spread === 0
          ? 0
          : Math.round((i * last) / spread);
    return {
      colour,
      hatch,
      solid: hatch === last,
      tint: tintOf(colours[colour]?.hex ?? '#808080'),
    };
  });
  return found.sort((one, other) => one.colour - other.colour);
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A hatch drawn into cells, all of them in one path; mm. */
export function hatched(hatch: number, cells: readonly Box[]): TemplateResult | typeof nothing {
  const { line, draw } = HATCHES[hatch] ?? (HATCHES[0] as Hatch);
  const d = cells.map(({ x, y, width, height }) => draw(x, y, width, height)).join('');
  if (d === '') return nothing;
  return line === 0
    ? svg`<path class="hatch-${hatch}" d=${d} fill=${INK} />`
    : svg`<path class="hatch-${hatch}" d=${d} fill="none" stroke=${INK} stroke-width=${line} />`;
}

/** A length with no more decimals than a printer can tell. */
export function short(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}

/** Relative luminance (WCAG 2.2). */
function lightOf(hex: string): number {
  const [red, green, blue] = channelsOf(hex).map((byte) => {
    const share = byte / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function tintOf(hex: string): string {
  const mixed = channelsOf(hex).map((byte) => Math.round(byte * 0.4 + 255 * 0.6));
  return `#${mixed.map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}

function channelsOf(hex: string): number[] {
  return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
}
