import { joined, lengthOf } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import { hungAside, hungPassage, laneTo, passageTo, wayIn, wayInOf } from './behind.js';
import { alongFloat, drawnOut, upToBend, type WayOutOfLane } from './drawing-out.js';
import { ofLength } from './joint.js';
import { entryOf } from './layout.js';
import { type FinishedPath, keptBehind } from './parked.js';
import { catcher, inOneGap } from './places.js';
import { ASIDE, TAIL_ASIDE, throughToFront } from './routes.js';
import { CLEARED, type RowKnot } from './scene.js';
import type { Setting } from './setting.js';
import {
  type Float,
  floatBehind,
  freshWay,
  sampled,
  slackAt,
  stretchOf,
  swungBehind,
} from './taking-up.js';

/** A lead that comes to its knot from behind the work. */
export interface FromBehind {
  /** Its thread through its knots before and to the back. */
  readonly kept: Float64Array;
  /** Behind the work, up to where it turns to the front. */
  readonly behind: Float64Array;
  /** From there to the knot's entry. */
  readonly onward: Float64Array;
  /** Where it lies behind the work, if it was there since its knot before. */
  readonly float: Float | undefined;
  /** How it is taken from there where much else hangs and lies there. */
  readonly lane: WayOutOfLane | undefined;
}

/** The way from behind to the knot being tied, the lead pulled straight. */
export function fromBehind(
  setting: Setting,
  knot: RowKnot,
  before: FinishedPath | undefined,
): FromBehind {
  const { layout, index, options } = setting;
  const room = passageTo(setting, index);
  const into = wayInOf(setting, knot);
  if (!before) {
    const way = freshWay(setting, knot, room, into, laneTo(setting, index) ? TAIL_ASIDE : ASIDE);
    return { kept: new Float64Array(0), ...way, float: undefined, lane: undefined };
  }
  const kept = keptBehind(setting, before);
  const from = placeAt(kept);
  const to = wayIn(setting, knot);
  const lane = laneTo(setting, index);
  if (lane) {
    const last = lastKnot(setting, knot);
    const hung = hungPassage(setting, knot.tying, last.knot);
    const aside = hungAside(setting, knot.tying, last.knot);
    const { drawnAt, corner } = lane;
    const way = { out: from, hung, aside, drawnAt, to, corner, room };
    const whole = joined(kept, upToBend(way));
    const track = alongFloat(way, placeAt(whole), 0);
    const onward = throughToFront(entryOf(layout, knot), track.end, options.diameter, into);
    const behind = sampled(track, options.diameter);
    return { kept: whole, behind, onward, float: undefined, lane: way };
  }
  const toRight = entryOf(layout, knot).heading[0] > 0;
  const aside = inOneGap(setting, from, to) ? (toRight ? 1 : -1) : undefined;
  const float: Float = { from, to, room, aside };
  const track = floatBehind(float, 0);
  const onward = throughToFront(entryOf(layout, knot), track.end, options.diameter, into);
  return { kept, behind: sampled(track, options.diameter), onward, float, lane: undefined };
}

/** Share of the time left to a lead that comes up in which it is led to where its loop will hang. */
const SWUNG = { near: 0.5, far: 0.22 } as const;

/** Slow at both ends, but nearly steady in between. */
const steady = (x: number): number => 0.6 * x + 0.4 * x * x * (3 - 2 * x);

const smooth = (x: number): number => x * x * (3 - 2 * x);

/**
 * A lead while it comes up from behind to take over, its end first, once the lead before is out of the
 * way.
 *
 * @param whole the lead when it has come, with some more of its free end
 * @param length of the lead at every moment
 */
export function comingUp(
  setting: Setting,
  knot: RowKnot,
  way: FromBehind,
  whole: Float64Array,
  length: number,
): Float64Array {
  const f = Math.max((setting.progress - CLEARED) / (1 - CLEARED), 0);
  const { kept, float, lane } = way;
  if (lane) return outOfLane(setting, way, lane, whole, length, f);
  if (!float) return risen(setting, way, whole, length, steady(f));
  const free = length - lengthOf(kept);
  const swung = float.aside === undefined ? SWUNG.far : SWUNG.near;
  if (f < swung) {
    const last = lastKnot(setting, knot);
    const hung = hungPassage(setting, knot.tying, last.knot);
    const aside = hungAside(setting, knot.tying, last.knot);
    return joined(kept, swungBehind(float, hung, aside, free, smooth(f / swung)));
  }
  const slack = slackAt(float, free, steady((f - swung) / (1 - swung)));
  const d = setting.options.diameter;
  const rest = whole.slice(kept.length - 3 + way.behind.length - 3);
  return ofLength(joined(kept, sampled(floatBehind(float, slack), d), rest), length);
}

/** Share of the time left to a lead that comes up in which it is drawn out of its lane. */
const DRAWN_OUT = 0.52;

/** A lead that is drawn out of its lane behind the work and led to the front by its end. */
function outOfLane(
  setting: Setting,
  { kept, behind }: FromBehind,
  lane: WayOutOfLane,
  whole: Float64Array,
  length: number,
  f: number,
): Float64Array {
  const d = setting.options.diameter;
  if (f < DRAWN_OUT) {
    const before = ofLength(kept, lengthOf(kept) - lengthOf(upToBend(lane)));
    const free = length - lengthOf(before);
    return joined(before, drawnOut(lane, free, steady(f / DRAWN_OUT)));
  }
  const from = placeAt(kept);
  const slack = length - lengthOf(kept) - (from[2] + lane.room.behind);
  const left = slack * (1 - steady((f - DRAWN_OUT) / (1 - DRAWN_OUT)));
  const rest = whole.slice(kept.length - 3 + behind.length - 3);
  return ofLength(joined(kept, sampled(alongFloat(lane, from, left), d), rest), length);
}

const placeAt = (points: Float64Array): Vec3 => {
  const n = points.length;
  return [points[n - 3]!, points[n - 2]!, points[n - 1]!];
};

/** The knot that a lead tied last, and the one that took over from it there. */
function lastKnot({ scene, index }: Setting, knot: RowKnot) {
  let from = index - 1;
  while (scene.knots[from]!.tying !== knot.tying) from--;
  return { knot: scene.knots[from]!, by: catcher({ scene }, { lead: knot.tying, from }) };
}

/** A lead that has not tied before, drawn up lengthwise from below. */
function risen(
  setting: Setting,
  way: FromBehind,
  whole: Float64Array,
  length: number,
  f: number,
): Float64Array {
  const d = setting.options.diameter;
  const [x, y, z] = way.behind as unknown as [number, number, number];
  const rows = Math.max(...setting.scene.knots.map((k) => k.row ?? 0));
  const bottom = rows * setting.layout.rowHeight + BELOW * d;
  const below = length + Math.max(bottom - y, 0);
  const line: number[] = [];
  const steps = Math.ceil(below / d);
  for (let i = 0; i < steps; i++) line.push(x, y + below * (1 - i / steps), z);
  return stretchOf(joined(line, whole), below * f, length);
}

/** Where the base strings end below the last row, in diameters. */
const BELOW = 18;
