import type { Chart } from '../chart/chart.js';

/** A drawing as it is, or its mirror image: left and right, top and bottom, or both exchanged. */
export type Mirroring = 'as-drawn' | 'left-right' | 'upside-down' | 'half-turn';

export const MIRRORINGS: readonly Mirroring[] = [
  'as-drawn',
  'left-right',
  'upside-down',
  'half-turn',
];

/**
 * A chart's drawing, mirrored. Kinds of knots that were worked out by hand belong to places in the
 * drawing as it was, so they are left out.
 */
export function mirroredChart(chart: Chart, mirroring: Mirroring): Chart {
  if (mirroring === 'as-drawn') return chart;
  const { knots: _, ...drawing } = chart;
  const { rows, columns } = chart;
  const cells = new Uint8Array(chart.cells.length);
  for (let row = 0; row < rows; row++) {
    const from = mirroring === 'left-right' ? row : rows - 1 - row;
    const line = chart.cells.slice(from * columns, (from + 1) * columns);
    cells.set(mirroring === 'upside-down' ? line : line.reverse(), row * columns);
  }
  return { ...drawing, cells };
}
