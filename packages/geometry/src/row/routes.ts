import { cubic } from '../curve/blend.js';
import { type Drape, draped } from '../curve/drape.js';
import { joined } from '../curve/polyline.js';
import { Track, type Vec3 } from '../curve/track.js';
import type { KnotEnd } from '../knot/finished.js';
import { OUTWARD } from '../knot/loose.js';

/**
 * Ways of leads between knots and of leads that rest, in tying diameters unless `d` scales them.
 */
const UP: Vec3 = [0, -1, 0];
const DOWN: Vec3 = [0, 1, 0];
const BACK: Vec3 = [0, 0, -1];
const FRONT: Vec3 = [0, 0, 1];

/** Radius of free bends. */
export const BEND = 0.75;

/** How far to the side of where it goes through a lead hangs behind the work, behind a knot. */
export const ASIDE = 2 * BEND;

/** How near to each other, in the plane of the work, threads behind it may be in one layer. */
export const NEARBY = 1.1;

/** Length of a new lead's tail behind the work. */
export const TAIL = 3;

/** How far beside where it comes through it hangs, where much else is behind the work. */
export const TAIL_ASIDE = 2;

/** Distance of points on a resting lead. */
const POINT_STEP = 0.14;

/** Thickness of a lead, and how far behind the work it rests. */
export interface Passage {
  readonly diameter: number;
  /** Depth at which leads rest behind the work, a positive number. */
  readonly behind: number;
}

const step = (to: Vec3, run: number, d: number) => ({ to, radius: BEND * d, run: run * d });

/** Hanging free in front, further out where the lead came back to the side it was tied from. */
export const hanging = (exit: KnotEnd, cameBack: boolean, d: number): Drape => ({
  heading: exit.heading,
  steps: cameBack ? [step(OUTWARD, 0, d), step(DOWN, 0, d)] : [step(DOWN, 0, d)],
});

/** Laid out to the front and up over the finished work, out of the hand's way. */
export const laidAside = (at: KnotEnd, d: number): Drape => ({
  heading: at.heading,
  steps: [step(FRONT, 1.4, d), step(UP, 0, d)],
});

/** Held out to the front, on the way from hanging down to lying up. */
export const heldOut = (at: KnotEnd, d: number): Drape => ({
  heading: at.heading,
  steps: [step(FRONT, 0, d)],
});

/** From where a lead goes straight to the back, `at`, on to its depth, `aside` diameters to the right and down. */
export function hungBehind(at: Vec3, room: Passage, aside: number): Drape {
  const d = room.diameter;
  const run = Math.max(at[2] + room.behind - BEND * d, 0);
  return {
    heading: BACK,
    steps: [
      { to: BACK, radius: 0, run },
      step([Math.sign(aside), 0, 0], Math.abs(aside) - ASIDE, d),
      step(DOWN, 0, d),
    ],
  };
}

/** How a lead leaves the front beside its last knot. */
export interface WayOut {
  /** How much of the knot's end gives way, in diameters. */
  readonly letGo: number;
  /** Direction between the knot's and straight to the back; bends to it and from it. */
  readonly heading: Vec3;
  readonly radius: number;
  /** Straight part between the bends, in diameters. */
  readonly run?: number;
}

/** Straight to the back between two knots. */
export const WAY_OUT: WayOut = { letGo: 0.5, heading: BACK, radius: 0.6 };

/** The same where the knot beside it is the last of a row with a wrapped edge, and no edge knot. */
export const WAY_OUT_WRAPPED: WayOut = { letGo: 0.75, heading: [0, 0.18, -0.9837], radius: 0.6 };

/** The same in a wide gap. */
export const WAY_OUT_WRAPPED_WIDE: WayOut = { ...WAY_OUT_WRAPPED, letGo: 0 };

/**
 * The same from a knot that the lead came back from: below, clear of what was taken to the back beside
 * that knot, and of what comes up for the row below.
 */
export const WAY_OUT_BACK: WayOut = { letGo: 0.05, heading: [0, 0.64, -0.7684], radius: 0.55 };

/** The same where the edge knot beside it ends in the same gap, as in work two knots wide. */
export const WAY_OUT_FACING: WayOut = { letGo: 0.9, heading: [0, -0.2955, -0.9553], radius: 0.6 };

/** The same in a wide gap. */
export const WAY_OUT_FACING_WIDE: WayOut = { ...WAY_OUT_FACING, letGo: 0, radius: 0.75 };

/** The same from a knot that has caught a lead, which goes to the back there too. Found by search. */
export const WAY_OUT_PAST: WayOut = {
  letGo: 0.95,
  heading: [0.058, 0.741, -0.669],
  radius: 0.7,
  run: 0.12,
};

/** The same in a wide gap, further on beside what the knot has caught. */
export const WAY_OUT_WIDE: WayOut = { letGo: -0.6, heading: BACK, radius: 0.75 };

/** The bends by which a lead leaves the front. */
function straightBack(from: KnotEnd, way: WayOut, d: number): Float64Array {
  const radius = way.radius * d;
  const side = from.heading[0] < 0 ? -1 : 1;
  const [x, y, z] = way.heading;
  const steps = [
    { to: [side * x, y, z] as const, radius, run: (way.run ?? 0) * d },
    { to: BACK, radius, run: 0 },
  ];
  if (way.letGo < 0) steps.unshift({ to: from.heading, radius: 0, run: -way.letGo * d });
  const bends: Drape = { heading: from.heading, steps };
  return resting(from, bends, bends, 1, lengthOfDrape(bends), d);
}

