import { type Chart, InputError } from '@halfhitch/core';
import { withSize } from './cells.js';
import { checkSize } from './limits.js';

/**
 * The drawing again and again, below itself and beside itself.
 *
 * @param down how many times its length the chart becomes
 * @param across how many times its width
 * @throws InputError when the chart would become too large
 */
export function repeatedDrawing(chart: Chart, down: number, across = 1): Chart {
  for (const times of [down, across]) {
    if (Number.isInteger(times) && times >= 1) continue;
    throw new InputError(
      'repeat-times',
      `A drawing cannot be there ${times} times.`,
      {},
      'Give a whole number from 1.',
    );
  }
  const size = { rows: chart.rows * down, columns: chart.columns * across };
  checkSize(size);
  const cells = new Uint8Array(size.rows * size.columns);
  for (let row = 0; row < size.rows; row++) {
    const from = (row % chart.rows) * chart.columns;
    const drawn = chart.cells.subarray(from, from + chart.columns);
    for (let i = 0; i < across; i++) cells.set(drawn, row * size.columns + i * chart.columns);
  }
  return withSize(chart, size, cells);
}
