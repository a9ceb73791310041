import { type Between, Maker } from '../mistakes/maker.js';
import type { Mistake } from '../mistakes/mistake.js';
import { isOfTurn, movesRows } from '../mistakes/mistake.js';
import { rowsTied, sourceOf } from '../mistakes/sequence.js';
import { emptyView, type RowView, viewRow } from '../mistakes/view.js';
import type { TiedRow } from '../mistakes/watch.js';
import type { Written } from '../mistakes/written.js';

/** The rows in which a piece differs from another one; those from `to` on are the same again. */
export interface Change {
  readonly from: number;
  readonly to: number;
  readonly tied: readonly TiedRow[];
  readonly between: readonly Between[];
  /** Rows of the changed piece. */
  readonly rows: number;
}

/** A piece as far as it is knotted, with where every string is before each row. */
export interface Piece {
  readonly mistakes: readonly Mistake[];
  readonly tied: readonly TiedRow[];
  /** Before each row. */
  readonly between: readonly Between[];
}

/** Columns by which a colour change costs about as much again as a knot. */
const WIDE = 50;

/** Knots pieces that differ little from one another, and only the rows in which they differ. */
export class Workshop {
  private readonly maker: Maker;
  private readonly view: RowView;
  /** Work done so far, in knots of a narrow piece: in a wide one a colour change moves more. */
  work = 0;
  /** The piece without a mistake. */
  readonly sound: Piece;

  constructor(
    readonly written: Written,
    /** Rows that were seen; no piece is knotted further. */
    readonly limit: number,
  ) {
    this.maker = new Maker(written);
    this.view = emptyView(written.columns);
    this.sound = this.knotSound();
  }

  rows(mistakes: readonly Mistake[]): number {
    return Math.max(0, Math.min(this.limit, rowsTied(this.written.rows, mistakes)));
  }

  private knotSound(): Piece {
    const between = [this.maker.between()];
    const tied: TiedRow[] = [];
    for (let row = 0; row < this.rows([]); row++) {
      tied.push(this.maker.tie(row, row, []));
      between.push(this.maker.between());
    }
    return { mistakes: [], tied, between };
  }

  /** What becomes different when one more mistake is made. */
  change(piece: Piece, more: Mistake): Change {
    const { maker } = this;
    const mistakes = [...piece.mistakes, more];
    const rows = this.rows(mistakes);
    const from = Math.min(more.row, rows);
    const tied: TiedRow[] = [];
    const between: Between[] = [];
    const last = movesRows(more) ? rows : more.row + (isOfTurn(more) ? 1 : 0);
    let row = from;
    if (row < rows) maker.goTo(piece.between[row] as Between);
    while (row < rows) {
      tied.push(maker.tie(row, sourceOf(row, mistakes), mistakes));
      between.push(maker.between());
      row++;
      if (row > last && same(between.at(-1), piece.between[row])) break;
    }
    this.work += tied.length * this.written.columns * (1 + this.written.columns / WIDE);
    return { from, to: row, tied, between, rows };
  }

  with(piece: Piece, more: Mistake): Piece {
    const { from, to, tied, between, rows } = this.change(piece, more);
    return {
      mistakes: [...piece.mistakes, more],
      tied: [...piece.tied.slice(0, from), ...tied, ...piece.tied.slice(to, rows)],
      between: [
        ...piece.between.slice(0, from + 1),
        ...between,
        ...piece.between.slice(to + 1, rows + 1),
      ],
    };
  }

  /** What is seen of a row of a piece, changed or not. Overwritten by the next call. */
  look(piece: Piece, row: number, change?: Change): RowView {
    const at = (place: number): TiedRow | undefined => {
      if (change !== undefined) {
        if (place >= change.rows) return undefined;
        if (place >= change.from && place < change.to) return change.tied[place - change.from];
      }
      return piece.tied[place];
    };
    viewRow(this.written, row, at(row - 1), at(row) as TiedRow, at(row + 1), this.view);
    return this.view;
  }
}

function same(one: Between | undefined, other: Between | undefined): boolean {
  return one !== undefined && one.inHand === other?.inHand && one.slot === other.slot;
}
