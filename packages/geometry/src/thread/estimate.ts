import type { KnotKind } from '@halfhitch/core';

/**
 * Length of the tying string in a knot by wraps and straight lines alone, in diameters of the
 * tying string: a second way to the figure that tightening gives, which shares no code with it.
 *
 * Seen along the held string, the tying string lies on a circle of radius R = (D + d)/2. It comes
 * in between the wraps of two knots, one thickness above its own wraps and so at the distance R + d
 * from the axis, half a thickness beyond the wraps at its side; it runs straight to the circle,
 * goes round and climbs one thickness a turn, and leaves as it came. From where it comes in to
 * where it leaves, it sweeps two turns and the angle between the two places. For half a turn it
 * rides one thickness further out, over its own bar. In a cow hitch it also turns back there,
 * round half a circle of its own thickness in place of a straight line.
 *
 * @param ratio thickness of the held string, by that of the tying string
 */
export function estimatedTyingLength(kind: KnotKind, ratio = 1): number {
  const circle = (ratio + 1) / 2;
  const outside = circle + 1;
  const between = 2 * Math.asin((circle + 0.5) / outside);
  const straightAngle = Math.acos(circle / outside);
  const straight = Math.sqrt(outside ** 2 - circle ** 2);
  const wrapped = 4 * Math.PI + between - 2 * straightAngle;
  const wraps = Math.hypot(circle * wrapped, wrapped / (2 * Math.PI));
  const riding = Math.PI;
  const turnsBack = kind === 'forward-backward' || kind === 'backward-forward';
  return wraps + 2 * straight + riding + (turnsBack ? Math.PI / 2 - 1 : 0);
}
