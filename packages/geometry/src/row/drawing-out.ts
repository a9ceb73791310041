import { Track, type Vec3 } from '../curve/track.js';
import { ofLength } from './joint.js';
import type { Place } from './lying.js';
import { BEND, type Passage } from './routes.js';
import { sampled } from './taking-up.js';

/**
 * How a lead is taken from behind work where much hangs and lies. It is drawn out from under what lies
 * over it, as a loop, until its end comes free and it is held straight out to the back; then it is led to
 * the front by its end, its slack held out to the back, deeper than all that is there.
 */
export interface WayOutOfLane {
  /** Where it goes to the back, heading there. */
  readonly out: Vec3;
  /** How deep it hangs, and how far to the right, in diameters. */
  readonly hung: Passage;
  readonly aside: number;
  /** Height at which it bends to the back to be drawn out, in mm; undefined: where it went there. */
  readonly drawnAt: number | undefined;
  readonly to: Vec3;
  readonly corner: Place | undefined;
  /** Depth of its float. */
  readonly room: Passage;
}

const BACK: Vec3 = [0, 0, -1];
const FRONT: Vec3 = [0, 0, 1];
const DOWN: Vec3 = [0, 1, 0];
const QUARTER = Math.PI / 2;

/** From where it goes to the back, to where it bends to the back to be drawn out. */
export function upToBend(way: WayOutOfLane): Float64Array {
  const { out, drawnAt, hung } = way;
  if (drawnAt === undefined) return Float64Array.from(out);
  return sampled(downLane(way, drawnAt).turn(BACK, BEND * hung.diameter), hung.diameter);
}

/** From where it goes to the back down its lane to a height. */
function downLane({ out, hung, aside }: WayOutOfLane, y: number): Track {
  const bend = BEND * hung.diameter;
  const track = new Track(out, BACK).line(out[2] + hung.behind - bend);
  track.turn([Math.sign(aside), 0, 0], bend).line(Math.abs(aside) * hung.diameter - 2 * bend);
  return track.turn(DOWN, bend).line(y - out[1] - bend);
}

/**
 * A lead while it is drawn out of its lane, its end up along itself and then to the back; `f` of the way.
 *
 * @param free its length beyond where it goes to the back
 */
export function drawnOut(way: WayOutOfLane, free: number, f: number): Float64Array {
  const d = way.hung.diameter;
  const track = way.drawnAt === undefined ? drawnWhereOut(way, free, f) : drawnInLane(way, free, f);
  return ofLength(sampled(track.line(free), d), free);
}

/** As a loop where it went to the back: first a round bend beside its lane, then further and further out. */
function drawnWhereOut({ out, hung, aside }: WayOutOfLane, free: number, f: number): Track {
  const d = hung.diameter;
  const bend = BEND * d;
  const drawn = f * (free + 2 * bend - hung.behind - out[2]);
  const angle = Math.min(drawn / (2 * bend), 1) * QUARTER;
  const run = Math.max(drawn - 2 * bend, 0);
  const deeper = bend * (Math.sin(angle) + 1 - Math.cos(angle)) + run;
  const track = new Track(out, BACK).line(out[2] + hung.behind - bend + deeper);
  if (track.length >= free) return track;
  track.turn([Math.sign(aside), 0, 0], bend).line(Math.abs(aside) * d - 2 * bend);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  track.turn([0, c, s], bend).line(run);
  return track.turn([0, s, -c], bend, angle);
}

/** As a loop out of its lane: first a bulge to the back, then further and further out. */
function drawnInLane(way: WayOutOfLane, free: number, f: number): Track {
  const bend = BEND * way.hung.diameter;
  const track = downLane(way, way.drawnAt!);
  const drawn = f * (free - track.length - bend * QUARTER + 2 * bend);
  const angle = Math.min(drawn / (2 * bend), 1) * QUARTER;
  const run = Math.max(drawn - 2 * bend, 0);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  track.turn(BACK, bend, angle).line(run);
  if (track.length >= free) return track;
  track.turn([0, s, c], bend, 2 * angle).line(run);
  return track.turn([0, s, -c], bend, angle);
}

/** The float up to its turn to the front, its slack held out to the back, from where the lead was drawn out. */
export function alongFloat(way: WayOutOfLane, from: Vec3, slack: number): Track {
  const { room, to, corner } = way;
  const bend = BEND * room.diameter;
  const deep = room.behind + slack;
  const track = new Track(from, BACK).line(from[2] + deep - bend);
  const first = corner ?? to;
  const one = headingTo(from, first);
  track.turn(one, bend);
  if (!corner) return lastLeg(track, reach(from, to) - bend, slack, bend);
  const two = headingTo(corner, to);
  const cos = one[0] * two[0] + one[1] * two[1];
  const sin = Math.sqrt(1 - cos * cos);
  const cut = (bend * sin) / (1 + cos);
  track.line(reach(from, corner) - bend - cut);
  if (sin > 1e-9) {
    const toward: Vec3 = [(two[0] - one[0] * cos) / sin, (two[1] - one[1] * cos) / sin, 0];
    track.turn(toward, bend, Math.acos(cos));
  }
  return lastLeg(track, reach(corner, to) - cut, slack, bend);
}

const lastLeg = (track: Track, length: number, slack: number, bend: number): Track =>
  track
    .line(length - bend)
    .turn(FRONT, bend)
    .line(slack);

const reach = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Math.hypot(b[0]! - a[0]!, b[1]! - a[1]!);

function headingTo(a: ArrayLike<number>, b: ArrayLike<number>): Vec3 {
  const length = reach(a, b);
  return [(b[0]! - a[0]!) / length, (b[1]! - a[1]!) / length, 0];
}
