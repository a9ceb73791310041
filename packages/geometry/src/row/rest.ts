import { blended } from '../curve/blend.js';
import type { Drape } from '../curve/drape.js';
import { joined, lengthOf, resample } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import { hungAside, hungPassage, isBusy } from './behind.js';
import { ofLength } from './joint.js';
import { comesBack, exitOf, isWide } from './layout.js';
import { caught, type FinishedPath, jointInto, keptBehind } from './parked.js';
import {
  cutBack,
  dropped,
  endOf,
  hanging,
  heldOut,
  hungBehind,
  laidAside,
  resting,
} from './routes.js';
import { CLEARED, isClearing, type RowKnot } from './scene.js';
import type { Setting } from './setting.js';
import { laidThrough, upToSide } from './through.js';

/** A lead that does not tie at the moment: whole, and where its free part begins. */
export interface RestingLead {
  readonly points: Float64Array;
  readonly free: number;
}

/** How much of a lead's last knot's exit gives way when the lead is taken elsewhere, in diameters. */
const LET_GO = { down: 0, downPast: 0.65, out: 0.8, aside: 0.8 } as const;

/** How much more of it after a knot that has caught a lead, which it leaves further out. */
const PAST = 0.4;

const smooth = (x: number): number => x * x * (3 - 2 * x);

/** A lead between its uses: hanging in front, laid aside, on its way to the back, or parked there. */
export function restingLead(setting: Setting, path: FinishedPath, id: string): RestingLead {
  const { scene, index, phase, progress } = setting;
  const change = scene.knots[index]!.change;
  const catching = caughtBy(setting, path, id);
  if (change?.oldLead !== id) {
    return catching
      ? caughtHanging(setting, path, catching, 1)
      : lying(setting, path, 'back', 'back', 1);
  }
  const f = smooth(isClearing(phase) ? Math.min(progress / CLEARED, 1) : progress);
  // Where much hangs behind the work, what goes there is first held straight out, and then let down.
  const pierced: readonly Way[] = isBusy(setting) ? ['pierced'] : [];
  switch (phase) {
    case 'lay-aside':
      return along(setting, path, ['front', 'out', 'aside'], f);
    case 'pass-behind':
    case 'take-down':
      return comesBack(path.last)
        ? along(setting, path, ['front', 'down', ...pierced, 'back'], f)
        : along(setting, path, ['front', ...pierced, 'back'], f);
    case 'lay-through':
      if (catching) {
        return along(
          setting,
          path,
          ['aside', 'out', 'down', 'over', ...pierced, 'through'],
          f,
          catching,
        );
      }
      return along(setting, path, ['aside', 'out', 'down', ...pierced, 'back'], f);
    case 'first-half':
      return change.how === 'laid-through'
        ? lying(setting, path, 'aside', 'aside', 1)
        : lying(setting, path, 'back', 'back', 1);
    case 'second-half':
      return catching
        ? caughtHanging(setting, path, catching, progress)
        : lying(setting, path, 'back', 'back', 1);
  }
}

type Way = 'front' | 'down' | 'out' | 'aside' | 'back' | 'over' | 'through' | 'pierced';

/** The knot between whose halves a lead was laid when it left the front. */
function caughtBy({ scene, index, layout }: Setting, path: FinishedPath, id: string) {
  for (let i = index; i >= 0; i--) {
    const knot = scene.knots[i]!;
    if (knot === path.last) return undefined;
    if (knot.change?.oldLead === id) return layout.catches(knot) ? knot : undefined;
  }
  return undefined;
}

/** A lead that is caught in a knot, at fraction `u` of its second half, and hangs behind it. */
function caughtHanging(setting: Setting, path: FinishedPath, by: RowKnot, u: number): RestingLead {
  const points = laid(setting, path, by, u, wholeLength(setting, path));
  return { points, free: Math.min(path.points.length / 3, points.length / 3) - 1 };
}

/** How much longer a lead is shown that rests, so that it hangs behind the work, in diameters. */
const HUNG = 8;

const wholeLength = (setting: Setting, path: FinishedPath): number =>
  lengthOf(path.points) + (setting.options.tail + HUNG) * setting.options.diameter;

const known = new WeakMap<FinishedPath, Map<string, Float64Array>>();

/** A lead laid through a knot, or at fraction `at` of the half that catches it. */
function laid(
  setting: Setting,
  path: FinishedPath,
  by: RowKnot,
  at: 'over' | 'through' | 'pierced' | number,
  length: number,
): Float64Array {
  const make = () => {
    if (at === 1) return hangingBehind(setting, path, keptBehind(setting, path), length);
    if (typeof at === 'number') {
      return hangingBehind(setting, path, caught(setting, path, by, at), length);
    }
    const kept = upToSide(setting, path, by);
    const way = at === 'over' ? 'over' : 'through';
    const part = laidThrough(setting, kept, by, way, length - lengthOf(kept));
    const points = jointInto(setting, path, kept, part, by);
    if (at === 'over') return ofLength(points, length);
    return at === 'pierced'
      ? heldBack(setting, points, length)
      : hangingBehind(setting, path, points, length);
  };
  // While the second half is pulled tight, hardly any moment comes again.
  if (typeof at === 'number' && at > 0 && at < 1) return make();
  let shapes = known.get(path);
  if (!shapes) {
    shapes = new Map();
    known.set(path, shapes);
  }
  let found = shapes.get(`${at}`);
  if (!found) {
    found = make();
    shapes.set(`${at}`, found);
  }
  return found;
}

