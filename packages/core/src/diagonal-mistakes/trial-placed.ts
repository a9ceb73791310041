import { NO_KNOT } from '../diagonal/pattern.js';
import { BARE } from '../diagonal/picture.js';
import { LEFT_TIES, PLACES_CHANGE } from '../diagonal/simulate.js';
import { type ComparedPiece, NONE_DIFFERS, type Outcome } from './compared-piece.js';
import type { Comparison } from './comparison.js';
import type { PlacedMistake } from './mistake.js';
import {
  HALF,
  type KnottedPiece,
  NO_SLOT,
  type Piece,
  type PieceRow,
  rowWith,
  tieRow,
} from './piece.js';

/** What is otherwise after a row: things that differ more, and slots with another string. */
interface RowChange {
  readonly differing: number;
  readonly moved: number[];
}

/**
 * Tries a knot tied otherwise: the two strings that hang otherwise after it are followed down until
 * they hang as before.
 */
export class PlacedTrial {
  private readonly front: Uint16Array;
  private readonly tying: Uint16Array;
  /** The string in a slot, where it is another than in the piece; else -1. */
  private readonly other: Int32Array;

  // What is asked for every knot is kept at hand.
  private readonly comparison: Comparison;
  private readonly piece: Piece;
  private readonly knotted: KnottedPiece;
  private readonly start: Uint8Array;

  constructor(private readonly on: ComparedPiece) {
    this.comparison = on.comparison;
    this.piece = on.piece;
    this.knotted = on.knotted;
    this.start = on.start;
    const { strings, across } = on.comparison;
    this.front = new Uint16Array(strings);
    this.tying = new Uint16Array(across);
    this.other = new Int32Array(strings).fill(-1);
  }

  try(mistake: PlacedMistake): Outcome | null {
    const { comparison, knotted, on } = this;
    const { rows } = knotted;
    const { row: at } = mistake;
    if (at > on.first || at >= rows) return null;
    const changed = this.ownRow(mistake);
    const differs = (on.differing[at] as number) + changed.differing;
    let { moved } = changed;
    if (!on.keeps(at, differs)) {
      for (const slot of moved) this.other[slot] = -1;
      return null;
    }
    let total = on.total + changed.differing;
    let first = differs > 0 ? at : NONE_DIFFERS;
    let row = at + 1;
    let kept = true;
    for (; kept && row < rows && moved.length > 0; row++) {
      const change = this.follow(row, moved);
      moved = change.moved;
      const now = (on.differing[row] as number) + change.differing;
      kept = on.keeps(row, now);
      total += change.differing;
      if (now > 0 && first === NONE_DIFFERS) first = row;
    }
    if (kept && moved.length > 0) {
      let change = 0;
      const order = on.orderAfter(rows - 1);
      for (const slot of moved) {
        change +=
          comparison.hangingDiffers(slot, on.colourOf(this.other[slot] as number)) -
          comparison.hangingDiffers(slot, on.colourOf(order[slot] as number));
      }
      const below = (on.differing[comparison.rows] as number) + change;
      total += change;
      // Rows that were seen but never knotted stay as they are.
      for (; row < comparison.rows; row++) kept &&= on.keeps(row, on.differing[row] as number);
      kept &&= on.keeps(comparison.rows, below);
      if (first === NONE_DIFFERS) {
        first = on.nextFirst[rows] as number;
        if (first === NONE_DIFFERS || first === comparison.rows) {
          first = below > 0 ? comparison.rows : NONE_DIFFERS;
        }
      }
    } else if (kept) {
      // From here on all is as before: what differs there first must have been passed.
      kept = row > on.first;
      if (first === NONE_DIFFERS) first = on.nextFirst[row] as number;
    }
    for (const slot of moved) this.other[slot] = -1;
    return kept ? on.outcome(total, first) : null;
  }

  /** Ties the row of a mistake with it. */
  private ownRow(mistake: PlacedMistake): RowChange {
    const { comparison, front, tying, piece, start, on } = this;
    const { row, place } = mistake;
    const was = piece.rows[row] as PieceRow;
    const own = rowWith(was, mistake, piece.pattern);
    const before = on.orderAfter(row - 1);
    const slot = own.slots[place] as number;
    if (own.shifted || slot === NO_SLOT) {
      front.set(before);
      tieRow(own, front, tying);
      on.work += front.length;
      return {
        differing: comparison.rowDiffers(row, own, tying, start) - (on.differing[row] as number),
        moved: this.take(on.orderAfter(row)),
      };
    }
    // Of a row in which no knots share a string, only the one knot changes.
    on.work++;
    const knot = own.knots[place] as number;
    const string = this.knotted.tying[row * comparison.across + place] as number;
    let [left, right] = [before[slot] as number, before[slot + 1] as number];
    const ties = LEFT_TIES[knot % HALF] ? left : right;
    if (knot !== NO_KNOT && PLACES_CHANGE[knot % HALF]) [left, right] = [right, left];
    const after = on.orderAfter(row);
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
      comparison.colourDiffers(row, place, knotThere === NO_KNOT ? BARE : on.colourOf(tiedBy)) +
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
    const { comparison, knotted, piece, other, start, on } = this;
    const { across } = comparison;
    const its = piece.rows[row] as PieceRow;
    const before = on.orderAfter(row - 1);
    const after = on.orderAfter(row);
    let differing = 0;
    if (its.shifted) {
      this.front.set(before);
      for (const slot of moved) {
        this.front[slot] = other[slot] as number;
        other[slot] = -1;
      }
      tieRow(its, this.front, this.tying);
      on.work += this.front.length;
      differing =
        comparison.rowDiffers(row, its, this.tying, start) - (on.differing[row] as number);
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
      on.work++;
      differing +=
        comparison.colourDiffers(row, place, on.colourOf(ties)) -
        comparison.colourDiffers(
          row,
          place,
          on.colourOf(knotted.tying[row * across + place] as number),
        );
      if (PLACES_CHANGE[kind]) [one, two] = [two, one];
      other[left] = one === after[left] ? -1 : one;
      other[left + 1] = two === after[left + 1] ? -1 : two;
      if (other[left] !== -1) still.push(left);
      if (other[left + 1] !== -1) still.push(left + 1);
    }
    return { moved: still, differing };
  }
}
