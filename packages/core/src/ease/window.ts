import type { Chart } from '../chart/chart.js';
import type { Stints } from './stints.js';
import type { CellEdit } from './suggestion.js';

/**
 * The rows that are knotted otherwise when some cells change: those of the cells, and as far up
 * and down as the leads concerned come from and next go to. The first is even, so that the rows
 * run the same way in a chart of their own.
 */
export function rowsTouched(
  chart: Chart,
  stints: Stints,
  edits: readonly CellEdit[],
): { readonly first: number; readonly end: number } {
  const { rows, columns, cells } = chart;
  const upper = Math.max(0, (edits[0]?.row ?? 0) - 1);
  const lower = Math.min(rows, (edits.at(-1)?.row ?? 0) + 2);
  const colours = new Set<number>();
  for (const { row, column, from, to } of edits) {
    colours.add(from).add(to);
    const order = stints.columnOf(row * columns) === 0 ? column : columns - 1 - column;
    const knot = row * columns + order;
    if (knot > 0) colours.add(cells[stints.cellOf(knot - 1)] as number);
    if (knot + 1 < stints.knots) colours.add(cells[stints.cellOf(knot + 1)] as number);
  }
  let first = upper;
  let end = lower;
  const above = new Set(colours);
  for (let row = upper; row >= 0 && above.size > 0; row--) {
    if (foundIn(cells, row, columns, above)) first = row;
  }
  const below = new Set(colours);
  for (let row = lower - 1; row < rows && below.size > 0; row++) {
    if (foundIn(cells, row, columns, below)) end = row + 1;
  }
  // The lead in the last knot of a row rests according to the knot after it.
  return { first: first - (first % 2), end: Math.min(rows, end + 1) };
}

/** Takes the colours that the row has out of the set; says whether there were any. */
function foundIn(cells: Uint8Array, row: number, columns: number, colours: Set<number>): boolean {
  const size = colours.size;
  for (let at = row * columns; at < (row + 1) * columns; at++) colours.delete(cells[at] as number);
  return colours.size < size;
}
