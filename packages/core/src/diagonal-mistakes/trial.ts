import { ComparedPiece, NONE_DIFFERS, type Outcome } from './compared-piece.js';
import type { Comparison } from './comparison.js';
import { type DiagonalMistake, isOfStart, isPlaced } from './mistake.js';
import { type Piece, type PieceRow, tieRow, withMistake } from './piece.js';
import { PlacedTrial } from './trial-placed.js';
import { StartTrial } from './trial-start.js';

/**
 * A piece compared with what was seen, on which one mistake more can be tried at the price of
 * what it changes only.
 */
export class Trial extends ComparedPiece {
  private readonly placed = new PlacedTrial(this);
  private readonly hung = new StartTrial(this);
  private readonly front: Uint16Array;
  private readonly tying: Uint16Array;

  constructor(piece: Piece, comparison: Comparison) {
    super(piece, comparison);
    this.front = new Uint16Array(comparison.strings);
    this.tying = new Uint16Array(comparison.across);
  }

  /**
   * What is left when one mistake more was made; null when it does not explain anything of the
   * first row that differs, or lets an earlier one differ.
   */
  try(mistake: DiagonalMistake): Outcome | null {
    if (this.first === NONE_DIFFERS) return null;
    if (isPlaced(mistake)) return this.placed.try(mistake);
    if (isOfStart(mistake)) return this.hung.try(mistake);
    return this.tryRows(withMistake(this.piece, mistake), mistake.row);
  }

  /** Another piece from a row on, of which all rows before are as in this one. */
  private tryRows(piece: Piece, from: number): Outcome | null {
    const { comparison, front, tying } = this;
    const { rows } = comparison;
    if (from > this.first) return null;
    const known = Math.min(from, this.knotted.rows);
    front.set(this.orderAfter(known - 1));
    let total = 0;
    let first = NONE_DIFFERS;
    const end = Math.min(rows, piece.rows.length);
    for (let row = known; row <= rows; row++) {
      let differs: number;
      if (row === rows) differs = this.below(front);
      else if (row >= end) differs = comparison.rowWithoutKnots(row);
      else {
        tieRow(piece.rows[row] as PieceRow, front, tying);
        this.work += front.length;
        differs = comparison.rowDiffers(row, piece.rows[row] as PieceRow, tying, this.start);
      }
      if (!this.keeps(row, differs)) return null;
      total += differs;
      if (differs > 0 && first === NONE_DIFFERS) first = row;
      if (total >= this.total) return null;
    }
    return this.outcome(total, first);
  }
}
