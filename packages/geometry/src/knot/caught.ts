import type { Drape } from '../curve/drape.js';
import { Track, type Vec3 } from '../curve/track.js';
import { type LooseHalf, looseFirst } from './loose.js';
import type { Proportions } from './proportions.js';
import { type Leaving, type Reach, threaded } from './reach.js';

/**
 * A clove hitch that catches an old lead between its halves, begun from the left, in tying diameters.
 * The old lead comes out of the knot to the left, goes down beside the half made first, to the right
 * in front of the held string and, beyond it, to the back.
 */
const RIGHT: Vec3 = [1, 0, 0];
const DOWN: Vec3 = [0, 1, 0];
const BACK: Vec3 = [0, 0, -1];
const FRONT: Vec3 = [0, 0, 1];

/** Room between neighbouring knots for the lead that passes from one to the next. */
export const BETWEEN_KNOTS = 1.2;

/** Height at which the old lead crosses the held string, below the half made first. */
const CROSSING = 2.75;

/** How far in front of the held string's own layer the old lead crosses it. */
const IN_FRONT = 0.05;

/** How far the new lead is lifted so that it passes in front of the old one. */
const LIFT = 0.4;

/** How far the new lead is held out, beyond the bends, while the old one is laid beneath. */
const HELD_OUT = 1.4;

/** Height at which the old lead goes to the back when the knot is tight, above the lead that leaves. */
const PASSES = -1.02;

/** Mean height of the tight knot, which the old lead makes taller. */
const HEIGHT = 0.35;

/** Where the new lead leaves the tight knot, beyond the end of one that catches no lead. */
const LEAVES = { right: 0.4, front: 0.3 };

/** Radius of bends next to the neighbouring knots, where there is little room. */
const CLOSE = BETWEEN_KNOTS / 2;

/** How far below its start the bar of the second half is made. */
const DROP = 3.2;

/** Where the old lead comes out of the knot before. */
export const oldLeadFrom = (p: Proportions): Vec3 => [-p.halfPitch - BETWEEN_KNOTS, 0, p.passing];

/** Radius of the bend by which it goes down there, and how much of it is left to the join. */
const TURN = CLOSE;
const TURNED = Math.PI / 4;

/** Behind the knot, where the old lead's part that is caught ends, once tight. */
export const oldLeadTo = (p: Proportions): Vec3 => [p.halfPitch + CLOSE, PASSES, -(p.layer + 0.2)];

/** Extends a track that goes down by a bend to the front (or back) and down again. */
function lift(track: Track, by: number, bend: number): Track {
  const angle = liftAngle(by, bend);
  const to = by < 0 ? BACK : FRONT;
  const side = Math.sign(by);
  track.turn(to, bend, angle);
  return track.turn([0, Math.sin(angle), -side * Math.cos(angle)], bend, angle);
}

const liftAngle = (by: number, bend: number): number => Math.acos(1 - Math.abs(by) / (2 * bend));

/** The new lead below its first half: hanging, held out to the front, or lifted over the old lead. */
export function waiting(p: Proportions, way: 'hanging' | 'out' | 'lifted'): Drape {
  const angle = liftAngle(LIFT, p.bend);
  const tilted: Vec3 = [0, Math.cos(angle), Math.sin(angle)];
  const step = (to: Vec3, run = 0) => ({ to, radius: p.bend, run });
  const steps = {
    hanging: [],
    out: [step(FRONT, HELD_OUT), step(DOWN)],
    lifted: [step(tilted), step(DOWN)],
  };
  return { heading: DOWN, steps: steps[way] };
}

/** The old lead laid over the first half, its end still in front (`false`) or led to the back. */
export function laidOver(p: Proportions, back: boolean, tail: number): Track {
  const [x, y, z] = oldLeadFrom(p);
  const c = Math.SQRT1_2;
  const track = new Track([x, y + TURN * (1 - c), z], [c, c, 0]);
  track.turn([-c, c, 0], TURN, TURNED);
  const depth = p.layer + IN_FRONT;
  lift(track, depth - p.passing, p.bend);
  track.line(CROSSING - p.bend - track.end[1]).turn(RIGHT, p.bend);
  track.line(p.halfPitch - track.end[0]);
  if (!back) return track.turn(DOWN, CLOSE).line(tail);
  return track.turn(BACK, CLOSE).line(depth - CLOSE - oldLeadTo(p)[2]);
}

/** The second half, made over the old lead. */
export function looseOver(p: Proportions, before: Float64Array): LooseHalf {
  const hung = lifted(p, before);
  const reach: Reach = {
    ...looseFirst('same', p).reach,
    start: hung.end,
    heading: 'down',
    bar: hung.end[1] + DROP,
    stem: 0,
  };
  const end: Vec3 = [p.halfPitch + LEAVES.right, 0, p.passing + LEAVES.front];
  const leaving: Leaving = { way: 'across', x: end[0] };
  const zone = lifted(p, before);
  threaded(zone, reach, 0, leaving);
  return { reach, leaving, zone, end, height: HEIGHT, ceiling: -1.3 };
}

/** The lead from the knot's start through the first half, then lifted. */
export function lifted(p: Proportions, before: Float64Array): Track {
  const track = new Track([before[0]!, before[1]!, before[2]!], RIGHT).follow(before, DOWN);
  return lift(track, LIFT, p.bend);
}
