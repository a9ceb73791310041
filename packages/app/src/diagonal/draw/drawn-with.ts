import { ANY_COLOUR, BARE, type ChartColour, NO_KNOT } from '@halfhitch/core';
import { type Ink, kindInk, plainInk } from '../edit/ink.js';
import { cellInWords, kindInWords } from '../lattice/words.js';

/** Whether colours are drawn, for which knots are then found, or the knots. */
export type DrawMode = 'picture' | 'knots';

/** What a pattern is drawn with. */
export interface DrawnWith {
  readonly mode: DrawMode;
  /** In pictures: a colour, ANY_COLOUR or BARE. */
  readonly cell: number;
  /** In knots: a kind or NO_KNOT. */
  readonly kind: number;
}

export function inkOf({ mode, cell, kind }: DrawnWith): Ink {
  return mode === 'picture' ? plainInk(cell) : kindInk(kind);
}

/** With what a place of the pattern is. */
export function picked(before: DrawnWith, byte: number): DrawnWith {
  return before.mode === 'picture' ? { ...before, cell: byte } : { ...before, kind: byte };
}

/** With what a key stands for; null for a key that stands for nothing. */
export function byKey(
  before: DrawnWith,
  key: string,
  colours: readonly ChartColour[],
): DrawnWith | null {
  if (before.mode === 'knots') {
    if (!/^[0-4]$/.test(key)) return null;
    return { ...before, kind: key === '0' ? NO_KNOT : Number(key) - 1 };
  }
  if (key === 'a') return { ...before, cell: ANY_COLOUR };
  if (key === '0') return { ...before, cell: BARE };
  if (!/^[1-9]$/.test(key) || Number(key) > colours.length) return null;
  return { ...before, cell: Number(key) - 1 };
}

/** With a colour that is still there. */
export function withinColours(before: DrawnWith, colours: readonly ChartColour[]): DrawnWith {
  const { cell } = before;
  const last = colours.length - 1;
  return cell <= last || cell === ANY_COLOUR || cell === BARE ? before : { ...before, cell: last };
}

export function drawnWithInWords(
  { mode, cell, kind }: DrawnWith,
  colours: readonly ChartColour[],
): string {
  return `Drawing with ${mode === 'picture' ? cellInWords(colours, cell) : kindInWords(kind)}.`;
}
