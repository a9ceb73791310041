import type { Chart } from '@halfhitch/core';
import type { Place } from './place.js';

/**
 * The patch of one colour that a knot is in: all that can be gone to from it by the side, never
 * over a corner, without leaving its colour. Each cell as it stands in `Chart.cells`.
 */
export function fillCells(
  { rows, columns, cells }: Pick<Chart, 'rows' | 'columns' | 'cells'>,
  { row, column }: Place,
): Uint32Array {
  const start = row * columns + column;
  const colour = cells[start];
  const reached = new Uint8Array(cells.length);
  // Each cell is put in once, so the list of those reached is the list of those still to look at.
  const patch = new Uint32Array(cells.length);
  patch[0] = start;
  reached[start] = 1;
  let many = 1;
  const reach = (at: number): void => {
    if (reached[at] === 1 || cells[at] !== colour) return;
    reached[at] = 1;
    patch[many++] = at;
  };
  for (let next = 0; next < many; next++) {
    const at = patch[next] as number;
    const across = at % columns;
    if (across > 0) reach(at - 1);
    if (across + 1 < columns) reach(at + 1);
    if (at >= columns) reach(at - columns);
    if (at + columns < rows * columns) reach(at + columns);
  }
  return patch.slice(0, many);
}
