import type { ChartColour, Lattice } from '@halfhitch/core';

/** All that is to be seen of a lattice. */
export interface LatticeLook {
  readonly lattice: Lattice;
  readonly colours: readonly ChartColour[];
  /** Colour of each knot, ANY_COLOUR or BARE; `rows x knotsAcross`. */
  readonly cells: Uint8Array;
  /** Kinds of the knots, whose ways are drawn on them; null for none. */
  readonly kinds: Uint8Array | null;
  /** The strings: null where they are not known yet. */
  readonly strings: {
    /** Colour of each at the start, from the left. */
    readonly start: Uint8Array;
    /** String in each slot before each row, and after the last; `(rows + 1) x strings`. */
    readonly order: Uint16Array;
  } | null;
}

/** A knot that is marked, and what is said of it. */
export interface LatticeMark {
  readonly row: number;
  readonly column: number;
  /**
   * `conflict`: in the smallest part that can't be knotted; `differs`: otherwise than was wanted;
   * `found`: something is said of it.
   */
  readonly what: 'conflict' | 'differs' | 'found';
  /** The colour that was wanted there, where it differs. */
  readonly wanted?: string;
  readonly message: string;
}
