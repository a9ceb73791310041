import type { Image } from './symmetry.js';

/** What is drawn into places: a byte, and the byte of each of its images. */
export type Ink = Readonly<Record<Image, number>>;

/** A colour, any colour or no knot: the same wherever it is drawn again. */
export function plainInk(byte: number): Ink {
  return { itself: byte, sides: byte, ends: byte, turn: byte };
}

// By kind in the order of KNOT_KINDS: the kind whose path is the image of this one's.
const SIDES = [1, 0, 3, 2];
const ENDS = [1, 0, 2, 3];
const TURN = [0, 1, 3, 2];

/** A kind of knot: its images are the kinds whose way is the image of its way. */
export function kindInk(kind: number): Ink {
  return {
    itself: kind,
    sides: SIDES[kind] ?? kind,
    ends: ENDS[kind] ?? kind,
    turn: TURN[kind] ?? kind,
  };
}
