import { BEND_RADIUS } from './bent-cow.js';

/**
 * How the held string runs while a knot is tied onto it: from the upper right through the knot's
 * place, then down where it hangs. Knots are worked out on a straight held string; leaning them
 * carries them along with it. For knots begun from the left; the others are mirror images.
 */

/** Up to where the held string of a knot whose strings change places runs straight at 45 degrees. */
const STRAIGHT_TO = 1.3;

/** From where on it hangs. */
const HANGS_FROM = 3.6;

const STEP = 0.05;
const FROM = -12;
const TO = 40;

/** The held string at steps of `STEP` along it, and its angle to straight down there. */
interface Axis {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly angle: Float64Array;
}

const axes = new Map<boolean, Axis>();

function axisOf(comesBack: boolean): Axis {
  let axis = axes.get(comesBack);
  if (axis === undefined) {
    axis = laidOut(comesBack ? backAngle : throughAngle);
    axes.set(comesBack, axis);
  }
  return axis;
}

const LEAN = -Math.PI / 4;

/** It comes from the right at 45 degrees and hangs on the left. */
function throughAngle(s: number): number {
  const f = Math.min(Math.max((s - STRAIGHT_TO) / (HANGS_FROM - STRAIGHT_TO), 0), 1);
  return LEAN * (1 - f * f * (3 - 2 * f));
}

/** It comes from the right and, from the middle of the knot on, hangs straight down. */
function backAngle(s: number): number {
  return Math.max(LEAN, Math.min(s / BEND_RADIUS, 0));
}

function laidOut(angleAt: (s: number) => number): Axis {
  const count = Math.round((TO - FROM) / STEP) + 1;
  const middle = Math.round(-FROM / STEP);
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  const angle = new Float64Array(count);
  for (let i = 0; i < count; i++) angle[i] = angleAt(FROM + i * STEP);
  for (let i = middle + 1; i < count; i++) {
    const between = (angle[i - 1]! + angle[i]!) / 2;
    x[i] = x[i - 1]! + Math.sin(between) * STEP;
    y[i] = y[i - 1]! + Math.cos(between) * STEP;
  }
  for (let i = middle - 1; i >= 0; i--) {
    const between = (angle[i]! + angle[i + 1]!) / 2;
    x[i] = x[i + 1]! - Math.sin(between) * STEP;
    y[i] = y[i + 1]! - Math.cos(between) * STEP;
  }
  return { x, y, angle };
}

/** Points worked out on a straight held string, carried along with the leaning one. */
export function leaned(points: ArrayLike<number>, comesBack: boolean): Float64Array {
  const axis = axisOf(comesBack);
  const last = axis.x.length - 1;
  const out = new Float64Array(points.length);
  for (let k = 0; k < points.length; k += 3) {
    const at = Math.min(Math.max((points[k + 1]! - FROM) / STEP, 0), last);
    const i = Math.min(Math.floor(at), last - 1);
    const f = at - i;
    const mean = (of: Float64Array) => of[i]! + (of[i + 1]! - of[i]!) * f;
    const angle = mean(axis.angle);
    out[k] = mean(axis.x) + Math.cos(angle) * points[k]!;
    out[k + 1] = mean(axis.y) - Math.sin(angle) * points[k]!;
    out[k + 2] = points[k + 2]!;
  }
  return out;
}
