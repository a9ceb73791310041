import { blended, type Splice, spliced } from '../curve/blend.js';
import { joined, lengthOf, placed, resample } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import { familyFor } from '../knot/family.js';
import { BETWEEN_WAY, leadIn } from '../knot/lead-in.js';
import { STAGE_ENDS } from '../knot/stages.js';
import { type Obstacle, settled } from '../relax/settle.js';
import { comesBack, entryOf, exitOf, fromRight, tyingOf } from './layout.js';
import { fromBehind, hanging, resting, WAY_IN, WAY_IN_PAST } from './routes.js';
import type { RowKnot, RowScene } from './scene.js';
import { baseLines, passageOf, type Setting, turnsBack } from './setting.js';
import { caughtIn } from './through.js';

/** A lead's knots up to some moment, one thread, and the last of them. */
export interface FinishedPath {
  readonly points: Float64Array;
  readonly last: RowKnot;
}

/** How two parts of a lead are joined; lengths before and after the join, in diameters. */
interface Join {
  /** What is bent to make it smooth. */
  readonly cuts: readonly [number, number];
  /** What may give way beyond that. */
  readonly yields: readonly [number, number];
}

const JOIN: Join = { cuts: [0.4, 0.9], yields: [1.2, 1.2] };

/** The same after a knot that has caught a lead, out of which its own lead comes more steeply. */
const JOIN_PAST: Join = { cuts: [0.3, 0.6], yields: [1.2, 1.2] };

const worked = new WeakMap<RowScene, Map<string, FinishedPath>>();

/**
 * A lead through its knots before the one being tied; undefined when it has none. As it takes some
 * working out, it is kept for as long as the scene is.
 */
export function finishedPath(setting: Setting, id: string): FinishedPath | undefined {
  const { scene, index } = setting;
  let upTo = index - 1;
  while (upTo >= 0 && scene.knots[upTo]!.tying !== id) upTo--;
  if (upTo < 0) return undefined;
  let known = worked.get(scene);
  if (!known) {
    known = new Map();
    worked.set(scene, known);
  }
  const key = `${upTo}`;
  let found = known.get(key);
  if (!found) {
    found = finishedAt({ ...setting, index: upTo }, scene.knots[upTo]!);
    known.set(key, found);
  }
  return found;
}

function finishedAt(setting: Setting, knot: RowKnot): FinishedPath {
  const before = finishedPath(setting, knot.tying);
  const curve = tyingOf(setting.layout, knot);
  // The lead still hangs from the knot while its joint finds its place.
  const hung = hangingFrom(setting, knot, STUB * setting.options.diameter);
  const whole = joined(curve, hung);
  const points = before
    ? jointBetween(setting, before, knot, whole)
    : joint(setting, leadInto(setting, knot), whole, [0, 0, 0]);
  return { points: points.slice(0, points.length - (hung.length - 3)), last: knot };
}

const STUB = 5;

function hangingFrom({ layout, options }: Setting, knot: RowKnot, length: number): Float64Array {
  const exit = exitOf(layout, knot);
  const way = hanging(exit, comesBack(knot), options.diameter);
  return resting(exit, way, way, 1, length, options.diameter);
}

/**
 * The lead of the knot being tied, from its first knot in the scene to its free end. At a turn it is
 * first brought from where it hung to the next knot's place.
 *
 * @param now the lead from the current knot's start on
 * @param beyond how much longer than the lead it is
 */
export function currentPath(
  setting: Setting,
  knot: RowKnot,
  now: Float64Array,
  beyond: number,
): Float64Array {
  const before = finishedPath(setting, knot.tying);
  const first = before ? before.points : leadInto(setting, knot);
  const length = lengthOf(first) + lengthOf(now) - beyond;
  const onward = before
    ? jointBetween(setting, before, knot, now)
    : joint(setting, first, now, [0, 0, 0]);
  const whole = ofLength(onward, length);
  const { phase, progress } = setting;
  const lying = phase === 'first-half' ? Math.min(progress / STAGE_ENDS.lying, 1) : 1;
  if (lying >= 1 || !before || !turnsBack(setting, before.last, knot)) return whole;
  const hung = hangingFrom(setting, before.last, length - lengthOf(before.points));
  const count = whole.length / 3;
  const f = lying * lying * (3 - 2 * lying);
  return blended(resample(joined(before.points, hung), count), resample(whole, count), f);
}

/** A lead whose free end is paid in or out so that it has a given length. */
export function ofLength(points: Float64Array, length: number): Float64Array {
  let over = lengthOf(points) - length;
  let last = points.length / 3 - 1;
  while (last > 1 && over > stepOf(points, last - 1)) {
    over -= stepOf(points, last - 1);
    last--;
  }
  const share = 1 - over / stepOf(points, last - 1);
  const end = [0, 1, 2].map((c) => {
    const from = points[last * 3 - 3 + c]!;
    return from + (points[last * 3 + c]! - from) * share;
  });
  // A last step too short to tell its direction is taken together with the one before.
  if (share < 0.3 && last > 1) last--;
  const out = points.slice(0, (last + 1) * 3);
  out.set(end, last * 3);
  return out;
}

