import type { ChartColour } from '../chart/chart.js';
import type { Lattice } from './lattice.js';

/** Entry of a place in which no knot is tied, or none is wanted. */
export const BARE = 255;

/** Entry of a place that may show any colour, in a picture that is wanted. */
export const ANY_COLOUR = 254;

/** The colours that the knots of a lattice show, or are wanted to show. */
export interface DiagonalPicture extends Lattice {
  readonly name: string;
  readonly colours: readonly ChartColour[];
  /** Colour of each knot as an index into `colours`, ANY_COLOUR or BARE; `rows x knotsAcross`. */
  readonly cells: Uint8Array;
}
