import { type DiagonalPattern, knotsAcross, NO_KNOT } from '../../src/index.js';

/** A pattern knotted so many times below itself; a row is left bare after an odd number of rows. */
export function tiled(pattern: DiagonalPattern, times: number): DiagonalPattern {
  const across = knotsAcross(pattern);
  const apart = pattern.rows + (pattern.rows % 2);
  const knots = new Uint8Array(apart * times * across).fill(NO_KNOT);
  for (let repeat = 0; repeat < times; repeat++) knots.set(pattern.knots, repeat * apart * across);
  return { ...pattern, rows: apart * times, knots };
}