const stepOf = (points: Float64Array, i: number): number =>
  Math.hypot(
    points[i * 3 + 3]! - points[i * 3]!,
    points[i * 3 + 4]! - points[i * 3 + 1]!,
    points[i * 3 + 5]! - points[i * 3 + 2]!,
  );

/** Two parts of a lead joined smoothly, clear of base strings and of other leads that are near. */
export function joint(
  setting: Setting,
  a: Float64Array,
  b: Float64Array,
  bow: Vec3,
  others: readonly Obstacle[] = oldLead(setting),
  join: Join = JOIN,
): Float64Array {
  const d = setting.options.diameter;
  const splice = spliced(a, b, join.cuts, d, bow);
  const lines = baseLines(setting).map((points) => ({
    points,
    diameter: d * setting.options.ratio,
  }));
  return settled({
    points: splice.points,
    ...room(splice, join, d),
    diameter: d,
    obstacles: [...lines, ...others],
  });
}

/** A lead from the knot before to the one it ties next. */
function jointBetween(
  setting: Setting,
  before: FinishedPath,
  knot: RowKnot,
  now: Float64Array,
): Float64Array {
  const bow = bowOf(setting, before.last, knot);
  if (!setting.layout.catches(before.last)) return joint(setting, before.points, now, bow);
  // What the knot before has caught is in the way.
  const caught = { points: caughtIn(setting, before.last), diameter: setting.options.diameter };
  return joint(setting, before.points, now, bow, [...oldLead(setting), caught], JOIN_PAST);
}

/** The lead that the current knot takes over from, up to where it gives way. */
function oldLead(setting: Setting): Obstacle[] {
  const d = setting.options.diameter;
  const id = setting.scene.knots[setting.index]!.change?.oldLead;
  const path = id === undefined ? undefined : finishedPath(setting, id);
  if (!path) return [];
  const spare = 3 * Math.ceil(0.9 / STORED_STEP);
  return [{ points: path.points.slice(0, Math.max(path.points.length - spare, 6)), diameter: d }];
}

/** Distance of points on tight knots, about, in diameters. */
const STORED_STEP = 0.12;

function room(
  { points, from, to }: Splice,
  { yields }: Join,
  d: number,
): { from: number; to: number } {
  let first = from;
  for (let s = 0; first > 0 && s < yields[0] * d; first--) s += stepOf(points, first - 1);
  let last = to;
  for (let s = 0; last < points.length / 3 - 1 && s < yields[1] * d; last++)
    s += stepOf(points, last);
  return { from: first, to: last };
}

/**
 * How far the thread is pushed aside between two knots. Where it turns back it goes round the outside
 * of the work, or, on the inner side of an edge string, out to the front.
 */
function bowOf(setting: Setting, from: RowKnot, to: RowKnot): Vec3 {
  if (!turnsBack(setting, from, to)) return [0, 0, 0];
  const d = setting.options.diameter;
  const outward = exitOf(setting.layout, from).heading[0];
  const beside = from.column + outward;
  const outside = beside < 0 || beside >= setting.scene.base.length;
  return outside ? [0.7 * outward * d, 0, 0.2 * d] : [0, 0, 0.5 * d];
}

function leadInto(setting: Setting, knot: RowKnot): Float64Array {
  const { layout, options, scene } = setting;
  const d = options.diameter;
  if (scene.knots[0] !== knot) {
    // Further back than leads that are parked, which it has to pass.
    const passage = passageOf(setting);
    const room = { ...passage, behind: passage.behind + 1.3 * d };
    const gap = ((knot.row ?? 0) - 0.5) * layout.rowHeight;
    const into = layout.catches(knot) ? WAY_IN_PAST : WAY_IN;
    return fromBehind(entryOf(layout, knot), gap, room, 5 * d, into);
  }
  // The first lead of all comes from above, outside its first knot where it can.
  const side = fromRight(knot) ? -1 : 1;
  const beside = knot.column - side;
  const way = beside >= 0 && beside < scene.base.length ? BETWEEN_WAY : undefined;
  const p = familyFor('same', options.ratio).proportions;
  // Where the next knot is another lead's, that lead comes up through the same gap.
  const next = scene.knots[1];
  const between: Vec3 = next && layout.catches(next) ? [0, 0.5, -0.866] : [0.5, 0, -0.866];
  const heading: Vec3 = way ? between : [1, 0, 0];
  const points = placed(leadIn(p, heading, options.above, 28, way), d);
  for (let i = 0; i < points.length; i += 3) points[i] = points[i]! * side;
  const [x, y] = layout.placeOf(knot);
  return placed(points, 1, x, y);
}
