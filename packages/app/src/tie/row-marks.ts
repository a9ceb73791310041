import { type Chart, directionOf, EDGE_TECHNIQUES } from '@halfhitch/core';
import type { KnotChoice } from '../work/messages.js';

/** What has become of what is tied, since it was tied. */
export type Drift =
  | { readonly what: 'none' }
  /** The drawing has another width, so that a count of knots is another place. */
  | { readonly what: 'columns'; readonly was: number; readonly now: number }
  /** A row that is tied is drawn otherwise, or knotted otherwise; from 0. */
  | { readonly what: 'row'; readonly row: number };

/** The rows of a piece as knots are counted in them, and how each is drawn. */
export interface TiedRows {
  readonly rows: number;
  /** Knots in a row of alpha work; strings of diagonal work. */
  readonly columns: number;
  /** Knots in all. */
  readonly total: number;
  /** Knots before a row. */
  before(row: number): number;
  /** How many rows the first so many knots lie in; more than there are when there are fewer knots. */
  rowsOf(done: number): number;
  /** A mark of the first so many knots of a row, as they are drawn. */
  mark(row: number, knots: number): number;
}

/**
 * A mark of each row in which knots are tied; of the last row, by the knots that are tied of it.
 * Rows that the piece does not have are left out.
 */
export function rowMarks(work: TiedRows, done: number): Uint32Array {
  return goneOn(new Uint32Array(), work, 0, done);
}

/** The same, where only the last knots are new: the marks of the rows before it are kept. */
export function goneOn(marks: Uint32Array, work: TiedRows, from: number, to: number): Uint32Array {
  const least = Math.min(from, to);
  const first = least === 0 ? 0 : Math.max(0, work.rowsOf(least + 1) - 1);
  const next = new Uint32Array(Math.min(work.rows, work.rowsOf(to)));
  next.set(marks.subarray(0, Math.min(first, next.length)));
  for (let row = Math.min(first, marks.length); row < next.length; row++) {
    const whole = work.before(row + 1) - work.before(row);
    next[row] = work.mark(row, Math.min(whole, to - work.before(row)));
  }
  return next;
}

/** What of a piece with `done` knots is no longer as it was tied. */
export function driftOf(
  tied: { readonly done: number; readonly columns: number; readonly marks: Uint32Array },
  work: TiedRows,
): Drift {
  const { done, columns, marks } = tied;
  if (done === 0) return { what: 'none' };
  if (columns !== work.columns) return { what: 'columns', was: columns, now: work.columns };
  const now = rowMarks(work, done);
  const rows = work.rowsOf(done);
  for (let row = 0; row < rows; row++) {
    if (now[row] === undefined || now[row] !== marks[row]) return { what: 'row', row };
  }
  return { what: 'none' };
}

/** The 32-bit FNV-1a hash (Fowler, Noll and Vo) of what is taken one byte after another. */
export class MarkHash {
  private mark = 0x811c9dc5;

  take(byte: number): void {
    this.mark = Math.imul(this.mark ^ (byte & 255), 0x01000193);
  }

  /** A colour as `#rrggbb`. */
  takeColour(hex: string): void {
    const rgb = Number.parseInt(hex.slice(1), 16);
    this.take(rgb >>> 16);
    this.take(rgb >>> 8);
    this.take(rgb);
  }

  get value(): number {
    return this.mark >>> 0;
  }
}

type Drawn = Pick<Chart, 'rows' | 'columns' | 'colours' | 'cells'>;

/** The rows of alpha work, marked by the way of each and its colours. */
export class AlphaRows implements TiedRows {
  readonly rows: number;
  readonly columns: number;
  readonly total: number;

  constructor(
    private readonly chart: Drawn,
    private readonly choice: KnotChoice,
  ) {
    this.rows = chart.rows;
    this.columns = chart.columns;
    this.total = chart.rows * chart.columns;
  }

  before(row: number): number {
    return row * this.columns;
  }

  rowsOf(done: number): number {
    return Math.ceil(done / this.columns);
  }

  mark(row: number, knots: number): number {
    const { columns, colours, cells } = this.chart;
    const rightwards = directionOf(this.choice.start, row) === 'right';
    const hash = new MarkHash();
    hash.take(rightwards ? 1 : 2);
    hash.take(1 + EDGE_TECHNIQUES.indexOf(this.choice.edge));
    for (let order = 0; order < knots; order++) {
      const column = rightwards ? order : columns - 1 - order;
      hash.takeColour(colours[cells[row * columns + column] ?? 0]?.hex ?? '#0');
    }
    return hash.value;
  }
}
