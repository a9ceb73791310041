import type { FabricChunk, FabricStrand } from '../fabric/chunk.js';

/** A piece of a string of diagonal work. */
export interface DiagonalStrand extends FabricStrand {
  /**
   * Knots that it goes through, tying or held, in its own order; five numbers each: row, place,
   * first point, number of points, and 1 where it ties or 0 where it is held.
   */
  readonly passes: Int32Array;
}

/** Some rows of diagonal work. */
export interface DiagonalChunk extends FabricChunk {
  readonly strands: readonly DiagonalStrand[];
}

/** Fields of a knot in `passes`. */
export const PASS_FIELDS = 5;
