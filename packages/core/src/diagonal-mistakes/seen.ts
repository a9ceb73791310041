import type { DiagonalPicture } from '../diagonal/picture.js';

/** How a knot looks from the front, beside its colour; kinds are as in KNOT_KINDS. */
export const DiagonalLook = {
  /** A single half hitch. */
  half: 4,
  notLooked: 254,
  /** No knot. */
  none: 255,
} as const;

/**
 * What a maker sees of a piece so far. Rows are those knotted so far, as they lie in the piece;
 * in each row knots count by place from the left, also where they lie a slot to the side. A place
 * that was not looked at is ANY_COLOUR; BARE is a place without a knot.
 */
export interface DiagonalSeen extends DiagonalPicture {
  /** Look of each knot, `rows x knotsAcross`: an index into KNOT_KINDS, or a DiagonalLook. */
  readonly looks?: Uint8Array;
  /** Colour of the string that hangs in each slot below the last row, or ANY_COLOUR. */
  readonly hanging?: Uint8Array;
}
