import { NO_KNOT } from '../diagonal/pattern.js';
import { BARE } from '../diagonal/picture.js';
import { LEFT_TIES, NO_STRING_HERE, PLACES_CHANGE } from '../diagonal/simulate.js';
import type { Comparison } from './comparison.js';
import {
  type DiagonalMistake,
  isOfStart,
  isPlaced,
  type PlacedMistake,
  type StartMistake,
} from './mistake.js';
import {
  HALF,
  type KnottedPiece,
  knotPiece,
  NO_SLOT,
  type Piece,
  type PieceRow,
  rowWith,
  tieRow,
  withMistake,
} from './piece.js';

/** What one mistake more would leave of what was seen. */
export interface Outcome {
  /** Things seen that would differ. */
  readonly differing: number;
  /** First row in which something would differ; the number of rows seen when nothing does. */
  readonly first: number;
}

const NONE_DIFFERS = -1;

/** What is otherwise after a row: things that differ more, and slots with another string. */
interface RowChange {
  readonly differing: number;
  readonly moved: number[];
}

/**
 * A piece compared with what was seen, on which one mistake more can be tried at the price of
 * what it changes only: of a knot tied otherwise, the two strings that hang otherwise are
 * followed down until they hang as before.
 */
export class Trial {
  readonly knotted: KnottedPiece;
  /** Things that differ in each row; after the rows, below the work. */
  readonly differing: Uint32Array;
  readonly total: number;
  /** First row in which something differs; the row after the last stands for below the work. */
  readonly first: number;
  /** Knots tied for trials so far. */
  work = 0;
  private readonly start: Uint8Array;
  /** First row from here on in which something differs. */
  private readonly nextFirst: Int32Array;
  private readonly front: Uint16Array;
  private readonly tying: Uint16Array;
  /** The string in a slot, where it is another than in the piece; else -1. */
  private readonly other: Int32Array;
  private readonly rowChange: Int32Array;
  /** Cells that each string ties, from the top; made when it is first asked for. */
  private tied: readonly (readonly number[])[] | null = null;

  constructor(
    readonly piece: Piece,
    readonly comparison: Comparison,
  ) {
    const { rows, strings, across } = comparison;
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
    this.front = new Uint16Array(strings);
    this.tying = new Uint16Array(across);
    this.other = new Int32Array(strings).fill(-1);
    this.rowChange = new Int32Array(rows + 1);
  }

  /** Strings from the left after a row; -1 for before the first. */
  private orderAfter(row: number): Uint16Array {
    const { strings } = this.comparison;
    return this.knotted.order.subarray((row + 1) * strings, (row + 2) * strings);
  }

  private below(order: Uint16Array): number {
    let differing = 0;
    for (let slot = 0; slot < order.length; slot++) {
      differing += this.comparison.hangingDiffers(slot, this.colourOf(order[slot] as number));
    }
    return differing;
  }

  private colourOf(string: number): number {
    return this.start[string] as number;
  }

