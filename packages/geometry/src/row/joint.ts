import { type Splice, spliced } from '../curve/blend.js';
import { lengthOf } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import { type Obstacle, settled } from '../relax/settle.js';
import { baseLines, type Setting } from './setting.js';

/** How two parts of a lead are joined; lengths before and after the join, in diameters. */
export interface Join {
  /** What is bent to make it smooth. */
  readonly cuts: readonly [number, number];
  /** What may give way beyond that. */
  readonly yields: readonly [number, number];
}

export const JOIN: Join = { cuts: [0.4, 0.9], yields: [1.2, 1.2] };

/** The same after a knot that has caught a lead, out of which its own lead comes more steeply. */
export const JOIN_PAST: Join = { cuts: [0.3, 0.6], yields: [1.2, 1.2] };

/** The same from such a knot to another that catches its lead in turn. */
export const JOIN_CAUGHT_PAST: Join = { cuts: [0.8, 0.9], yields: [1.8, 3] };

/** Two parts of a lead joined smoothly, clear of base strings and of other leads that are near. */
export function joint(
  setting: Setting,
  a: Float64Array,
  b: Float64Array,
  others: readonly Obstacle[],
  bow: Vec3 = [0, 0, 0],
  join: Join = JOIN,
): Float64Array {
  const d = setting.options.diameter;
  const splice = spliced(a, b, join.cuts, d, bow);
  const lines = baseLines(setting).map((points) => ({
    points,
    diameter: d * setting.options.ratio,
  }));
  return settled({
    points: splice.points,
    ...room(splice, join, d),
    diameter: d,
    obstacles: [...lines, ...others],
  });
}

function room(
  { points, from, to }: Splice,
  { yields }: Join,
  d: number,
): { from: number; to: number } {
  let first = from;
  for (let s = 0; first > 0 && s < yields[0] * d; first--) s += stepOf(points, first - 1);
  let last = to;
  for (let s = 0; last < points.length / 3 - 1 && s < yields[1] * d; last++)
    s += stepOf(points, last);
  return { from: first, to: last };
}

/** Share of a step below which a last one is too short to tell its direction, and so how it is bent. */
const SHORT = 0.7;

/** A lead whose free end is paid in or out so that it has a given length. */
export function ofLength(points: Float64Array, length: number): Float64Array {
  let over = lengthOf(points) - length;
  let last = points.length / 3 - 1;
  while (last > 1 && over > stepOf(points, last - 1)) {
    over -= stepOf(points, last - 1);
    last--;
  }
  const share = 1 - over / stepOf(points, last - 1);
  const end = [0, 1, 2].map((c) => {
    const from = points[last * 3 - 3 + c]!;
    return from + (points[last * 3 + c]! - from) * share;
  });
  // Such a step is taken together with the one before.
  if (share < SHORT && last > 1) last--;
  const out = points.slice(0, (last + 1) * 3);
  out.set(end, last * 3);
  return out;
}

const stepOf = (points: Float64Array, i: number): number =>
  Math.hypot(
    points[i * 3 + 3]! - points[i * 3]!,
    points[i * 3 + 4]! - points[i * 3 + 1]!,
    points[i * 3 + 5]! - points[i * 3 + 2]!,
  );
