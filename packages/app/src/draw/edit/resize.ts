import type { Chart } from '@halfhitch/core';
import { withSize } from './cells.js';
import { checkColour, checkSize } from './limits.js';
import type { Size } from './place.js';

/** Which part of the drawing stays where it is when the chart grows or shrinks. */
export interface Anchor {
  readonly down: 'top' | 'middle' | 'bottom';
  readonly across: 'left' | 'middle' | 'right';
}

const TOP_LEFT: Anchor = { down: 'top', across: 'left' };

/**
 * The drawing in another size: cut off where it shrinks, with plain knots where it grows.
 *
 * @param ground colour of the new knots
 * @throws InputError when a chart can't be so large
 */
export function resized(chart: Chart, size: Size, ground: number, anchor = TOP_LEFT): Chart {
  checkSize(size);
  checkColour(chart, ground);
  const above = shift(size.rows - chart.rows, anchor.down, 'top', 'bottom');
  const left = shift(size.columns - chart.columns, anchor.across, 'left', 'right');
  const cells = new Uint8Array(size.rows * size.columns).fill(ground);
  const first = Math.max(0, left);
  const end = Math.min(size.columns, left + chart.columns);
  for (let row = Math.max(0, above); row < Math.min(size.rows, above + chart.rows); row++) {
    const from = (row - above) * chart.columns - left;
    cells.set(chart.cells.subarray(from + first, from + end), row * size.columns + first);
  }
  return withSize(chart, size, cells);
}

/** How far the drawing moves, by what is added in all. */
function shift(added: number, kept: string, start: string, end: string): number {
  if (kept === start) return 0;
  return kept === end ? added : Math.trunc(added / 2);
}