  /**
   * What is left when one mistake more was made; null when it does not explain anything of the
   * first row that differs, or lets an earlier one differ.
   */
  try(mistake: DiagonalMistake): Outcome | null {
    if (this.first === NONE_DIFFERS) return null;
    if (isPlaced(mistake)) return this.tryPlaced(mistake);
    if (isOfStart(mistake)) return this.tryStart(mistake);
    return this.tryRows(withMistake(this.piece, mistake), mistake.row);
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
  private keeps(row: number, differing: number): boolean {
    if (row < this.first) return differing === 0;
    return row > this.first || differing < (this.differing[row] as number);
  }

  private outcome(differing: number, first: number): Outcome {
    return { differing, first: first === NONE_DIFFERS ? this.comparison.rows : first };
  }

  private tryPlaced(mistake: PlacedMistake): Outcome | null {
    const { comparison } = this;
    const { rows } = this.knotted;
    const { row: at } = mistake;
    if (at > this.first || at >= rows) return null;
    const changed = this.ownRow(mistake);
    const differs = (this.differing[at] as number) + changed.differing;
    let { moved } = changed;
    if (!this.keeps(at, differs)) {
      for (const slot of moved) this.other[slot] = -1;
      return null;
    }
    let total = this.total + changed.differing;
    let first = differs > 0 ? at : NONE_DIFFERS;
    let row = at + 1;
    let kept = true;
    for (; kept && row < rows && moved.length > 0; row++) {
      const change = this.follow(row, moved);
      moved = change.moved;
      const now = (this.differing[row] as number) + change.differing;
      kept = this.keeps(row, now);
      total += change.differing;
      if (now > 0 && first === NONE_DIFFERS) first = row;
    }
    if (kept && moved.length > 0) {
      let change = 0;
      const order = this.orderAfter(rows - 1);
      for (const slot of moved) {
        change +=
          comparison.hangingDiffers(slot, this.colourOf(this.other[slot] as number)) -
          comparison.hangingDiffers(slot, this.colourOf(order[slot] as number));
      }
      const below = (this.differing[comparison.rows] as number) + change;
      total += change;
      // Rows that were seen but never knotted stay as they are.
      for (; row < comparison.rows; row++) kept &&= this.keeps(row, this.differing[row] as number);
      kept &&= this.keeps(comparison.rows, below);
      if (first === NONE_DIFFERS) {
        first = this.nextFirst[rows] as number;
        if (first === NONE_DIFFERS || first === comparison.rows) {
          first = below > 0 ? comparison.rows : NONE_DIFFERS;
        }
      }
    } else if (kept) {
      // From here on all is as before: what differs there first must have been passed.
      kept = row > this.first;
      if (first === NONE_DIFFERS) first = this.nextFirst[row] as number;
    }
    for (const slot of moved) this.other[slot] = -1;
    return kept ? this.outcome(total, first) : null;
  }

  /** Ties the row of a mistake with it. */
  private ownRow(mistake: PlacedMistake): RowChange {
    const { comparison, front, tying, piece } = this;
    const { row, place } = mistake;
    const was = piece.rows[row] as PieceRow;
    const own = rowWith(was, mistake, piece.pattern);
    const before = this.orderAfter(row - 1);
    const slot = own.slots[place] as number;
    if (own.shifted || slot === NO_SLOT) {
      front.set(before);
      tieRow(own, front, tying);
      this.work += front.length;
      return {
        differing:
          comparison.rowDiffers(row, own, tying, this.start) - (this.differing[row] as number),
        moved: this.take(this.orderAfter(row)),
      };
    }
    // Of a row in which no knots share a string, only the one knot changes.
    this.work++;
    const knot = own.knots[place] as number;
    const string = this.knotted.tying[row * comparison.across + place] as number;
    let [left, right] = [before[slot] as number, before[slot + 1] as number];
    const ties = LEFT_TIES[knot % HALF] ? left : right;
    if (knot !== NO_KNOT && PLACES_CHANGE[knot % HALF]) [left, right] = [right, left];
    const after = this.orderAfter(row);
    const moved: number[] = [];
    for (const [at, hangs] of [
      [slot, left],
      [slot + 1, right],
    ] as const) {
      if (hangs === after[at]) continue;
      this.other[at] = hangs;
      moved.push(at);
    }
    const things = (knotThere: number, tiedBy: number): number =>
      comparison.colourDiffers(row, place, knotThere === NO_KNOT ? BARE : this.colourOf(tiedBy)) +
      comparison.lookDiffers(row, place, knotThere);
    return { differing: things(knot, ties) - things(was.knots[place] as number, string), moved };
  }

  /** Notes the strings of `front` that hang elsewhere than in an order; their slots. */
  private take(order: Uint16Array): number[] {
    const moved: number[] = [];
    for (let slot = 0; slot < order.length; slot++) {
      if (this.front[slot] === order[slot]) continue;
      this.other[slot] = this.front[slot] as number;
      moved.push(slot);
    }
    return moved;
  }

  /** Ties on in one row with the strings that hang elsewhere. */
  private follow(row: number, moved: readonly number[]): RowChange {
    const { comparison, knotted, piece, other } = this;
    const { across } = comparison;
    const its = piece.rows[row] as PieceRow;
    const before = this.orderAfter(row - 1);
    const after = this.orderAfter(row);
    let differing = 0;
    if (its.shifted) {
      this.front.set(before);
      for (const slot of moved) {
        this.front[slot] = other[slot] as number;
        other[slot] = -1;
      }
      tieRow(its, this.front, this.tying);
      this.work += this.front.length;
      differing =
        comparison.rowDiffers(row, its, this.tying, this.start) - (this.differing[row] as number);
      return { moved: this.take(after), differing };
    }
    const still: number[] = [];
    const offset = its.slots[0] === NO_SLOT ? 0 : (its.slots[0] as number);
    const stringIn = (slot: number): number =>
      other[slot] === -1 ? (before[slot] as number) : (other[slot] as number);
    // Slots come from the left, so a pair is met at its first slot; the second is done with it.
    let done = -1;
    for (const slot of moved) {
      if (slot <= done) continue;
      const place = (slot - offset) >> 1;
      const knot = slot < offset || place >= across ? NO_KNOT : (its.knots[place] as number);
      if (knot === NO_KNOT) {
        still.push(slot);
        continue;
      }
      const left = offset + 2 * place;
      done = left + 1;
      const kind = knot % HALF;
      let [one, two] = [stringIn(left), stringIn(left + 1)];
      const ties = LEFT_TIES[kind] ? one : two;
      this.work++;
      differing +=
        comparison.colourDiffers(row, place, this.colourOf(ties)) -
        comparison.colourDiffers(
          row,
          place,
          this.colourOf(knotted.tying[row * across + place] as number),
        );
      if (PLACES_CHANGE[kind]) [one, two] = [two, one];
      other[left] = one === after[left] ? -1 : one;
      other[left + 1] = two === after[left + 1] ? -1 : two;
      if (other[left] !== -1) still.push(left);
      if (other[left + 1] !== -1) still.push(left + 1);
    }
    return { moved: still, differing };
  }

  private tryStart(mistake: StartMistake): Outcome | null {
    const { comparison, rowChange, start } = this;
    const { across } = comparison;
    const swapped = mistake.kind === 'swapped-strings';
    const changes: [number, number][] = swapped
      ? [
          [mistake.slot, start[mistake.other] as number],
          [mistake.other, start[mistake.slot] as number],
        ]
      : [[mistake.slot, comparison.alike[mistake.colour] as number]];
    const order = this.orderAfter(this.knotted.rows - 1);
    let total = this.total;
    let kept = true;
    const touched: number[] = [];
    const note = (row: number, change: number): void => {
      if (change === 0) return;
      rowChange[row] = (rowChange[row] as number) + change;
      total += change;
      touched.push(row);
    };
    for (const [string, colour] of changes) {
      const was = this.colourOf(string);
      for (const cell of this.cellsOf(string)) {
        const row = Math.floor(cell / across);
        const place = cell - row * across;
        this.work++;
        note(
          row,
          comparison.colourDiffers(row, place, colour) - comparison.colourDiffers(row, place, was),
        );
        if (row < this.first && (rowChange[row] as number) > 0 && !swapped) {
          kept = false;
          break;
        }
      }
      const slot = order.indexOf(string);
      note(
        comparison.rows,
        comparison.hangingDiffers(slot, colour) - comparison.hangingDiffers(slot, was),
      );
    }
    let first = NONE_DIFFERS;
    for (const row of touched) {
      kept &&= this.keeps(row, (this.differing[row] as number) + (rowChange[row] as number));
    }
    kept &&= (rowChange[this.first] as number) < 0;
    for (let row = this.first; kept && first === NONE_DIFFERS && row <= comparison.rows; row++) {
      if ((this.differing[row] as number) + (rowChange[row] as number) > 0) first = row;
    }
    for (const row of touched) rowChange[row] = 0;
    return kept ? this.outcome(total, first) : null;
  }

  private cellsOf(string: number): readonly number[] {
    if (this.tied === null) {
      const tied: number[][] = Array.from({ length: this.comparison.strings }, () => []);
      this.knotted.tying.forEach((ties, cell) => {
        if (ties !== NO_STRING_HERE) tied[ties]?.push(cell);
      });
      this.tied = tied;
    }
    return this.tied[string] ?? [];
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
