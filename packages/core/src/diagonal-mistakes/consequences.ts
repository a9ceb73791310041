import { knotsAcross } from '../diagonal/lattice.js';
import type { DiagonalPattern } from '../diagonal/pattern.js';
import type { KnotKind } from '../model/knot.js';
import { KNOT_KINDS } from '../model/knot.js';
import { checkDiagonalMistakes } from './check.js';
import type { DiagonalMistake } from './mistake.js';
import { isOfStart, isPlaced } from './mistake.js';
import {
  HALF,
  type KnottedPiece,
  knotPiece,
  NO_SLOT,
  type Piece,
  type PieceRow,
  pieceOf,
  soundPiece,
} from './piece.js';
import { type DiagonalUndo, diagonalUndo } from './undo.js';

/** What mistakes do to the piece from there on, when the rows are tied as they are written. */
export interface DiagonalConsequences {
  /** Knots that show another colour than the row of the pattern that they follow, from the top. */
  readonly differing: readonly { readonly row: number; readonly place: number }[];
  /** Those of them in the rows that are tied already. */
  readonly differingNow: number;
  /**
   * The row, from 0, after which every string hangs as the pattern has it, to the end; 0 when
   * it always does, null when it never does again.
   */
  readonly orderBack: number | null;
  /** The same, where strings of one colour count as one. */
  readonly coloursBack: number | null;
  /** Ways to go on, the one that makes everything right first. */
  readonly ways: readonly DiagonalWayBack[];
}

export type DiagonalWayBack =
  /** Undo to the mistake and tie on from there as written. */
  | { readonly way: 'undo'; readonly undo: DiagonalUndo }
  /** Tie another kind of knot where two strings that hang in each other's place meet. */
  | {
      readonly way: 'mend';
      readonly row: number;
      readonly place: number;
      readonly tied: KnotKind;
      readonly written: KnotKind;
      /** Knots that show another colour then. */
      readonly differing: number;
    }
  /** Lay two strings that hang in each other's place across each other, without a knot. */
  | {
      readonly way: 'exchange';
      /** Slots of the two, from 0. */
      readonly slots: readonly [number, number];
      /** The row before which it is done, from 0. */
      readonly row: number;
      readonly differing: number;
    }
  /** Leave it: tie on as written. */
  | { readonly way: 'leave'; readonly differing: number };

/**
 * @param rows rows knotted so far. Default: all of them
 * @throws InputError when a mistake does not fit the pattern
 */
export function diagonalConsequences(
  pattern: DiagonalPattern,
  mistakes: readonly DiagonalMistake[],
  rows = Number.POSITIVE_INFINITY,
): DiagonalConsequences {
  checkDiagonalMistakes(pattern, mistakes);
  const piece = pieceOf(pattern, mistakes);
  const tied = Math.min(rows, piece.rows.length);
  const compared = new Compared(piece, mistakes);
  const differing = compared.differing();
  const differingNow = differing.filter(({ row }) => row < tied).length;
  const ways: DiagonalWayBack[] = [];
  if (mistakes.length > 0) {
    ways.push({ way: 'undo', undo: diagonalUndo(piece, mistakes, tied) });
    ways.push(...compared.mending(tied, differingNow));
    ways.push({ way: 'leave', differing: differing.length });
  }
  return {
    differing,
    differingNow,
    orderBack: compared.back((string, written) => string === written),
    coloursBack: compared.back(
      (string, written) => pattern.start[string] === pattern.start[written],
    ),
    ways,
  };
}

/** A piece with mistakes beside the one without, row by row of the pattern. */
class Compared {
  private readonly knotted: KnottedPiece;
  private readonly sound: KnottedPiece;

  constructor(
    private readonly piece: Piece,
    private readonly mistakes: readonly DiagonalMistake[],
  ) {
    this.knotted = knotPiece(piece);
    this.sound = knotPiece(soundPiece(piece.pattern));
  }

  differing(): { row: number; place: number }[] {
    const across = knotsAcross(this.piece.pattern);
    const differing: { row: number; place: number }[] = [];
    this.piece.rows.forEach(({ source }, row) => {
      for (let place = 0; place < across; place++) {
        const cell = this.knotted.cells[row * across + place];
        if (cell !== this.sound.cells[source * across + place]) differing.push({ row, place });
      }
    });
    return differing;
  }

