import { KNOT_KINDS, type KnotKind } from '@halfhitch/core';
import { placed } from '../curve/polyline.js';
import { finishedKnot } from '../knot/finished.js';

/**
 * A tight knot as it sits in a piece, in tying diameters, its held string on x = z = 0 and its
 * middle on y = 0.
 */
export interface KnotShape {
  readonly kind: KnotKind;
  /** The lead from where it comes into the knot to where it leaves it. */
  readonly points: Float64Array;
  /** The same, lifted where it rides over its own wraps, so that an old lead lies beneath. */
  readonly lifted: Float64Array;
  /** First and last point that belong to the knot itself and not to the way to its neighbours. */
  readonly from: number;
  readonly to: number;
  /** The side the lead comes in from and the one it leaves to: -1 left, 1 right. */
  readonly entrySide: number;
  readonly exitSide: number;
}

/** Kinds of knots as numbers: places in KNOT_KINDS, so that they fit typed arrays. */
export const kindCode = (kind: KnotKind): number => KNOT_KINDS.indexOf(kind);

export const NO_KNOT = -1;

/** The same kind in a mirror. */
export const mirrorCode = (code: number): number => (code < 0 ? code : code ^ 1);

/** Whether both halves of the knot go the same way. */
export const isClove = (code: number): boolean => code < 2;

/** Whether a kind's lead comes in from the right: its first half is a backward one. */
export const startsRight = (code: number): boolean => (code & 1) === 1;

/** Whether it leaves to the right: cloves cross over, cow hitches go back. */
export const endsRight = (code: number): boolean => (code < 2 ? code === 0 : code === 3);

/** Share of the half pitch at which the knot ends and the way to its neighbour begins. */
const REACH_OF_KNOT = 0.45;

/** Thickness of the old lead that lies under the riding turn, slightly pressed. */
const LIFT = 1.02;

/** The tight knot, drawn out along the held string by `stretch`. */
export function shapeOf(code: number, ratio: number, stretch: number): KnotShape {
  const kind = KNOT_KINDS[code]!;
  const knot = finishedKnot(kind, { tyingDiameter: 1, heldDiameter: ratio });
  const points = placed(knot.tying, 1);
  let top = Infinity;
  let bottom = -Infinity;
  let front = -Infinity;
  for (let i = 1; i < points.length; i += 3) {
    top = Math.min(top, points[i]!);
    bottom = Math.max(bottom, points[i]!);
    front = Math.max(front, points[i + 1]!);
  }
  const middle = isClove(code) ? 0 : (top + bottom) / 2;
  for (let i = 1; i < points.length; i += 3) points[i] = (points[i]! - middle) * stretch;
  const reach = REACH_OF_KNOT * (knot.size.width / 2);
  let from = 0;
  while (Math.abs(points[from * 3]!) > reach) from++;
  let to = points.length / 3 - 1;
  while (Math.abs(points[to * 3]!) > reach) to--;
  return {
    kind,
    points,
    lifted: lifted(points, front),
    from,
    to,
    entrySide: Math.sign(knot.entry.at[0]),
    exitSide: Math.sign(knot.exit.at[0]),
  };
}

/** Where the lead rides over its wraps it starts to rise one thickness below its foremost point. */
function lifted(points: Float64Array, front: number): Float64Array {
  const out = Float64Array.from(points);
  const base = front - 0.85;
  for (let i = 2; i < out.length; i += 3) {
    const above = (out[i]! - base) / (front - base);
    if (above > 0) out[i] = out[i]! + LIFT * above * above * (3 - 2 * Math.min(above, 1));
  }
  return out;
}