/** A lead that leaves the front after a knot, up to where it heads straight to the back. */
export function takenBack(points: Float64Array, way: WayOut, d: number): Float64Array {
  const kept = way.letGo > 0 ? cutBack(points, way.letGo * d) : points;
  return joined(kept, straightBack(endOf(kept), way, d));
}

/** Length of a drape's bends and runs. */
function lengthOfDrape({ heading, steps }: Drape): number {
  let from = heading;
  let sum = 0;
  for (const { to, radius, run } of steps) {
    const cos = from[0] * to[0] + from[1] * to[1] + from[2] * to[2];
    sum += Math.acos(Math.min(Math.max(cos, -1), 1)) * radius + run;
    from = to;
  }
  return sum;
}

/** Dropped close beside the knot, on the way to the back. */
export const dropped = (at: KnotEnd, d: number): Drape => ({
  heading: at.heading,
  steps: [{ to: DOWN, radius: 0.7 * d, run: 0 }],
});

/** A lead that rests or is moved from one way of lying to another. */
export function resting(
  exit: KnotEnd,
  from: Drape,
  to: Drape,
  f: number,
  length: number,
  d: number,
): Float64Array {
  return draped(exit.at, from, to, f, length, Math.ceil(length / (POINT_STEP * d)) + 1);
}

/** How a lead from behind comes down to a knot begun from the left, in diameters. */
export interface WayIn {
  /** How far to the left of the knot's entry it comes through, and how far below the seam of the rows. */
  readonly beside: number;
  readonly below: number;
  /** How far in front of the entry it comes down. */
  readonly front: number;
  readonly heading: Vec3;
}

export const WAY_IN: WayIn = { beside: 0.5, below: 0, front: 1.1, heading: [0.5, 0, -0.866] };

/** The same where the base string is thicker or thinner than the lead, so that it turns round it wider. */
export const WAY_IN_UNEQUAL: WayIn = { ...WAY_IN, beside: 1 };

/** The same where an old lead waits beside the knot to be caught by it. */
export const WAY_IN_PAST: WayIn = { ...WAY_IN, heading: [0.4, 0.3, -0.86] };

export const WAY_IN_PAST_UNEQUAL: WayIn = { ...WAY_IN_UNEQUAL, heading: [0.447, 0.8945, 0] };

/** The same where another comes up in the same gap for the knot after: the first, and the second. */
export const WAY_IN_FIRST: WayIn = { ...WAY_IN, beside: 0.25, below: -0.2, front: 1.6 };
export const WAY_IN_SECOND: WayIn = {
  beside: 0.25,
  below: 0.1,
  front: 0.55,
  heading: [0.4, 0.5, -0.768],
};
export const WAY_IN_SECOND_PAST: WayIn = { ...WAY_IN_SECOND, beside: 0.5, below: 0.35 };

/**
 * From where it is behind the work in the gap between two base strings, through above the row, and down
 * in front to a knot's entry.
 *
 * @param at where it comes straight to the front
 */
export function throughToFront(entry: KnotEnd, at: Vec3, d: number, into: WayIn): Float64Array {
  const side = entry.heading[0] < 0 ? -1 : 1;
  const front = entry.at[2] + into.front * d;
  const track = new Track(at, FRONT).line(front - at[2] - BEND * d).turn(DOWN, BEND * d);
  const way = track.sample(Math.ceil(track.length / (POINT_STEP * d)) + 1);
  const [a, b, c] = into.heading;
  return joined(way, cubic(track.end, DOWN, entry.at, [side * a, b, c], [0, 0, 0]));
}

/** A thread without the last `length` of it. */
export function cutBack(points: Float64Array, length: number): Float64Array {
  let last = points.length - 3;
  let left = length;
  for (; last > 6; last -= 3) {
    const step = stepTo(points, last);
    if (step > left) break;
    left -= step;
  }
  const f = Math.min(left / stepTo(points, last), 1);
  const end = [0, 1, 2].map((c) => points[last + c]! * (1 - f) + points[last - 3 + c]! * f);
  // A last step too short to tell its direction is taken together with the one before.
  if (f > 0.6) last -= 3;
  const out = points.slice(0, last + 3);
  out.set(end, last);
  return out;
}

const stepTo = (points: Float64Array, at: number): number =>
  Math.hypot(
    points[at]! - points[at - 3]!,
    points[at + 1]! - points[at - 2]!,
    points[at + 2]! - points[at - 1]!,
  );

/** A thread's end and its direction there. */
export function endOf(points: Float64Array): KnotEnd {
  const n = points.length;
  const v = [0, 1, 2].map((c) => points[n - 3 + c]! - points[n - 6 + c]!);
  const size = Math.hypot(v[0]!, v[1]!, v[2]!);
  return {
    at: [points[n - 3]!, points[n - 2]!, points[n - 1]!],
    heading: [v[0]! / size, v[1]! / size, v[2]! / size],
  };
}