  /** The string that hangs in each slot before a row, by where it was meant to hang at first. */
  private hanging(row: number): Uint16Array {
    const { strings } = this.piece.pattern;
    const order = this.knotted.order.slice(row * strings, (row + 1) * strings);
    for (const mistake of this.mistakes) {
      if (mistake.kind !== 'swapped-strings') continue;
      const { slot, other } = mistake;
      for (const [at, string] of order.entries()) {
        if (string === slot) order[at] = other;
        else if (string === other) order[at] = slot;
      }
    }
    return order;
  }

  /** The string that should hang in each slot before a row of the piece. */
  private written(row: number): Uint16Array {
    const { strings, rows } = this.piece.pattern;
    const next = this.piece.rows[row];
    const source = next?.source ?? rows;
    return this.sound.order.subarray(source * strings, (source + 1) * strings);
  }

  back(same: (string: number, written: number) => boolean): number | null {
    const { length } = this.piece.rows;
    let back: number | null = null;
    for (let row = length; row >= 0; row--) {
      const written = this.written(row);
      if (!this.hanging(row).every((string, slot) => same(string, written[slot] as number))) break;
      back = row;
    }
    return back;
  }

  /** Ways to get two strings into their places that hang in each other's, without undoing. */
  mending(tied: number, differingNow: number): DiagonalWayBack[] {
    const later = this.mistakes.some((mistake) =>
      isPlaced(mistake) || !isOfStart(mistake) ? mistake.row >= tied : false,
    );
    const pair = later || tied >= this.piece.rows.length ? null : this.exchanged(tied);
    if (pair === null) return [];
    const { start } = this.piece.pattern;
    const written = this.written(tied);
    const colours = pair.map((slot) => start[written[slot] as number]);
    if (colours[0] === colours[1]) return [];
    const ways: DiagonalWayBack[] = [];
    const mended = this.meeting(tied, pair, differingNow);
    if (mended !== null) ways.push(mended);
    ways.push({ way: 'exchange', slots: pair, row: tied, differing: differingNow });
    return ways;
  }

  private exchanged(row: number): [number, number] | null {
    const hanging = this.hanging(row);
    const written = this.written(row);
    const slots = [...hanging.keys()].filter((slot) => hanging[slot] !== written[slot]);
    const [one, two] = slots as [number, number];
    if (slots.length !== 2 || hanging[one] !== written[two]) return null;
    return [one, two];
  }

  /** The next knot that two strings which hang in each other's place share. */
  private meeting(
    from: number,
    pair: readonly [number, number],
    differingNow: number,
  ): DiagonalWayBack | null {
    let [one, two] = pair;
    let differing = differingNow;
    for (let row = from; row < this.piece.rows.length; row++) {
      const its = this.piece.rows[row] as PieceRow;
      const [first, second] = [knotOf(its, one), knotOf(its, two)];
      if (first !== null && first.place === second?.place) {
        const written = KNOT_KINDS[first.kind];
        // The string that belonged on the left is on the right: it ties from there, and ends
        // where it belongs, by keeping its place where it should change it and the other way.
        const tied = KNOT_KINDS[KNOT_KINDS.length - 1 - first.kind];
        if (written === undefined || tied === undefined) return null;
        return { way: 'mend', row, place: first.place, tied, written, differing };
      }
      if (first !== null) {
        if (first.ties === one) differing++;
        if (first.changes) one = first.partner;
      }
      if (second !== null) {
        if (second.ties === two) differing++;
        if (second.changes) two = second.partner;
      }
    }
    return null;
  }
}

interface MetKnot {
  readonly place: number;
  readonly kind: number;
  /** Slot of the string that ties it, and of the other string than the one asked for. */
  readonly ties: number;
  readonly partner: number;
  readonly changes: boolean;
}

/** The knot that the string in a slot is part of in a row. */
function knotOf({ slots, knots }: PieceRow, slot: number): MetKnot | null {
  for (let place = 0; place < knots.length; place++) {
    const left = slots[place] as number;
    const kind = (knots[place] as number) % HALF;
    if (left === NO_SLOT || (knots[place] as number) >= 2 * HALF) continue;
    if (slot !== left && slot !== left + 1) continue;
    const ties = kind === 0 || kind === 2 ? left : left + 1;
    return { place, kind, ties, partner: slot === left ? left + 1 : left, changes: kind < 2 };
  }
  return null;
}
