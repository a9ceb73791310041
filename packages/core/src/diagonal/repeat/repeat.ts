import type { DiagonalPattern } from '../pattern.js';
import { cyclesOf, leastCommonMultiple, orderOf, periodRound } from '../permutation.js';
import { simulateDiagonal } from '../simulate.js';
import { EndlessPicture, type ShiftedRepeat } from './endless.js';
import { knotsPeriod } from './knots-period.js';

/**
 * What happens when a pattern is knotted again and again, each repeat below the one before. Slots
 * count from 0.
 */
export interface DiagonalRepeat {
  /** Rows of the pattern as it is given. */
  readonly rows: number;
  /**
   * Whether the next repeat begins on the same slots. It does not after an odd number of rows: the
   * brick lattice goes on with the other slots there.
   */
  readonly sidesClose: boolean;
  /**
   * Rows from the beginning of a repeat to that of the next. Where the sides do not close, a row
   * without knots is left in between, and all that follows is said of the pattern with that row.
   */
  readonly rowsApart: number;
  /** The slot in which the string of each slot hangs after one repeat. */
  readonly permutation: Uint16Array;
  /** The cycles of the permutation, longest first; strings that come back at once are cycles of 1. */
  readonly cycles: readonly (readonly number[])[];
  /** Repeats after which every string hangs where it hung: exact, least common multiple of the cycles. */
  readonly order: bigint;
  /** Repeats after which the colours hang as at the start, though not the same strings. */
  readonly coloursCloseAfter: bigint;
  /** Rows after which the kinds of the knots begin anew; shorter than a repeat if it holds two. */
  readonly knotsRepeatRows: number;
  /** Rows after which both the knots begin anew and every string hangs where it hung. */
  readonly stringsRepeatRows: bigint;
  /** Rows after which what is seen begins anew in the endless piece: the smallest true repeat. */
  readonly smallestRepeatRows: bigint;
  /**
   * The fewest rows after which what is seen goes on moved sideways by some slots, wherever both
   * places are in the piece; null when there is none within 32 rows that is shorter than the
   * smallest true repeat, or when the pattern is too large to look for one.
   */
  readonly shiftedRepeat: ShiftedRepeat | null;
}

/** Works out what a pattern does when it is repeated. */
export function repeatOf(pattern: DiagonalPattern): DiagonalRepeat {
  const { strings, rows, start } = pattern;
  const { order, tying } = simulateDiagonal(pattern);
  const permutation = permutationOfRows(order, strings, rows);
  const cycles = cyclesOf(permutation);
  const sidesClose = rows % 2 === 0;
  const rowsApart = sidesClose ? rows : rows + 1;
  const knotsRepeatRows = knotsPeriod(pattern, rowsApart);
  const within = permutationOfRows(order, strings, Math.min(knotsRepeatRows, rows));
  const endless = new EndlessPicture(pattern, rowsApart, tying, cycles);
  const smallestRepeatRows = endless.period();
  return {
    rows,
    sidesClose,
    rowsApart,
    permutation,
    cycles,
    order: orderOf(cycles),
    coloursCloseAfter: cycles.reduce(
      (after, cycle) =>
        leastCommonMultiple(after, BigInt(periodRound(cycle.map((slot) => start[slot] as number)))),
      1n,
    ),
    knotsRepeatRows,
    stringsRepeatRows: BigInt(knotsRepeatRows) * orderOf(cyclesOf(within)),
    smallestRepeatRows,
    shiftedRepeat: endless.shifted(smallestRepeatRows),
  };
}

function permutationOfRows(order: Uint16Array, strings: number, rows: number): Uint16Array {
  const permutation = new Uint16Array(strings);
  for (let slot = 0; slot < strings; slot++) {
    permutation[order[rows * strings + slot] as number] = slot;
  }
  return permutation;
}
