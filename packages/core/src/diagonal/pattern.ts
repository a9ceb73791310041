import type { ChartColour } from '../chart/chart.js';
import type { KnotKind } from '../model/knot.js';
import { KNOT_KINDS } from '../model/knot.js';
import { knotIndex, type Lattice } from './lattice.js';

/** Entry of a place where no knot is tied: the two strings hang past each other, order kept. */
export const NO_KNOT = 255;

/** A diagonal pattern: how the strings hang, and the knot in each place of the lattice. */
export interface DiagonalPattern extends Lattice {
  /** What the pattern is called; may be empty. */
  readonly name: string;
  readonly colours: readonly ChartColour[];
  /** Colour of each string at the start, from the left: an index into `colours`. */
  readonly start: Uint8Array;
  /** Kind of each knot as an index into KNOT_KINDS, or NO_KNOT; `rows x knotsAcross` of them. */
  readonly knots: Uint8Array;
}

/** The knot in a place, or null where none is tied; rows and places from 0. */
export function knotAt(pattern: DiagonalPattern, row: number, place: number): KnotKind | null {
  return KNOT_KINDS[pattern.knots[knotIndex(pattern, row, place)] as number] ?? null;
}
