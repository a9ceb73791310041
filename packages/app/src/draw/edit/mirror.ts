import type { Chart } from '@halfhitch/core';
import { type Area, wholeOf } from './area.js';
import { withCells } from './cells.js';
import { checkArea } from './limits.js';

/** `sides`: left and right change places. `ends`: top and bottom do. `turn`: both. */
export type Mirroring = 'sides' | 'ends' | 'turn';

/**
 * The drawing with an area mirrored or turned in its place.
 *
 * @throws InputError when the area goes over the side
 */
export function mirrored(chart: Chart, way: Mirroring, area: Area = wholeOf(chart)): Chart {
  checkArea(chart, area);
  const { columns } = chart;
  const cells = chart.cells.slice();
  for (let down = 0; down < area.rows; down++) {
    const fromDown = way === 'sides' ? down : area.rows - 1 - down;
    const to = (area.row + down) * columns + area.column;
    const from = (area.row + fromDown) * columns + area.column;
    for (let across = 0; across < area.columns; across++) {
      const fromAcross = way === 'ends' ? across : area.columns - 1 - across;
      cells[to + across] = chart.cells[from + fromAcross] as number;
    }
  }
  return withCells(chart, cells);
}
