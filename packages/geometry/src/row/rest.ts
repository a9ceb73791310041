import { blended } from '../curve/blend.js';
import type { Drape } from '../curve/drape.js';
import { joined, lengthOf, resample } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import type { KnotEnd } from '../knot/finished.js';
import { comesBack, exitOf } from './layout.js';
import type { FinishedPath } from './lead-path.js';
import { dropped, hanging, heldOut, laidAside, resting, takenBehind } from './routes.js';
import { passageOf, type Setting } from './setting.js';

/** A lead that does not tie at the moment: whole, and where its free part begins. */
export interface RestingLead {
  readonly points: Float64Array;
  readonly free: number;
}

/**
 * How much of a lead's last knot's exit gives way when the lead is taken elsewhere, in diameters: less
 * to the back than up to the front, where the next lead comes in.
 */
const LET_GO = { back: 0.5, backFromCow: 0.2, down: 0, out: 0.8, aside: 0.8 } as const;

const smooth = (x: number): number => x * x * (3 - 2 * x);

/** A lead between its uses: hanging in front, laid aside, on its way to the back, or parked there. */
export function restingLead(setting: Setting, path: FinishedPath, id: string): RestingLead {
  const { scene, index, phase, progress } = setting;
  const change = scene.knots[index]!.change;
  if (change?.oldLead !== id) return lying(setting, path, 'back', 'back', 1);
  const f = smooth(progress);
  switch (phase) {
    case 'lay-aside':
      return along(setting, path, ['front', 'out', 'aside'], f);
    case 'pass-behind':
    case 'take-down':
      return comesBack(path.last)
        ? along(setting, path, ['front', 'down', 'back'], f)
        : along(setting, path, ['front', 'back'], f);
    case 'lay-through':
      return along(setting, path, ['aside', 'out', 'down', 'back'], f);
    case 'first-half':
      return change.how === 'laid-through'
        ? lying(setting, path, 'aside', 'aside', 1)
        : lying(setting, path, 'back', 'back', 1);
    case 'second-half':
      return lying(setting, path, 'back', 'back', 1);
  }
}

type Way = 'front' | 'down' | 'out' | 'aside' | 'back';

/** The lead `f` of the way through several ways of lying. */
function along(setting: Setting, path: FinishedPath, ways: readonly Way[], f: number): RestingLead {
  const at = Math.min(f * (ways.length - 1), ways.length - 1);
  const i = Math.min(Math.floor(at), ways.length - 2);
  return lying(setting, path, ways[i]!, ways[i + 1]!, at - i);
}

/** The lead `f` of the way from one way of lying to another. */
function lying(setting: Setting, path: FinishedPath, from: Way, to: Way, f: number): RestingLead {
  const d = setting.options.diameter;
  const length = lengthOf(path.points) + setting.options.tail * d;
  const a = lineOf(setting, path, from, length);
  const b = lineOf(setting, path, to, length);
  const free = path.points.length / 3 - 1;
  if (f >= 1) return { points: b, free };
  if (f <= 0) return { points: a, free };
  const count = Math.max(a.length, b.length) / 3;
  return { points: blended(resample(a, count), resample(b, count), f), free };
}

function lineOf(setting: Setting, path: FinishedPath, way: Way, length: number): Float64Array {
  const { options, layout } = setting;
  const d = options.diameter;
  const { points, last } = path;
  if (way === 'front') {
    const exit = exitOf(layout, last);
    const drape = hanging(exit, comesBack(last), d);
    return joined(points, drapedFrom(exit.at, drape, length - lengthOf(points), d));
  }
  const letGo = way === 'back' && comesBack(last) ? LET_GO.backFromCow : LET_GO[way];
  const kept = cutBack(points, letGo * d);
  const end = endOf(kept);
  const drapes: Readonly<Record<typeof way, Drape>> = {
    aside: laidAside(end, d),
    out: heldOut(end, d),
    down: dropped(end, d),
    back: takenBehind(end, comesBack(last), passageOf(setting)),
  };
  const drape = drapes[way];
  return joined(kept, drapedFrom(end.at, drape, length - lengthOf(kept), d));
}

const drapedFrom = (at: Vec3, drape: Drape, length: number, d: number): Float64Array =>
  resting({ at, heading: drape.heading }, drape, drape, 1, length, d);

/** A thread without the last `length` of it. */
function cutBack(points: Float64Array, length: number): Float64Array {
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

function endOf(points: Float64Array): KnotEnd {
  const n = points.length;
  const v = [0, 1, 2].map((c) => points[n - 3 + c]! - points[n - 6 + c]!);
  const size = Math.hypot(v[0]!, v[1]!, v[2]!);
  return {
    at: [points[n - 3]!, points[n - 2]!, points[n - 1]!],
    heading: [v[0]! / size, v[1]! / size, v[2]! / size],
  };
}
