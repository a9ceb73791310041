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

const BEND = 0.75;

/** Radius of the bend where a lead leaves the front between two knots. */
const CLOSE = 0.6;

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

/**
 * Straight through between two base strings, and down behind the work; from a knot the lead came back
 * from, first behind that knot, out of the way of a lead that comes in on its side.
 */
export function takenBehind(at: KnotEnd, cameBack: boolean, room: Passage): Drape {
  const d = room.diameter;
  const run = at.at[2] + room.behind - (CLOSE + BEND) * d;
  const through = { to: BACK, radius: CLOSE * d, run };
  const aside: Vec3 = [at.heading[0] < 0 ? 1 : -1, 0, 0];
  return {
    heading: at.heading,
    steps: cameBack
      ? [through, step(aside, 0.6, d), step(DOWN, 0, d)]
      : [through, step(DOWN, 0, d)],
  };
}

/** From where a lead goes straight to the back, on to the depth at which leads rest, and down. */
export function behindTheWork(at: Vec3, room: Passage, length: number): Float64Array {
  const d = room.diameter;
  const run = Math.max(at[2] + room.behind - BEND * d, 0);
  const drape: Drape = { heading: BACK, steps: [{ to: BACK, radius: 0, run }, step(DOWN, 0, d)] };
  return resting({ at, heading: BACK }, drape, drape, 1, length, d);
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

/** How a lead from behind comes down to a knot begun from the left. */
export interface WayIn {
  /** How far to the left of the knot's entry it comes through, in diameters. */
  readonly beside: number;
  readonly heading: Vec3;
}

export const WAY_IN: WayIn = { beside: 0.5, heading: [0.5, 0, -0.866] };

/** The same where an old lead waits beside the knot to be caught by it. */
export const WAY_IN_PAST: WayIn = { beside: 0.5, heading: [0.4, 0.3, -0.86] };

/**
 * From behind the work, through between two base strings above the row, and down in front to a knot's
 * entry.
 *
 * @param gap height of the gap between this row's knots and those above
 */
export function fromBehind(
  entry: KnotEnd,
  gap: number,
  room: Passage,
  length: number,
  into: WayIn,
): Float64Array {
  const { diameter: d, behind } = room;
  const side = entry.heading[0] < 0 ? -1 : 1;
  const x = entry.at[0] - side * into.beside * d;
  const front = entry.at[2] + 1.1 * d;
  const track = new Track([x, gap + BEND * d + length, -behind], UP)
    .line(length)
    .turn(FRONT, BEND * d)
    .line(front + behind - 2 * BEND * d)
    .turn(DOWN, BEND * d);
  const way = track.sample(Math.ceil(track.length / (POINT_STEP * d)) + 1);
  const [a, b, c] = into.heading;
  return joined(way, cubic(track.end, DOWN, entry.at, [side * a, b, c], [0, 0, 0]));
}
