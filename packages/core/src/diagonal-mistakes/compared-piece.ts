import { NO_KNOT } from '../diagonal/pattern.js';
import { BARE } from '../diagonal/picture.js';
import type { Comparison } from './comparison.js';
import { type KnottedPiece, knotPiece, NO_SLOT, type Piece, type PieceRow } from './piece.js';

/** What one mistake more would leave of what was seen. */
export interface Outcome {
  /** Things seen that would differ. */
  readonly differing: number;
  /** First row in which something would differ; the number of rows seen when nothing does. */
  readonly first: number;
}

export const NONE_DIFFERS = -1;

/** A piece compared with what was seen, row by row. */
export class ComparedPiece {
  readonly knotted: KnottedPiece;
  /** Things that differ in each row; after the rows, below the work. */
  readonly differing: Uint32Array;
  readonly total: number;
  /** First row in which something differs; the row after the last stands for below the work. */
  readonly first: number;
  /** Knots tied for trials so far. */
  work = 0;
  /** Colour of each string, as far as colours were told apart. */
  readonly start: Uint8Array;
  /** First row from here on in which something differs. */
  readonly nextFirst: Int32Array;

  constructor(
    readonly piece: Piece,
    readonly comparison: Comparison,
  ) {
    const { rows, across } = comparison;
    this.knotted = knotPiece(piece, rows);
    this.start = comparison.startOf(piece);
    this.differing = new Uint32Array(rows + 1);
    for (let row = 0; row < rows; row++) {
      this.differing[row] =
        row < this.knotted.rows
          ? comparison.rowDiffers(
              row,
              piece.rows[row] as PieceRow,
              this.knotted.tying.subarray(row * across),
              this.start,
            )
          : comparison.rowWithoutKnots(row);
    }
    this.differing[rows] = this.below(this.orderAfter(this.knotted.rows - 1));
    this.total = this.differing.reduce((sum, number) => sum + number, 0);
    this.nextFirst = new Int32Array(rows + 2).fill(NONE_DIFFERS);
    for (let row = rows; row >= 0; row--) {
      this.nextFirst[row] = this.differing[row] === 0 ? (this.nextFirst[row + 1] as number) : row;
    }
    this.first = this.nextFirst[0] as number;
  }

  /** Strings from the left after a row; -1 for before the first. */
  orderAfter(row: number): Uint16Array {
    const { strings } = this.comparison;
    return this.knotted.order.subarray((row + 1) * strings, (row + 2) * strings);
  }

  below(order: Uint16Array): number {
    let differing = 0;
    for (let slot = 0; slot < order.length; slot++) {
      differing += this.comparison.hangingDiffers(slot, this.colourOf(order[slot] as number));
    }
    return differing;
  }

  colourOf(string: number): number {
    return this.start[string] as number;
  }

  /** Slots of what differs in the first row that differs; null when its row was never knotted. */
  differingSlots(): number[] | null {
    const { comparison, first, piece } = this;
    if (first === comparison.rows) {
      const order = this.orderAfter(this.knotted.rows - 1);
      return [...order.keys()].filter(
        (slot) => comparison.hangingDiffers(slot, this.colourOf(order[slot] as number)) === 1,
      );
    }
    const row = piece.rows[first];
    if (row === undefined) return null;
    const tying = this.knotted.tying.subarray(first * comparison.across);
    const slots: number[] = [];
    row.slots.forEach((slot, place) => {
      const knot = row.knots[place] as number;
      const ties = tying[place] as number;
      const colour = knot === NO_KNOT ? BARE : this.colourOf(ties);
      const differs =
        comparison.colourDiffers(first, place, colour) + comparison.lookDiffers(first, place, knot);
      // Where no string was picked up, the place is where it would be in the lattice.
      if (differs > 0) slots.push(slot === NO_SLOT ? 2 * place : slot);
    });
    return slots;
  }

  /** Whether a row may differ in so many things under a mistake that is worth keeping. */
  keeps(row: number, differing: number): boolean {
    if (row < this.first) return differing === 0;
    return row > this.first || differing < (this.differing[row] as number);
  }

  outcome(differing: number, first: number): Outcome {
    return { differing, first: first === NONE_DIFFERS ? this.comparison.rows : first };
  }
}
