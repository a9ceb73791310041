import type { Chart } from '../chart/chart.js';

/**
 * A drawing as it is, turned half round, or its mirror image: left and right, or top and bottom
 * exchanged. Letters that are turned stand on their heads and read aright the other way up;
 * mirrored ones never do.
 */
export type Mirroring = 'as-drawn' | 'half-turn' | 'left-right' | 'upside-down';

/** What harms a drawing least comes first. */
export const MIRRORINGS: readonly Mirroring[] = [
  'as-drawn',
  'half-turn',
  'left-right',
  'upside-down',
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
