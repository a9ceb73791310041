import { blended } from '../curve/blend.js';
import { joined, lengthOf, placed, resample } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import { familyFor } from '../knot/family.js';
import { BESIDE_WAY, BETWEEN_WAY, leadIn } from '../knot/lead-in.js';
import { STAGE_ENDS } from '../knot/stages.js';
import type { Obstacle } from '../relax/settle.js';
import { comesFromBehind } from './behind.js';
import { comingUp, fromBehind } from './coming-up.js';
import { JOIN_PAST, joint, ofLength } from './joint.js';
import { comesBack, exitOf, fromRight, tyingOf } from './layout.js';
import type { FinishedPath } from './parked.js';
import { hanging, resting } from './routes.js';
import { isClearing, type RowKnot, type RowScene } from './scene.js';
import { type Setting, turnsBack } from './setting.js';
import { caughtIn } from './through.js';

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
  const curve = tyingOf(setting.layout, knot);
  // The lead still hangs from the knot while its joint finds its place.
  const hung = hangingFrom(setting, knot, STUB * setting.options.diameter);
  const points = withJoint(setting, knot, joined(curve, hung));
  return { points: points.slice(0, points.length - (hung.length - 3)), last: knot };
}

const STUB = 5;

/** A lead from its beginning in the scene on, of which `now` is what comes with the current knot. */
function withJoint(setting: Setting, knot: RowKnot, now: Float64Array): Float64Array {
  const before = finishedPath(setting, knot.tying);
  if (comesFromBehind(setting, setting.index)) {
    const { kept, behind, onward } = fromBehind(setting, knot, before);
    return joint(setting, joined(kept, behind, onward), now, oldLead(setting));
  }
  if (before) return jointBetween(setting, before, knot, now);
  return joint(setting, leadFromAbove(setting, knot), now, oldLead(setting));
}

function hangingFrom({ layout, options }: Setting, knot: RowKnot, length: number): Float64Array {
  const exit = exitOf(layout, knot);
  const way = hanging(exit, comesBack(knot), options.diameter);
  return resting(exit, way, way, 1, length, options.diameter);
}

/**
 * The lead of the knot being tied, from its first knot in the scene to its free end. A lead that takes
 * over first comes up from behind the work; at a turn a lead is first brought from where it hung to the
 * next knot's place.
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
  const { phase, progress } = setting;
  if (comesFromBehind(setting, setting.index)) {
    const way = fromBehind(setting, knot, before);
    const first = joined(way.kept, way.behind, way.onward);
    const length = lengthOf(first) + lengthOf(now) - beyond;
    const onward = joint(setting, first, now, oldLead(setting));
    if (isClearing(phase)) return comingUp(setting, knot, way, onward, length);
    return ofLength(onward, length);
  }
  const first = before ? before.points : leadFromAbove(setting, knot);
  const length = lengthOf(first) + lengthOf(now) - beyond;
  const whole = ofLength(withJoint(setting, knot, now), length);
  const lying = phase === 'first-half' ? Math.min(progress / STAGE_ENDS.lying, 1) : 1;
  if (lying >= 1 || !before || !turnsBack(setting, before.last, knot)) return whole;
  const hung = hangingFrom(setting, before.last, length - lengthOf(before.points));
  const count = whole.length / 3;
  const f = lying * lying * (3 - 2 * lying);
  return blended(resample(joined(before.points, hung), count), resample(whole, count), f);
}

/** A lead from the knot before to the one it ties next. */
function jointBetween(
  setting: Setting,
  before: FinishedPath,
  knot: RowKnot,
  now: Float64Array,
): Float64Array {
  const bow = bowOf(setting, before.last, knot);
  if (!setting.layout.catches(before.last)) {
    return joint(setting, before.points, now, oldLead(setting), bow);
  }
  // What the knot before has caught is in the way.
  const caught = { points: caughtIn(setting, before.last), diameter: setting.options.diameter };
  return joint(setting, before.points, now, [...oldLead(setting), caught], bow, JOIN_PAST);
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

/** The first lead of all comes from above, outside its first knot where it can. */
function leadFromAbove({ layout, options, scene }: Setting, knot: RowKnot): Float64Array {
  const d = options.diameter;
  const side = fromRight(knot) ? -1 : 1;
  const beside = knot.column - side;
  const p = familyFor('same', options.ratio).proportions;
  const next = scene.knots[1];
  const shared = next !== undefined && next.tying !== knot.tying;
  const wider = shared && options.ratio !== 1;
  const inside = beside >= 0 && beside < scene.base.length;
  const way = inside ? (wider ? BESIDE_WAY : BETWEEN_WAY) : undefined;
  // Where the next knot is another lead's, that lead comes up through the same gap.
  const steep: Vec3 = wider ? [0.447, 0.8945, 0] : [0, 0.5, -0.866];
  const between: Vec3 = shared ? steep : [0.5, 0, -0.866];
  const heading: Vec3 = way ? between : [1, 0, 0];
  const points = placed(leadIn(p, heading, options.above, 28, way), d);
  for (let i = 0; i < points.length; i += 3) points[i] = points[i]! * side;
  const [x, y] = layout.placeOf(knot);
  return placed(points, 1, x, y);
}
