import { JOIN, JOIN_CAUGHT_PAST, joint } from './joint.js';
import { comesBack, exitOf, isWide, type Layout } from './layout.js';
import { catcher } from './places.js';
import {
  takenBack,
  WAY_OUT,
  WAY_OUT_BACK,
  WAY_OUT_FACING,
  WAY_OUT_FACING_WIDE,
  WAY_OUT_PAST,
  WAY_OUT_WIDE,
  WAY_OUT_WRAPPED,
  WAY_OUT_WRAPPED_WIDE,
  type WayOut,
} from './routes.js';
import type { RowKnot } from './scene.js';
import type { Setting } from './setting.js';
import { caughtPart, upToSide, wayInto } from './through.js';

/** A lead's knots up to some moment, one thread, and the last of them. */
export interface FinishedPath {
  readonly points: Float64Array;
  readonly last: RowKnot;
}

const known = new WeakMap<FinishedPath, Float64Array>();

/** A lead that has left the front for good, up to behind its last knot, where it heads to the back. */
export function keptBehind(setting: Setting, path: FinishedPath): Float64Array {
  let found = known.get(path);
  if (!found) {
    const from = setting.scene.knots.lastIndexOf(path.last);
    const by = catcher(setting, { lead: path.last.tying, from });
    found =
      by && setting.layout.catches(by) ? caught(setting, path, by, 1) : plain(setting, path, by);
    known.set(path, found);
  }
  return found;
}

/** A lead caught in a knot, at fraction `u` of its second half, up to behind that knot. */
export function caught(setting: Setting, path: FinishedPath, by: RowKnot, u: number): Float64Array {
  const kept = upToSide(setting, path, by);
  return jointInto(setting, path, kept, caughtPart(setting, kept, by, u), by);
}

/** Joins a lead to its way through the knot that is to catch it. */
export function jointInto(
  setting: Setting,
  path: FinishedPath,
  kept: Float64Array,
  part: Float64Array,
  by: RowKnot,
): Float64Array {
  const join = setting.layout.catches(path.last) ? JOIN_CAUGHT_PAST : JOIN;
  return joint(setting, kept, part, [wayInto(setting, by)], [0, 0, 0], join);
}

function plain(setting: Setting, path: FinishedPath, by: RowKnot | undefined): Float64Array {
  const d = setting.options.diameter;
  const way = wayOutOf(setting.layout, path.last, by);
  return takenBack(path.points, way, d);
}

/** How a lead leaves the front after its last knot when the knot that takes over does not catch it. */
export function wayOutOf(layout: Layout, last: RowKnot, by: RowKnot | undefined): WayOut {
  const wide = isWide(layout, exitOf(layout, last).at[0]);
  if (wide && layout.catches(last)) return WAY_OUT_WIDE;
  const passed = by?.change?.how === 'passed-behind';
  if (comesBack(last) && !passed) return WAY_OUT_BACK;
  if (comesBack(last)) return wide ? WAY_OUT_FACING_WIDE : WAY_OUT_FACING;
  if (passed && wide && !comesBack(by)) return WAY_OUT_WRAPPED_WIDE;
  if (layout.catches(last)) return WAY_OUT_PAST;
  return passed && !comesBack(by) ? WAY_OUT_WRAPPED : WAY_OUT;
}
