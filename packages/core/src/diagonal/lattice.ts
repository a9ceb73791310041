import { CHART_LIMITS } from '../chart/chart.js';

/** Stated limits of a diagonal pattern. */
export const DIAGONAL_LIMITS = {
  minStrings: 2,
  maxStrings: 300,
  minRows: 1,
  maxRows: 10_000,
  maxColours: CHART_LIMITS.maxColours,
  maxName: CHART_LIMITS.maxName,
} as const;

/**
 * The brick lattice of a diagonal pattern. All strings hang in front, side by side. Each row ties
 * neighbours in pairs, and each row begins one slot to the side of the row before it: slots 1-2,
 * 3-4, ... in one row, 2-3, 4-5, ... in the next. The outermost strings idle where they find no
 * neighbour.
 *
 * What belongs to the knots of a lattice is kept row by row in arrays of `rows x knotsAcross`
 * entries. A row that begins at the second slot of an even number of strings has one knot less;
 * its last entry stands for no knot.
 */
export interface Lattice {
  /** How many strings hang in front. */
  readonly strings: number;
  readonly rows: number;
  /** Slot of the left string of the first knot in the first row, from 0. */
  readonly first: 0 | 1;
}

/** Entries kept for each row: the knots of the longest rows. */
export function knotsAcross({ strings }: Pick<Lattice, 'strings'>): number {
  return Math.floor(strings / 2);
}

/** Slot of the left string of a row's first knot; rows and slots from 0. */
export function firstSlotOf({ first }: Pick<Lattice, 'first'>, row: number): 0 | 1 {
  return ((first + row) % 2) as 0 | 1;
}

/** How many places for knots a row has. */
export function knotsInRow(lattice: Pick<Lattice, 'strings' | 'first'>, row: number): number {
  return Math.floor((lattice.strings - firstSlotOf(lattice, row)) / 2);
}

/** Slot of the left string of a knot; `place` counts the places of the row from the left, from 0. */
export function slotOfPlace(lattice: Pick<Lattice, 'first'>, row: number, place: number): number {
  return firstSlotOf(lattice, row) + 2 * place;
}

/** Where a knot stands in the arrays of the lattice. */
export function knotIndex(lattice: Pick<Lattice, 'strings'>, row: number, place: number): number {
  return row * knotsAcross(lattice) + place;
}

/** How many places for knots the whole lattice has. */
export function knotsInLattice(lattice: Lattice): number {
  const inPair = knotsInRow(lattice, 0) + knotsInRow(lattice, 1);
  const pairs = Math.floor(lattice.rows / 2);
  return pairs * inPair + (lattice.rows % 2) * knotsInRow(lattice, 0);
}
