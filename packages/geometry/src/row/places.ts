import type { Vec3 } from '../curve/track.js';
import { oldLeadTo } from '../knot/caught.js';
import { proportionsFor } from '../knot/proportions.js';
import { entryOf, exitOf, fromRight, gapAt, isWide, tyingOf } from './layout.js';
import { wayOutOf } from './parked.js';
import {
  ASIDE,
  endOf,
  takenBack,
  WAY_IN,
  WAY_IN_FIRST,
  WAY_IN_PAST,
  WAY_IN_PAST_UNEQUAL,
  WAY_IN_SECOND,
  WAY_IN_SECOND_PAST,
  WAY_IN_UNEQUAL,
  type WayIn,
} from './routes.js';
import type { RowKnot } from './scene.js';
import type { Setting } from './setting.js';

/** Where a lead goes to the back, and on which side it then hangs. */
export function wayOut(setting: Setting, last: RowKnot, by: RowKnot | undefined): Vec3 {
  const { layout, options } = setting;
  const d = options.diameter;
  if (by && layout.catches(by)) {
    const side = fromRight(by) ? -1 : 1;
    const [x, y] = layout.placeOf(by);
    const [ox, oy] = oldLeadTo(proportionsFor(options.ratio));
    return [x + side * ox * d, y + oy * d, 0];
  }
  const [x, y] = endOf(takenBack(tyingOf(layout, last), wayOutOf(layout, last, by), d)).at;
  return [x, y, 0];
}

/** Where a lead that takes such a way in comes through to the front for a knot. */
export function placeIn({ layout, options }: Setting, knot: RowKnot, way: WayIn): Vec3 {
  const d = options.diameter;
  const { at, heading } = entryOf(layout, knot);
  const side = heading[0] < 0 ? -1 : 1;
  const { beside, below } = way;
  const y = ((knot.row ?? 0) - 0.5) * layout.rowHeight;
  return [at[0] - side * beside * d, y + below * d, 0];
}

/**
 * How a lead comes up to a knot. Two that come up in one gap, for an edge knot and the knot after it, keep
 * apart.
 */
export function ownWayIn({ scene, layout, options }: Setting, knot: RowKnot): WayIn {
  const i = scene.knots.indexOf(knot);
  const isPair = (first: RowKnot | undefined, second: RowKnot | undefined): boolean =>
    first !== undefined &&
    second !== undefined &&
    first.tying !== second.tying &&
    (first.row ?? 0) === (second.row ?? 0) &&
    gapAt(layout, entryOf(layout, first).at[0]) === gapAt(layout, entryOf(layout, second).at[0]);
  const catches = layout.catches(knot);
  const plain = options.ratio === 1 ? WAY_IN : WAY_IN_UNEQUAL;
  const past = options.ratio === 1 ? WAY_IN_PAST : WAY_IN_PAST_UNEQUAL;
  const usual = catches ? past : plain;
  if (isWide(layout, entryOf(layout, knot).at[0])) return usual;
  if (i > 0 && isPair(knot, scene.knots[i + 1])) return WAY_IN_FIRST;
  if (i > 1 && isPair(scene.knots[i - 1], knot)) {
    return catches ? WAY_IN_SECOND_PAST : WAY_IN_SECOND;
  }
  return usual;
}

/** Whether a lead goes to the back and comes up again between the same two base strings. */
export const inOneGap = ({ layout }: Setting, from: Vec3, to: Vec3): boolean =>
  gapAt(layout, from[0]) === gapAt(layout, to[0]);

/**
 * How far to the right of where it goes to the back a lead hangs, in diameters: behind its last knot or
 * the one that caught it. Laid through an edge knot, which no plan asks for, it comes out at the side.
 */
export function asideOf(setting: Setting, last: RowKnot, by: RowKnot | undefined): number {
  const { layout, options } = setting;
  if (by && layout.catches(by)) return fromRight(by) ? ASIDE : -ASIDE;
  const side = exitOf(layout, last).heading[0] < 0 ? -1 : 1;
  if (by?.change?.how !== 'laid-through') {
    if (isWide(layout, exitOf(layout, last).at[0])) {
      return -side * (layout.catches(last) ? ASIDE_PAST : ASIDE_WIDE);
    }
    // Work two knots wide has one gap for all: the other side, out of the way of what hangs there.
    const flip = setting.scene.base.length === 2 && by?.change?.how === 'taken-down';
    return (flip ? side : -side) * ASIDE;
  }
  const from = wayOut(setting, last, by)[0];
  return (layout.placeOf(by)[0] - from) / options.diameter + side * STICKS_OUT;
}

/** How far to the side a lead hangs that goes to the back in a crowded gap, past what its knot has caught. */
const ASIDE_WIDE = 2;
const ASIDE_PAST = 3.85;

/** How far beyond the edge string, in diameters. */
const STICKS_OUT = 2.6;

/** The knot that took over when a lead left the front. */
export function catcher(
  { scene }: Pick<Setting, 'scene'>,
  stay: { lead: string; from: number | undefined },
) {
  return scene.knots.find((k, i) => i > (stay.from ?? -1) && k.change?.oldLead === stay.lead);
}

export const knotSide = ({ layout }: Setting, knot: RowKnot): -1 | 1 =>
  entryOf(layout, knot).heading[0] < 0 ? -1 : 1;
