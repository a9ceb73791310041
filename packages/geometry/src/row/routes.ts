import { type Drape, draped } from '../curve/drape.js';
import { reversed } from '../curve/polyline.js';
import { Track, type Vec3 } from '../curve/track.js';
import type { KnotEnd } from '../knot/finished.js';
import { OUTWARD } from '../knot/loose.js';

/**
 * Ways of leads between knots and of leads that rest, in tying diameters unless `d` scales them.
 */
const UP: Vec3 = [0, -1, 0];
const DOWN: Vec3 = [0, 1, 0];
const BACK: Vec3 = [0, 0, -1];

const BEND = 0.75;

/** Distance of points on a resting lead. */
const POINT_STEP = 0.14;

/** Where rows leave room for a lead to pass between two base strings, and how far behind it rests. */
export interface Passage {
  readonly diameter: number;
  readonly rowHeight: number;
  /** Depth at which leads rest behind the work, a positive number. */
  readonly behind: number;
}

const step = (to: Vec3, run: number, d: number) => ({ to, radius: BEND * d, run: run * d });

/** Hanging free in front, further out where the lead came back to the side it was tied from. */
export const hanging = (exit: KnotEnd, cameBack: boolean, d: number): Drape => ({
  heading: exit.heading,
  steps: cameBack ? [step(OUTWARD, 0, d), step(DOWN, 0, d)] : [step(DOWN, 0, d)],
});

/** Laid up over the finished work, out of the hand's way. */
export const laidAside = (exit: KnotEnd, d: number): Drape => ({
  heading: exit.heading,
  steps: [step([exit.heading[0] * 0.3, -0.4, Math.sqrt(1 - 0.25)], 1.2, d), step(UP, 0, d)],
});

/** Down below the knots' row, through between two base strings, and down behind the work. */
export function takenBehind(exit: KnotEnd, room: Passage): Drape {
  const { diameter: d, rowHeight, behind } = room;
  const drop = Math.max(rowHeight / 2 / d - 2 * BEND, 0.2);
  const depth = (exit.at[2] + behind) / d - 2 * BEND;
  return {
    heading: exit.heading,
    steps: [step(DOWN, drop, d), step(BACK, depth, d), step(DOWN, 0, d)],
  };
}

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

/** From behind the work, through between two base strings above the row, down to a knot's entry. */
export function fromBehind(entry: KnotEnd, room: Passage, length: number): Float64Array {
  const { diameter: d, rowHeight, behind } = room;
  const rise = Math.max(rowHeight / 2 - BEND * d, 0.2 * d);
  const track = new Track(entry.at, UP)
    .line(rise)
    .turn(BACK, BEND * d)
    .line(entry.at[2] + behind - 2 * BEND * d)
    .turn(DOWN, BEND * d)
    .line(length);
  return reversed(track.sample(Math.ceil(track.length / (POINT_STEP * d)) + 1));
}
