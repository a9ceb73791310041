import { KNOT_KINDS } from '@halfhitch/core';
import { type LatticeWork, NO_KNOT } from '../../src/diagonal/knots.js';
import { estimatedTyingLength } from '../../src/thread/estimate.js';

/**
 * Length of each string by wraps and straight lines alone, in diameters, in the order in which the
 * strings hang: a second way to what the tight knots give, which shares no curve with it.
 *
 * Strings run along the lattice from the middle of one side of a knot's place to the middle of
 * another: straight through where they are held and change sides, and, where they are held and come
 * back, round a bend as sharp as round a thread of their own thickness. A tying string spends the length of its wraps, and besides it the
 * way from the side of the place to the wraps and back. In a row without a knot for it a string
 * runs down the height of the row.
 *
 * @param side of a knot's square place, in diameters
 */
export function estimatedUsage(work: LatticeWork, side: number): Float64Array {
  const { strings, rows, across, kinds, tying, held } = work;
  const out = new Float64Array(strings.length);
  const idle = new Float64Array(strings.length).fill(rows);
  // Wraps are told from where the string meets the knot, one and a half diameters off its middle.
  const meets = 1.5;
  // A quarter of a circle of radius 1 in place of the corner's two sides.
  const saved = 2 - Math.PI / 2;
  for (let cell = 0; cell < rows * across; cell++) {
    const code = kinds[cell]!;
    if (code === NO_KNOT) continue;
    const comesBack = code >= 2;
    out[tying[cell]!]! += estimatedTyingLength(KNOT_KINDS[code]!) + side - 2 * meets;
    out[held[cell]!]! += side - (comesBack ? saved : 0);
    idle[tying[cell]!]!--;
    idle[held[cell]!]!--;
  }
  for (let k = 0; k < out.length; k++) out[k]! += idle[k]! * side * Math.SQRT1_2;
  return out;
}
