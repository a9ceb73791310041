import { joined, lengthOf, resample } from '../../curve/polyline.js';
import { ofLength } from '../../row/joint.js';
import { latticeKnots } from '../shapes.js';
import { wayOut } from '../ways.js';
import { madeAt } from './moment.js';

/** How a knot made on a leaning string differs from the one in the lattice, along its lead. */
interface Settling {
  /** Displacements at steps of `SETTLING_STEP` along the lead; xyz triplets. */
  readonly by: Float64Array;
}

const SETTLING_STEP = 0.1;
const settlings = new Map<number, Settling>();

export function settlingOf(code: number): Settling {
  let settling = settlings.get(code);
  if (settling === undefined) {
    const made = madeAt(code, 1, 1).points;
    const { tying } = latticeKnots()[code]!;
    const out = wayOut(code, tying.goes).levels[0]!;
    const end = out.length;
    const done = joined(tying.points.subarray(0, 3 * tying.to + 3), out, [
      out[end - 3]!,
      out[end - 2]! + 40,
      0,
    ]);
    const length = Math.min(lengthOf(made), lengthOf(done));
    const count = Math.floor(length / SETTLING_STEP);
    const [a, b] = [made, done].map((points) =>
      resample(ofLength(points, count * SETTLING_STEP), count + 1),
    ) as [Float64Array, Float64Array];
    settling = { by: b.map((v, i) => v - a[i]!) };
    settlings.set(code, settling);
  }
  return settling;
}

export function moved(lead: Float64Array, { by }: Settling, share: number): Float64Array {
  const out = lead.slice();
  const last = by.length / 3 - 1;
  let along = 0;
  for (let i = 0; i < out.length; i += 3) {
    if (i > 0) along += gap(lead, i / 3 - 1, i / 3);
    const at = Math.min(along / SETTLING_STEP, last);
    const k = Math.min(Math.floor(at), last - 1);
    for (let c = 0; c < 3; c++) {
      const a = by[3 * k + c]!;
      out[i + c] = out[i + c]! + share * (a + (by[3 * k + 3 + c]! - a) * (at - k));
    }
  }
  return out;
}

/** Length of a tight knot's lead before the part that belongs to the knot itself. */
export function ofEntry(code: number): number {
  const { points, from } = latticeKnots()[code]!.tying;
  return lengthOf(points.subarray(0, 3 * from + 3)) + 0.1;
}

/** A lead without the first `length` of it. */
export function without(points: Float64Array, length: number): Float64Array {
  let first = 0;
  for (let left = length; ; first++) {
    const step = gap(points, first, first + 1);
    if (step > left) {
      const f = left / step;
      const out = points.slice(3 * first);
      for (let c = 0; c < 3; c++) out[c] = out[c]! + (out[3 + c]! - out[c]!) * f;
      return out;
    }
    left -= step;
  }
}

const gap = (p: Float64Array, i: number, j: number): number =>
  Math.hypot(p[3 * j]! - p[3 * i]!, p[3 * j + 1]! - p[3 * i + 1]!, p[3 * j + 2]! - p[3 * i + 2]!);
