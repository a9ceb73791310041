import { Ink } from './ink.js';

export const BORDER_COLOUR = 2;

/** Borders, drawn by us, as they stand above the text; below it they are mirrored. */
const PATTERNS = {
  line: ['#'],
  'two lines': ['#', '.', '#'],
  dashes: ['####..'],
  stripes: ['##..', '.##.', '..##'],
  wave: ['.##...', '#..#..', '....##'],
  pennants: ['######', '#####.', '.###..', '..#...'],
  oars: ['.###..........', '############..', '.###..........'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type BorderKind = 'none' | keyof typeof PATTERNS;

export const BORDERS: readonly BorderKind[] = [
  'none',
  ...(Object.keys(PATTERNS) as (keyof typeof PATTERNS)[]),
];

/** Of these a part of one would look like a slip: only whole ones are drawn, in the middle. */
const WHOLE: ReadonlySet<BorderKind> = new Set(['dashes', 'pennants', 'oars']);

/** Rows that a border takes on each side, the gap to the text not counted. */
export function borderDepth(kind: BorderKind): number {
  return kind === 'none' ? 0 : PATTERNS[kind].length;
}

/**
 * Draws a border inside the edges of a drawing: above and below what is read from left to right,
 * or all the way round.
 */
export function drawBorder(ink: Ink, kind: BorderKind, sides: 'two' | 'round'): void {
  if (kind === 'none') return;
  const { width, height } = ink;
  const depth = borderDepth(kind);
  if (sides === 'two') {
    const strip = stripOf(kind, width);
    ink.stamp(strip, 0, 0);
    ink.stamp(mirrored(strip), 0, height - depth);
    return;
  }
  if (kind === 'line' || kind === 'two lines') {
    drawFrames(ink, PATTERNS[kind]);
    return;
  }
  // Patterns don't go round corners: a solid block stands there.
  const across = stripOf(kind, Math.max(0, width - 2 * depth - 2));
  const along = stripOf(kind, Math.max(0, height - 2 * depth - 2));
  ink.stamp(across, depth + 1, 0);
  ink.stamp(mirrored(across), depth + 1, height - depth);
  ink.stamp(along.turned('upwards'), 0, depth + 1);
  ink.stamp(along.turned('downwards'), width - depth, depth + 1);
  for (const left of [0, width - depth]) {
    for (const top of [0, height - depth]) fill(ink, left, top, depth, depth);
  }
}

/** Frames one inside the other, for each row of the pattern that has ink. */
function drawFrames(ink: Ink, pattern: readonly string[]): void {
  const { width, height } = ink;
  for (const [inset, row] of pattern.entries()) {
    if (row !== '#') continue;
    const [wide, high] = [width - 2 * inset, height - 2 * inset];
    fill(ink, inset, inset, wide, 1);
    fill(ink, inset, height - 1 - inset, wide, 1);
    fill(ink, inset, inset, 1, high);
    fill(ink, width - 1 - inset, inset, 1, high);
  }
}

function stripOf(kind: Exclude<BorderKind, 'none'>, length: number): Ink {
  const pattern: readonly string[] = PATTERNS[kind];
  const period = pattern[0]?.length ?? 1;
  const strip = new Ink(length, pattern.length);
  // The gap after the last of whole ones is not needed.
  const broken = pattern.filter((row) => row.includes('.'));
  const used = Math.max(...broken.map((row) => row.lastIndexOf('#'))) + 1;
  const count = WHOLE.has(kind) ? Math.floor((length + period - used) / period) : 0;
  const taken = WHOLE.has(kind) ? count * period - (period - used) : length;
  const left = Math.floor((length - taken) / 2);
  for (const [y, row] of pattern.entries()) {
    // A pennant's line goes on where no whole pennant fits.
    const solid = !row.includes('.');
    for (let x = 0; x < length; x++) {
      const inside = x >= left && x < left + taken;
      if (solid || (inside && row[(x - left) % period] === '#')) strip.put(x, y, BORDER_COLOUR);
    }
  }
  return strip;
}

function mirrored(strip: Ink): Ink {
  const mirror = new Ink(strip.width, strip.height);
  for (let y = 0; y < strip.height; y++) {
    for (let x = 0; x < strip.width; x++) mirror.put(x, strip.height - 1 - y, strip.at(x, y));
  }
  return mirror;
}

function fill(ink: Ink, left: number, top: number, width: number, height: number): void {
  for (let y = top; y < top + height; y++) {
    for (let x = left; x < left + width; x++) ink.put(x, y, BORDER_COLOUR);
  }
}
