import { type Chart, InputError } from '@halfhitch/core';
import { withSize } from './cells.js';
import { checkColour, checkSize } from './limits.js';

/** Rows run across, columns down; what can be done to one can be done to the other. */
export type Across = 'rows' | 'columns';

/**
 * Puts empty rows or columns in.
 *
 * @param at the line before which they go, from 0; the number of lines puts them last
 * @param colour that they are drawn in
 * @throws InputError when the chart would become too large
 */
export function inserted(
  chart: Chart,
  across: Across,
  at: number,
  many: number,
  colour: number,
): Chart {
  checkColour(chart, colour);
  checkLine(chart, across, at, chart[across]);
  return rebuilt(
    chart,
    across,
    [
      ...lines(0, at),
      ...new Array<number>(checkMany(chart, across, many)).fill(-1),
      ...lines(at, chart[across]),
    ],
    colour,
  );
}

/**
 * Takes rows or columns out.
 *
 * @throws InputError when none would be left
 */
export function deleted(chart: Chart, across: Across, at: number, many: number): Chart {
  checkLine(chart, across, at, chart[across] - 1);
  const end = Math.min(chart[across], at + many);
  if (end - at === chart[across]) {
    throw new InputError(
      `no-${across}-left`,
      `No ${across} would be left.`,
      { [across === 'rows' ? 'row' : 'column']: 1 },
      'A chart needs at least one knot: keep a row and a column.',
    );
  }
  return rebuilt(chart, across, [...lines(0, at), ...lines(end, chart[across])], 0);
}

/**
 * Draws rows or columns once more, right behind themselves.
 *
 * @throws InputError when the chart would become too large
 */
export function duplicated(chart: Chart, across: Across, at: number, many: number): Chart {
  checkLine(chart, across, at, chart[across] - 1);
  const end = Math.min(chart[across], at + many);
  checkMany(chart, across, end - at);
  return rebuilt(
    chart,
    across,
    [...lines(0, end), ...lines(at, end), ...lines(end, chart[across])],
    0,
  );
}

function checkLine(chart: Chart, across: Across, at: number, last: number): void {
  if (Number.isInteger(at) && at >= 0 && at <= last) return;
  const one = across === 'rows' ? 'row' : 'column';
  throw new InputError(
    'outside-chart',
    `There is no ${one} ${at + 1}.`,
    { [one]: at + 1 },
    `Choose one of ${across} 1 to ${chart[across]}.`,
  );
}

function checkMany(chart: Chart, across: Across, many: number): number {
  checkSize({ rows: chart.rows, columns: chart.columns, [across]: chart[across] + many });
  return many;
}

function lines(from: number, end: number): number[] {
  return Array.from({ length: end - from }, (_, i) => from + i);
}

/** The drawing made of some of its own lines; -1 stands for one in a plain colour. */
function rebuilt(chart: Chart, across: Across, order: readonly number[], colour: number): Chart {
  const { columns, cells } = chart;
  if (across === 'rows') {
    const next = new Uint8Array(order.length * columns).fill(colour);
    order.forEach((row, i) => {
      if (row >= 0) next.set(cells.subarray(row * columns, (row + 1) * columns), i * columns);
    });
    return withSize(chart, { rows: order.length, columns }, next);
  }
  const wide = order.length;
  const next = new Uint8Array(chart.rows * wide);
  for (let row = 0; row < chart.rows; row++) {
    for (let i = 0; i < wide; i++) {
      const column = order[i] as number;
      next[row * wide + i] = column < 0 ? colour : (cells[row * columns + column] as number);
    }
  }
  return withSize(chart, { rows: chart.rows, columns: wide }, next);
}
