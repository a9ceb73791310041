import { draped } from '../curve/drape.js';
import { joined, reversed } from '../curve/polyline.js';
import { Track, type Vec3 } from '../curve/track.js';
import { wayIn } from './behind.js';
import { ofLength } from './joint.js';
import { entryOf } from './layout.js';
import { BEND, hungBehind, type Passage, TAIL, throughToFront, type WayIn } from './routes.js';
import type { RowKnot } from './scene.js';
import type { Setting } from './setting.js';

const BACK: Vec3 = [0, 0, -1];
const FRONT: Vec3 = [0, 0, 1];
const UP: Vec3 = [0, -1, 0];

/** Points per diameter. */
const DENSITY = 7;

/** A lead on its way from behind to the front, up to a knot's entry. */
export interface WayUp {
  /** What lies behind the work, up to where the lead turns to the front. */
  readonly behind: Float64Array;
  /** From there to the entry. */
  readonly onward: Float64Array;
}

/**
 * A lead that ties for the first time: its tail hangs behind its knot, and it comes up there and to the
 * front between two base strings.
 *
 * @param aside how far beside where it comes through its tail hangs, in diameters
 */
export function freshWay(
  setting: Setting,
  knot: RowKnot,
  room: Passage,
  into: WayIn,
  aside: number,
): WayUp {
  const d = room.diameter;
  const entry = entryOf(setting.layout, knot);
  const side: Vec3 = [entry.heading[0] < 0 ? -1 : 1, 0, 0];
  const [gx, gy] = wayIn(setting, knot);
  const r = BEND * d;
  const x = gx + side[0] * aside * d;
  const track = new Track([x, gy + r + TAIL * d, -room.behind], UP);
  track
    .line(TAIL * d)
    .turn(minus(side), r)
    .line(aside * d - 2 * r);
  const turning = new Track(track.end, minus(side)).turn(FRONT, r);
  return {
    behind: joined(sampled(track, d), sampled(turning, d)),
    onward: throughToFront(entry, turning.end, d, into),
  };
}

/**
 * The way of a lead behind the work from where it went to the back to where it comes up again. On the way
 * there it hangs in a loop of which less and less is left, until it lies straight. Within one gap between
 * two base strings it is held straight out to the back instead, and lies round what else goes through.
 */
export interface Float {
  /** Where it goes to the back, heading there. */
  readonly from: Vec3;
  readonly to: Vec3;
  readonly room: Passage;
  /** Side on which it lies within a gap, that of its next knot; undefined between two gaps. */
  readonly aside: -1 | 1 | undefined;
}

/** The float's shape with so much slack. */
interface Loop {
  /** Depth of its bends, a positive number. */
  readonly behind: number;
  /** Directions in which its legs leave the two ends, and their lengths. */
  readonly out: Vec3;
  readonly legs: readonly [number, number];
  /** The bend between the legs: towards where, how round and how far. */
  readonly inward: Vec3;
  readonly radius: number;
  readonly angle: number;
}

function loopOf({ from, to, room, aside }: Float, slack: number): Loop {
  const bend = BEND * room.diameter;
  const x = to[0] - from[0];
  const y = to[1] - from[1];
  if (aside !== undefined) {
    return {
      behind: room.behind + slack,
      out: [aside, 0, 0],
      legs: [bend + Math.max(x * aside, 0), bend + Math.max(-x * aside, 0)],
      inward: [0, Math.sign(y), 0],
      radius: Math.abs(y) / 2,
      angle: Math.PI,
    };
  }
  const half = Math.hypot(x, y) / 2;
  const along: Vec3 = [x / (2 * half), y / (2 * half), 0];
  const flip = along[0] < 0 ? -1 : 1;
  const down: Vec3 = [-along[1] * flip, along[0] * flip, 0];
  const depth = slack - bend;
  const reach = Math.hypot(half, depth);
  const angle = Math.atan2(depth, half) + Math.asin(Math.min(bend / reach, 1));
  const leg = Math.sqrt(Math.max(reach ** 2 - bend ** 2, 0));
  return {
    behind: room.behind,
    out: turned(along, down, angle),
    legs: [leg, leg],
    inward: turned(minus(down), along, angle),
    radius: bend,
    angle: 2 * angle,
  };
}

const turned = (u: Vec3, v: Vec3, angle: number): Vec3 => [
  u[0] * Math.cos(angle) + v[0] * Math.sin(angle),
  u[1] * Math.cos(angle) + v[1] * Math.sin(angle),
  u[2] * Math.cos(angle) + v[2] * Math.sin(angle),
];

const minus = (v: Vec3): Vec3 => [-v[0], -v[1], -v[2]];

/** The float behind the work with a loop of some slack, 0 for none, up to its turn to the front. */
export function floatBehind(float: Float, slack: number): Track {
  const { from, room } = float;
  const { behind, out, legs, inward, radius, angle } = loopOf(float, slack);
  const end = BEND * room.diameter;
  return new Track(from, BACK)
    .line(from[2] + behind - end)
    .turn(out, end)
    .line(legs[0] - end)
    .turn(inward, radius, angle)
    .line(legs[1] - end)
    .turn(FRONT, end)
    .line(behind - room.behind);
}

/** Slack of the loop when a lead's end, `free` beyond where it goes to the back, is just at its bend. */
function slackFor(float: Float, free: number): number {
  const { from, room, aside } = float;
  if (aside !== undefined) return free - (from[2] + room.behind);
  const leg = free - (from[2] + room.behind) - room.diameter;
  let low = 0;
  let high = free;
  for (let i = 0; i < 50; i++) {
    const slack = (low + high) / 2;
    if (loopOf(float, slack).legs[0] < leg) low = slack;
    else high = slack;
  }
  return (low + high) / 2;
}

/** Slack of the loop while a lead is pulled up, `f` of the way. */
export const slackAt = (float: Float, free: number, f: number): number =>
  slackFor(float, free) * (1 - f);

/**
 * A lead that hangs behind the work, led to where its loop will hang; `f` of the way.
 *
 * @param free length of the lead beyond where it goes to the back
 */
export function swungBehind(
  float: Float,
  hung: Passage,
  aside: number,
  free: number,
  f: number,
): Float64Array {
  const { from, room } = float;
  const d = room.diameter;
  const { out, behind } = loopOf(float, slackFor(float, free));
  const run = Math.max(from[2] + behind - BEND * d, 0);
  const there = {
    heading: BACK,
    steps: [
      { to: BACK, radius: 0, run },
      { to: out, radius: BEND * d, run: 0 },
    ],
  };
  const count = Math.ceil((free / d) * DENSITY) + 1;
  return draped(from, hungBehind(from, hung, aside), there, f, free, count);
}

export const sampled = (track: Track, d: number): Float64Array =>
  track.sample(Math.max(Math.ceil((track.length / d) * DENSITY), 2) + 1);

/** Part of a thread: `length` of it from `start` on. */
export function stretchOf(points: Float64Array, start: number, length: number): Float64Array {
  const tail = reversed(ofLength(points, start + length));
  return reversed(ofLength(tail, length));
}
