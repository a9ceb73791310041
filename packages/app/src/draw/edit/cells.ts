import type { Chart } from '@halfhitch/core';
import type { Size } from './place.js';

/**
 * Places of cells, each as row x columns + column, which is where it stands in `Chart.cells`. May
 * hold one twice.
 */
export type CellList = readonly number[] | Uint32Array | ReadonlySet<number>;

/**
 * The chart with other colours in some of its cells; the very same chart when none differs, so
 * that what changes nothing need not be undone. `cells` is kept: don't change it afterwards.
 */
export function withCells(chart: Chart, cells: Uint8Array): Chart {
  for (let at = 0; at < cells.length; at++) {
    if (cells[at] !== chart.cells[at]) return { ...chart, cells };
  }
  return chart;
}

/** The drawing in another size. Knot kinds worked out by hand no longer fit it and are left out. */
export function withSize(chart: Chart, { rows, columns }: Size, cells: Uint8Array): Chart {
  if (rows === chart.rows && columns === chart.columns) return withCells(chart, cells);
  const { knots: _, ...drawing } = chart;
  return { ...drawing, rows, columns, cells };
}

/** Paints cells in one colour. */
export function paint(chart: Chart, list: CellList, colour: number): Chart {
  const cells = chart.cells.slice();
  for (const at of list) cells[at] = colour;
  return withCells(chart, cells);
}
