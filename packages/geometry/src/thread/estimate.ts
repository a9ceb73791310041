import type { KnotKind } from '@halfhitch/core';

/**
 * Length of the tying string in a knot by wraps and straight lines alone, in diameters of the
 * tying string: a second way to the figure that tightening gives, which shares no code with it.
 *
 * The string lies at the distance (D + d)/2 from the axis of the held string. A clove hitch goes
 * round 2.5 times, climbing one thickness a turn, and lifts over its own bar once. A cow hitch
 * goes round once in each direction, with its middle lying over both ends at the front.
 *
 * @param ratio thickness of the held string, by that of the tying string
 */
export function estimatedTyingLength(kind: KnotKind, ratio = 1): number {
  const round = Math.PI * (ratio + 1);
  // Over its own bar the string lies one thickness further out, there and back.
  const lift = 2 * (Math.SQRT2 - 1) + 1;
  if (kind === 'forward' || kind === 'backward') {
    return 2.5 * Math.hypot(round, 1) + lift;
  }
  return 2 * Math.hypot(round, 1) + round / 2 + lift;
}
