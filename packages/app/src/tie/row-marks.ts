import type { Chart } from '@halfhitch/core';
import { directionOf } from '@halfhitch/core';
import type { KnotChoice } from '../work/messages.js';

/** What has become of what is tied, since it was tied. */
export type Drift =
  | { readonly what: 'none' }
  /** The drawing has another number of columns, so that a count of knots is another place. */
  | { readonly what: 'columns'; readonly was: number; readonly now: number }
  /** A row that is tied is drawn otherwise, or knotted otherwise; from 0. */
  | { readonly what: 'row'; readonly row: number };

type Drawn = Pick<Chart, 'rows' | 'columns' | 'colours' | 'cells'>;

/**
 * A mark of each row in which knots are tied, by their colours and the way of the row; of the
 * last row, by the knots that are tied of it. Rows that the chart does not have are left out.
 */
export function rowMarks(chart: Drawn, choice: KnotChoice, done: number): Uint32Array {
  const { rows, columns } = chart;
  const marks = new Uint32Array(Math.min(rows, Math.ceil(done / columns)));
  for (let row = 0; row < marks.length; row++) {
    marks[row] = rowMark(chart, choice, row, Math.min(columns, done - row * columns));
  }
  return marks;
}

/** The same, where only the last knots are new: the marks of the rows before it are kept. */
export function goneOn(
  marks: Uint32Array,
  chart: Drawn,
  choice: KnotChoice,
  from: number,
  to: number,
): Uint32Array {
  const { rows, columns } = chart;
  const first = Math.floor(Math.min(from, to) / columns);
  const next = new Uint32Array(Math.min(rows, Math.ceil(to / columns)));
  next.set(marks.subarray(0, Math.min(first, next.length)));
  for (let row = first; row < next.length; row++) {
    next[row] = rowMark(chart, choice, row, Math.min(columns, to - row * columns));
  }
  return next;
}

/** What of a piece with `done` knots is no longer as it was tied. */
export function driftOf(
  tied: { readonly done: number; readonly columns: number; readonly marks: Uint32Array },
  chart: Drawn,
  choice: KnotChoice,
): Drift {
  const { done, columns, marks } = tied;
  if (done === 0) return { what: 'none' };
  if (columns !== chart.columns) return { what: 'columns', was: columns, now: chart.columns };
  const now = rowMarks(chart, choice, done);
  const rows = Math.ceil(done / columns);
  for (let row = 0; row < rows; row++) {
    if (now[row] === undefined || now[row] !== marks[row]) return { what: 'row', row };
  }
  return { what: 'none' };
}

/** The 32-bit FNV-1a hash (Fowler, Noll and Vo) of the way of a row and its colours. */
function rowMark(chart: Drawn, choice: KnotChoice, row: number, knots: number): number {
  const { columns, colours, cells } = chart;
  const rightwards = directionOf(choice.start, row) === 'right';
  let mark = 0x811c9dc5;
  const take = (byte: number): void => {
    mark = Math.imul(mark ^ byte, 0x01000193);
  };
  take(rightwards ? 1 : 2);
  take(choice.edge === 'straight' ? 1 : 2);
  for (let order = 0; order < knots; order++) {
    const column = rightwards ? order : columns - 1 - order;
    const rgb = Number.parseInt(
      (colours[cells[row * columns + column] ?? 0]?.hex ?? '#0').slice(1),
      16,
    );
    take(rgb >>> 16);
    take((rgb >>> 8) & 255);
    take(rgb & 255);
  }
  return mark >>> 0;
}
