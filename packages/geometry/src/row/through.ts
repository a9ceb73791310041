import { cubic } from '../curve/blend.js';
import { joined, placed } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import { catchingFamilyFor } from '../knot/catching-family.js';
import { caughtAt } from '../knot/catching-motion.js';
import { laidOver, oldLeadFrom } from '../knot/caught.js';
import type { Obstacle } from '../relax/settle.js';
import { entryOf, fromRight } from './layout.js';
import type { FinishedPath } from './parked.js';
import { endOf, WAY_IN_PAST } from './routes.js';
import type { RowKnot } from './scene.js';
import type { Setting } from './setting.js';

/** Length over which the way of an old lead is led to where its last knot really leaves it, in diameters. */
const LEADING = 2.2;

/** How much further out a lead leaves a knot that has caught another, in diameters. */
const FURTHER = 0.3;

/** Room beside a knot from which on it is not ordinary, in diameters. */
const WIDE = 1;

/** Points per diameter of the way through. */
const DENSITY = 8;

/**
 * An old lead from its last knot on, laid over the first half of the knot `by` that is to catch it: its
 * end, `length` long, hanging in front (`over`), or up to where it heads to the back (`through`).
 */
export function laidThrough(
  setting: Setting,
  kept: Float64Array,
  by: RowKnot,
  way: 'over' | 'through',
  length: number,
): Float64Array {
  const { proportions: p } = catchingFamilyFor(setting.options.ratio);
  const d = setting.options.diameter;
  const back = way === 'through';
  const track = laidOver(p, back, length / d);
  return inPlace(setting, kept, by, track.sample(Math.ceil(track.length * DENSITY)));
}

/** An old lead caught by the knot `by`, at fraction `u` of its second half, up to behind that knot. */
export function caughtPart(
  setting: Setting,
  kept: Float64Array,
  by: RowKnot,
  u: number,
): Float64Array {
  return inPlace(setting, kept, by, caughtAt(catchingFamilyFor(setting.options.ratio), u));
}

/** The old lead where a knot tied before has caught it. */
export function caughtIn(setting: Setting, by: RowKnot): Float64Array {
  return placedIn(setting, by, caughtAt(catchingFamilyFor(setting.options.ratio), 1));
}

/** From the frame of the catching knot to the scene, beginning where the lead's last knot leaves it. */
function inPlace(
  setting: Setting,
  kept: Float64Array,
  by: RowKnot,
  curve: Float64Array,
): Float64Array {
  const out = placedIn(setting, by, curve);
  const n = kept.length;
  const [fx, fy, fz] = startOf(setting, by);
  const off: Vec3 = [kept[n - 3]! - fx, kept[n - 2]! - fy, kept[n - 1]! - fz];
  lead(out, off, LEADING * setting.options.diameter);
  return out;
}

function placedIn({ layout, options }: Setting, by: RowKnot, curve: Float64Array): Float64Array {
  const [x, y, z] = layout.placeOf(by);
  const points = placed(curve, options.diameter);
  for (let i = 0; i < points.length; i += 3) points[i] = points[i]! * sideOf(by);
  return placed(points, 1, x, y, z);
}

/** The new lead just before the knot it catches the old one in, as something to keep clear of. */
export function wayInto({ layout, options }: Setting, by: RowKnot): Obstacle {
  const d = options.diameter;
  const { at } = entryOf(layout, by);
  const [x, y, z] = WAY_IN_PAST.heading;
  const from: Vec3 = [at[0] - x * sideOf(by) * d, at[1] - y * d, at[2] - z * d];
  return { points: [...from, ...at], diameter: d };
}

const sideOf = (by: RowKnot): number => (fromRight(by) ? -1 : 1);

/** Where an old lead comes out of an ordinary knot beside the catching one. */
function startOf({ layout, options }: Setting, by: RowKnot): Vec3 {
  const d = options.diameter;
  const [x, y, z] = layout.placeOf(by);
  const [ox, oy, oz] = oldLeadFrom(catchingFamilyFor(options.ratio).proportions);
  return [x + ox * sideOf(by) * d, y + oy * d, z + oz * d];
}

/** A lead up to where it comes out beside its last knot, not further towards the one that catches it. */
export function upToSide(setting: Setting, path: FinishedPath, by: RowKnot): Float64Array {
  const { points } = path;
  const side = sideOf(by);
  // A knot that has caught a lead itself ends further out.
  const out = setting.layout.catches(path.last) ? FURTHER : 0;
  const x = startOf(setting, by)[0] * side + (out + 1e-6) * setting.options.diameter;
  let last = points.length - 3;
  while (last > 6 && points[last]! * side > x) last -= 3;
  const kept = points.slice(0, last + 3);
  if (x - kept[last]! * side < WIDE * setting.options.diameter) return kept;
  // In a wide gap there is room to come to just where the knot that is to catch it expects it.
  const { at, heading } = endOf(kept);
  return joined(kept, cubic(at, heading, startOf(setting, by), [side, 0, 0], [0, 0, 0]));
}

/** Moves the beginning of a curve by an offset that fades along it. */
function lead(points: Float64Array, by: Vec3, over: number): void {
  let s = 0;
  for (let i = 0; i < points.length && s < over; i += 3) {
    const f = 1 - (s / over) ** 2 * (3 - (2 * s) / over);
    if (i + 5 < points.length) {
      s += Math.hypot(
        points[i + 3]! - points[i]!,
        points[i + 4]! - points[i + 1]!,
        points[i + 5]! - points[i + 2]!,
      );
    }
    for (let c = 0; c < 3; c++) points[i + c] = points[i + c]! + by[c]! * f;
  }
}
