import type { Comparison } from './comparison.js';
import type { Change, Piece, Workshop } from './piece.js';

/** How a piece differs from what was seen. */
export interface Tally {
  /** Things that differ, in all rows. */
  readonly total: number;
  /** The first row with a difference, and how far in it; `Infinity` when there is none. */
  readonly row: number;
  readonly order: number;
  /** The same for pieces that look the same as far as was looked. */
  readonly key: string;
}

/** Tallies a piece and those that differ from it by one change, looking only at what changed. */
export class Tallier {
  private readonly counts: Int32Array;
  private readonly firsts: Int32Array;
  private readonly hashes: Int32Array;
  private readonly hash = new Int32Array(2);
  private sumOne = 0;
  private sumTwo = 0;
  readonly own: Tally;

  /** @param from rows before this one are no longer asked about */
  constructor(
    private readonly workshop: Workshop,
    private readonly comparison: Comparison,
    private readonly piece: Piece,
    private readonly from: number,
  ) {
    const { rows } = comparison.seen;
    this.counts = new Int32Array(rows);
    this.firsts = new Int32Array(rows);
    this.hashes = new Int32Array(2 * rows);
    let total = 0;
    let first = Number.POSITIVE_INFINITY;
    for (let row = 0; row < rows; row++) {
      const [count, order] = this.rowOf(row, piece.tied.length);
      this.counts[row] = count;
      this.firsts[row] = order;
      this.hashes[2 * row] = this.hash[0] as number;
      this.hashes[2 * row + 1] = this.hash[1] as number;
      this.sumOne = (this.sumOne + (this.hash[0] as number)) | 0;
      this.sumTwo = (this.sumTwo + (this.hash[1] as number)) | 0;
      total += count;
      if (count > 0 && row >= from && row < first) first = row;
    }
    this.own = {
      total,
      row: first,
      order: first < rows ? (this.firsts[first] as number) : 0,
      key: `${this.sumOne} ${this.sumTwo}`,
    };
  }

  private rowOf(row: number, rows: number, change?: Change): [number, number] {
    if (row >= rows) {
      this.hash.fill(row + 1);
      return [this.workshop.written.columns, 0];
    }
    const view = this.workshop.look(this.piece, row, change);
    const { count, first } = this.comparison.row(row, view);
    this.comparison.hash(row, view, this.hash);
    return [count, first];
  }

  /** The tally of the piece with a change; null as soon as it differs before a row. */
  of(change: Change, notBefore = -1): Tally | null {
    const { rows } = this.comparison.seen;
    const low = Math.max(0, Math.min(change.from - 1, rows));
    const shorter = change.rows !== this.piece.tied.length;
    const high = shorter ? rows : Math.min(rows, change.to + 1);
    let { total } = this.own;
    let one = this.sumOne;
    let two = this.sumTwo;
    let row = Number.POSITIVE_INFINITY;
    let order = 0;
    if (this.own.row < low) ({ row, order } = this.own);
    for (let at = low; at < high; at++) {
      const [count, first] = this.rowOf(at, change.rows, change);
      if (count > 0 && at < notBefore) return null;
      total += count - (this.counts[at] as number);
      one = (one + (this.hash[0] as number) - (this.hashes[2 * at] as number)) | 0;
      two = (two + (this.hash[1] as number) - (this.hashes[2 * at + 1] as number)) | 0;
      if (count > 0 && at >= this.from && at < row) {
        row = at;
        order = first;
      }
    }
    for (let at = Math.max(high, this.from); at < rows && row === Number.POSITIVE_INFINITY; at++) {
      if ((this.counts[at] as number) > 0) {
        row = at;
        order = this.firsts[at] as number;
      }
    }
    return { total, row, order, key: `${one} ${two}` };
  }
}
