import {
  type DiagonalPattern,
  hangingStrings,
  knotsAcross,
  simulateDiagonal,
  type ThreadString,
} from '@halfhitch/core';

/** Entry of a place without a knot. */
export const NO_KNOT = 255;

/** What is knotted where: the part of a pattern that its picture in thread is made from. */
export interface LatticeWork {
  readonly strings: readonly ThreadString[];
  readonly rows: number;
  readonly first: 0 | 1;
  readonly across: number;
  /** Kind codes, or NO_KNOT; `rows x across`. */
  readonly kinds: Uint8Array;
  /** Strings of each knot, by their slots at the start. */
  readonly tying: Uint16Array;
  readonly held: Uint16Array;
  /** String in each slot before each row and after the last; `(rows + 1) x strings`. */
  readonly order: Uint16Array;
}

/** Reads a pattern as it is knotted. */
export function latticeWork(pattern: DiagonalPattern): LatticeWork {
  const { tying, held, order } = simulateDiagonal(pattern);
  return {
    strings: hangingStrings(pattern),
    rows: pattern.rows,
    first: pattern.first,
    across: knotsAcross(pattern),
    kinds: pattern.knots,
    tying,
    held,
    order,
  };
}
