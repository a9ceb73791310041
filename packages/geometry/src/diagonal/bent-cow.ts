import { KNOT_KINDS } from '@halfhitch/core';
import { lengthOf, resample } from '../curve/polyline.js';
import { shapeOf } from '../fabric/shapes.js';
import { Rope } from '../relax/rope.js';

/**
 * Radius of the bend of a held string that comes back to its side, in tying diameters: as sharp as
 * the two wraps on the inside of the bend leave room for.
 */
export const BEND_RADIUS = 2.2;

/** It comes from the one side at 45 degrees and goes back to it. */
const HALF_TURN = Math.PI / 4;

const SPACING = 0.13;
const SLACK = 1.02;
const BEND = 0.6;
const STEPS = 200;
const PULL = 0.05;
const LEAST_PULL = 0.005;
const SWEEPS = 4;

/** A place on the held string and the unit direction to its right there, when it is looked along. */
interface OnAxis {
  readonly x: number;
  readonly y: number;
  readonly across: readonly [number, number];
}

/** The held string `s` along from the middle of the bend; it bulges to the left, its middle at 0. */
function onBend(s: number): OnAxis {
  const half = BEND_RADIUS * HALF_TURN;
  const within = Math.max(-half, Math.min(half, s));
  const angle = within / BEND_RADIUS;
  const [dx, dy] = [Math.sin(angle), Math.cos(angle)];
  return {
    x: BEND_RADIUS * (1 - dy) + dx * (s - within),
    y: BEND_RADIUS * dx + dy * (s - within),
    across: [dy, -dx],
  };
}

/** Points of a straight knot carried along with its held string as that is bent. */
export function bent(points: Float64Array): Float64Array {
  const out = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    const { x, y, across } = onBend(points[i + 1]!);
    out[i] = x + across[0] * points[i]!;
    out[i + 1] = y + across[1] * points[i]!;
    out[i + 2] = points[i + 2]!;
  }
  return out;
}

/** The held string, straight before it is bent, from `from` to `to` along it. */
export function bentHeld(from: number, to: number): Float64Array {
  const steps = Math.max(1, Math.ceil((to - from) / SPACING));
  const straight = new Float64Array(3 * (steps + 1));
  for (let i = 0; i <= steps; i++) straight[3 * i + 1] = from + ((to - from) * i) / steps;
  return bent(straight);
}

let known: Float64Array | undefined;

/**
 * The lead of a tight forward-backward knot whose held string comes from the upper right and goes
 * back to the lower right, as it does in a lattice of knots: the tight knot carried along with the
 * bend and then pulled tight round it. Tying diameters; the bend's middle on x = y = 0.
 */
export function bentCow(): Float64Array {
  known ??= tightenedRound();
  return known;
}

function tightenedRound(): Float64Array {
  const straight = shapeOf(KNOT_KINDS.indexOf('forward-backward'), 1, 1).points;
  const lead = bent(straight);
  const rope = new Rope(
    [
      {
        points: resample(lead, Math.round(lengthOf(lead) / SPACING) + 1),
        closed: false,
        diameter: SLACK,
      },
      { points: bentHeld(-6, 6), closed: false, diameter: 1, held: 'all' },
    ],
    { bend: BEND },
  );
  for (let k = 0; k < STEPS; k++) rope.step(PULL * (1 - k / STEPS) + LEAST_PULL, SWEEPS);
  return resample(rope.pointsOf(0), straight.length / 3);
}
