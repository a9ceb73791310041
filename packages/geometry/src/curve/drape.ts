import type { Vec3 } from './track.js';

/** One part of a drape: bend to a new heading on a circle, then go straight. */
export interface DrapeStep {
  /** Unit heading to bend to; never straight back. */
  readonly to: Vec3;
  readonly radius: number;
  readonly run: number;
}

/** How a loose thread lies from where it is held: headings along its length. Ends straight. */
export interface Drape {
  readonly heading: Vec3;
  readonly steps: readonly DrapeStep[];
}

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** The heading part of the way from a to b along their great circle. */
export function between(a: Vec3, b: Vec3, f: number): Vec3 {
  const angle = Math.acos(Math.min(Math.max(dot(a, b), -1), 1));
  if (angle < 1e-9) return b;
  const s = Math.sin(angle);
  const p = Math.sin((1 - f) * angle) / s;
  const q = Math.sin(f * angle) / s;
  return [a[0] * p + b[0] * q, a[1] * p + b[1] * q, a[2] * p + b[2] * q];
}

/** Heading at arc length `s`. */
export function headingOf(drape: Drape, s: number): Vec3 {
  let from = drape.heading;
  let at = 0;
  for (const step of drape.steps) {
    const angle = Math.acos(Math.min(Math.max(dot(from, step.to), -1), 1));
    const bend = angle * step.radius;
    if (s < at + bend) return between(from, step.to, (s - at) / bend);
    at += bend + step.run;
    from = step.to;
    if (s < at) return from;
  }
  return from;
}

/**
 * A thread of the given length between two ways of lying, `f` of the way from one to the other. Its
 * headings are the mean ones, so it is neither stretched nor sharply bent on the way.
 *
 * @returns `count` points at equal steps, starting at `at`
 */
export function draped(
  at: Vec3,
  from: Drape,
  to: Drape,
  f: number,
  length: number,
  count: number,
): Float64Array {
  const out = new Float64Array(count * 3);
  const step = length / (count - 1);
  let [x, y, z] = at;
  for (let i = 0; i < count; i++) {
    out[i * 3] = x;
    out[i * 3 + 1] = y;
    out[i * 3 + 2] = z;
    const s = (i + 0.5) * step;
    const heading = between(headingOf(from, s), headingOf(to, s), f);
    x += heading[0] * step;
    y += heading[1] * step;
    z += heading[2] * step;
  }
  return out;
}
