import { InputError } from '../errors.js';
import { KNOT_KINDS } from '../model/knot.js';
import { CHART_LIMITS, type Chart } from './chart.js';

/**
 * Charts from files are within the limits; one that another program has put together may be anything.
 *
 * @throws InputError when a chart is outside the limits, or its cells are not as many as its size
 * says or not in its legend
 */
export function checkChart({ rows, columns, colours, cells, knots }: Chart): void {
  const { minRows, maxRows, minColumns, maxColumns, minColours, maxColours } = CHART_LIMITS;
  checkCount('rows', rows, minRows, maxRows);
  checkCount('columns', columns, minColumns, maxColumns);
  checkCount('colours', colours.length, minColours, maxColours);
  checkEntries('The chart', cells, rows, columns, colours.length);
  if (knots !== undefined) {
    checkEntries('The list of knots', knots, rows, columns, KNOT_KINDS.length);
  }
}

/** @throws InputError when there are too few or too many of something, or no whole number of it */
export function checkCount(what: string, count: number, least: number, most: number): void {
  if (Number.isInteger(count) && count >= least && count <= most) return;
  throw new InputError(
    'out-of-range',
    `The number of ${what} is ${String(count)}.`,
    {},
    `Give a whole number from ${least} to ${most}.`,
  );
}

function checkEntries(
  what: string,
  entries: Uint8Array,
  rows: number,
  columns: number,
  end: number,
): void {
  if (entries.length !== rows * columns) {
    throw new InputError(
      'cells-size',
      `${what} has ${entries.length} entries; ${rows} rows of ${columns} need ${rows * columns}.`,
      {},
      'Give one for each knot, row by row.',
    );
  }
  for (let i = 0; i < entries.length; i++) {
    if ((entries[i] as number) < end) continue;
    throw new InputError(
      'unknown-entry',
      `The entry is ${entries[i]}, but there are only ${end} to choose from.`,
      { row: Math.floor(i / columns) + 1, column: (i % columns) + 1 },
      `Give a whole number from 0 to ${end - 1}.`,
    );
  }
}
