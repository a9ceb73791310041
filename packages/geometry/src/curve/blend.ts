import { between } from './drape.js';
import type { Vec3 } from './track.js';

type Points = ArrayLike<number>;

const headingOf = (points: Points, i: number): Vec3 => {
  const x = points[i + 3]! - points[i]!;
  const y = points[i + 4]! - points[i + 1]!;
  const z = points[i + 5]! - points[i + 2]!;
  const length = Math.hypot(x, y, z) || 1;
  return [x / length, y / length, z / length];
};

/**
 * A thread between two ways of lying, `f` of the way from one to the other, held at its start: both
 * given by as many points at equal steps. Directions are the mean ones, so that it keeps its length.
 */
export function blended(from: Points, to: Points, f: number): Float64Array {
  const out = new Float64Array(to.length);
  let x = from[0]! + (to[0]! - from[0]!) * f;
  let y = from[1]! + (to[1]! - from[1]!) * f;
  let z = from[2]! + (to[2]! - from[2]!) * f;
  for (let i = 0; i < out.length; i += 3) {
    out[i] = x;
    out[i + 1] = y;
    out[i + 2] = z;
    if (i + 3 >= out.length) break;
    const step = Math.hypot(to[i + 3]! - to[i]!, to[i + 4]! - to[i + 1]!, to[i + 5]! - to[i + 2]!);
    const heading = between(headingOf(from, i), headingOf(to, i), f);
    x += heading[0] * step;
    y += heading[1] * step;
    z += heading[2] * step;
  }
  return out;
}

/** A joined curve, and the points between which it differs from the two it was made of. */
export interface Splice {
  readonly points: Float64Array;
  readonly from: number;
  readonly to: number;
}

/**
 * Two curves, one going on in the other, joined smoothly: `cuts` times `unit` of length before and
 * after the join is replaced by a cubic that keeps to both directions, pushed aside in its middle by `bow`.
 */
export function spliced(
  a: Points,
  b: Points,
  cuts: readonly [number, number],
  unit: number,
  bow: Vec3 = [0, 0, 0],
): Splice {
  const na = a.length / 3;
  const end = backFrom(a, cuts[0] * unit);
  const start = forwardTo(b, cuts[1] * unit);
  const p: Vec3 = [a[end * 3]!, a[end * 3 + 1]!, a[end * 3 + 2]!];
  const q: Vec3 = [b[start * 3]!, b[start * 3 + 1]!, b[start * 3 + 2]!];
  const u = headingOf(a, Math.max(end - 1, 0) * 3);
  const v = headingOf(b, Math.min(start, b.length / 3 - 2) * 3);
  const bridge = cubic(p, u, q, v, bow);
  const out = new Float64Array((end + 1) * 3 + bridge.length - 6 + (b.length / 3 - start) * 3);
  let at = 0;
  for (let i = 0; i <= Math.min(end, na - 1) * 3 + 2; i++) out[at++] = a[i]!;
  for (let i = 3; i < bridge.length - 3; i++) out[at++] = bridge[i]!;
  const to = at / 3;
  for (let i = start * 3; i < b.length; i++) out[at++] = b[i]!;
  return { points: out, from: end, to };
}

const BRIDGE = 13;

/** A smooth way between two places that keeps to the headings at both. */
export function cubic(p: Vec3, u: Vec3, q: Vec3, v: Vec3, bow: Vec3): Float64Array {
  const reach = Math.hypot(q[0] - p[0], q[1] - p[1], q[2] - p[2]);
  const back = u[0] * v[0] + u[1] * v[1] + u[2] * v[2] < -0.3;
  // A thread that turns back needs long handles to make a round turn.
  const pull = back ? reach * 1.35 : reach;
  const count = back ? 2 * BRIDGE : BRIDGE;
  const out = new Float64Array(count * 3);
  for (let i = 0; i < count; i++) {
    const s = i / (count - 1);
    const a = 2 * s ** 3 - 3 * s ** 2 + 1;
    const b = (s ** 3 - 2 * s ** 2 + s) * pull;
    const d = (s ** 3 - s ** 2) * pull;
    const bump = 16 * s ** 2 * (1 - s) ** 2;
    for (let c = 0; c < 3; c++) {
      out[i * 3 + c] = a * p[c]! + b * u[c]! + (1 - a) * q[c]! + d * v[c]! + bump * bow[c]!;
    }
  }
  return out;
}

function backFrom(points: Points, length: number): number {
  let sum = 0;
  let i = points.length / 3 - 1;
  while (i > 1 && sum < length) {
    sum += stepOf(points, i - 1);
    i--;
  }
  return i;
}

function forwardTo(points: Points, length: number): number {
  let sum = 0;
  let i = 0;
  while (i < points.length / 3 - 2 && sum < length) {
    sum += stepOf(points, i);
    i++;
  }
  return i;
}

const stepOf = (points: Points, i: number): number =>
  Math.hypot(
    points[i * 3 + 3]! - points[i * 3]!,
    points[i * 3 + 4]! - points[i * 3 + 1]!,
    points[i * 3 + 5]! - points[i * 3 + 2]!,
  );