/** A lead that heads to the back at its end, the rest of it held straight out. */
function heldBack({ options }: Setting, kept: Float64Array, length: number): Float64Array {
  const { at } = endOf(kept);
  const drape: Drape = { heading: [0, 0, -1], steps: [] };
  return joined(kept, drapedFrom(at, drape, length - lengthOf(kept), options.diameter));
}

/** A lead that heads to the back at its end, with the rest of it hanging there. */
function hangingBehind(
  setting: Setting,
  path: FinishedPath,
  kept: Float64Array,
  length: number,
): Float64Array {
  const { at } = endOf(kept);
  const lead = path.last.tying;
  const room = hungPassage(setting, lead, path.last);
  const drape = hungBehind(at, room, hungAside(setting, lead, path.last));
  return joined(kept, drapedFrom(at, drape, length - lengthOf(kept), setting.options.diameter));
}

/** The lead `f` of the way through several ways of lying. */
function along(
  setting: Setting,
  path: FinishedPath,
  ways: readonly Way[],
  f: number,
  by?: RowKnot,
): RestingLead {
  const at = Math.min(f * (ways.length - 1), ways.length - 1);
  const i = Math.min(Math.floor(at), ways.length - 2);
  return lying(setting, path, ways[i]!, ways[i + 1]!, at - i, by);
}

/** The lead `f` of the way from one way of lying to another. */
function lying(
  setting: Setting,
  path: FinishedPath,
  from: Way,
  to: Way,
  f: number,
  by?: RowKnot,
): RestingLead {
  const length = wholeLength(setting, path);
  const a = lineOf(setting, path, from, length, by);
  const b = lineOf(setting, path, to, length, by);
  const free = path.points.length / 3 - 1;
  if (f >= 1) return { points: b, free };
  if (f <= 0) return { points: a, free };
  const same = commonPoints(a, b);
  const own = a.subarray(0, same * 3);
  const restOfA = a.subarray((same - 1) * 3);
  const restOfB = b.subarray((same - 1) * 3);
  const count = Math.max(restOfA.length, restOfB.length) / 3;
  const moved = blended(resample(restOfA, count), resample(restOfB, count), f);
  return { points: joined(own, moved), free: Math.min(free, same - 1) };
}

/** How many points two lines begin with in common, at least one. */
function commonPoints(a: Float64Array, b: Float64Array): number {
  let i = 3;
  while (i < a.length && a[i] === b[i] && a[i + 1] === b[i + 1] && a[i + 2] === b[i + 2]) i += 3;
  return i / 3;
}

function lineOf(
  setting: Setting,
  path: FinishedPath,
  way: Way,
  length: number,
  by: RowKnot | undefined,
): Float64Array {
  const { options, layout } = setting;
  const d = options.diameter;
  const { points, last } = path;
  if (way === 'front') {
    const exit = exitOf(layout, last);
    const drape = hanging(exit, comesBack(last), d);
    return joined(points, drapedFrom(exit.at, drape, length - lengthOf(points), d));
  }
  if (way === 'pierced' && !by) return heldBack(setting, keptBehind(setting, path), length);
  if (way === 'over' || way === 'through' || way === 'pierced') {
    return laid(setting, path, by!, way, length);
  }
  if (way === 'back') {
    return hangingBehind(setting, path, keptBehind(setting, path), length);
  }
  const letGo = letGoOf(setting, last, way, by);
  const kept = cutBack(points, letGo * d);
  const end = endOf(kept);
  const drapes: Readonly<Record<typeof way, Drape>> = {
    aside: laidAside(end, d),
    out: heldOut(end, d),
    down: dropped(end, d),
  };
  const drape = drapes[way];
  return joined(kept, drapedFrom(end.at, drape, length - lengthOf(kept), d));
}

/** How much of a knot's end gives way when its lead is taken elsewhere, in diameters. */
function letGoOf(
  { layout }: Setting,
  last: RowKnot,
  way: keyof typeof LET_GO,
  by: RowKnot | undefined,
): number {
  // In a wide gap there is room beside the knot's end.
  if (isWide(layout, exitOf(layout, last).at[0])) return 0;
  const past = layout.catches(last) ? PAST : 0;
  return LET_GO[way === 'down' && by ? 'downPast' : way] + past;
}

const drapedFrom = (at: Vec3, drape: Drape, length: number, d: number): Float64Array =>
  resting({ at, heading: drape.heading }, drape, drape, 1, length, d);
