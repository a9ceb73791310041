import type { Vec3 } from '../curve/track.js';
import { oldLeadTo } from '../knot/caught.js';
import { proportionsFor } from '../knot/proportions.js';
import { entryOf, exitOf, fromRight } from './layout.js';
import { wayOutOf } from './parked.js';
import {
  ASIDE,
  type Passage,
  WAY_IN,
  WAY_IN_FIRST,
  WAY_IN_PAST,
  WAY_IN_SECOND,
  WAY_IN_SECOND_PAST,
  type WayIn,
} from './routes.js';
import type { RowKnot, RowScene } from './scene.js';
import type { Setting } from './setting.js';

/** A lead's time behind the work, between two knots that it ties. */
interface Stay {
  readonly lead: string;
  /** Its last knot before, and the knot that it ties next, as places among the scene's knots. */
  readonly from: number | undefined;
  to: number | undefined;
  /** Layers behind the work, from 0: while it hangs, and once it lies as a float. */
  hung: number;
  float: number;
}

/** What lies in a layer behind the work, seen from the front. */
interface Patch {
  readonly layer: number;
  readonly box: readonly [number, number, number, number];
}

/** Distance of neighbouring layers, in diameters. */
const LAYER = 1.06;

/** From the held strings' middle to the nearest layer, in diameters beyond half the held string. */
const NEAREST = 2;

/** How near to each other, in the plane of the work, threads behind it may be in one layer. */
const MARGIN = 1.1;

const known = new WeakMap<RowScene, readonly Stay[]>();

/** Depth at which a lead that is not tying at the moment hangs behind the work. */
export function hungPassage(setting: Setting, lead: string, last: RowKnot): Passage {
  const from = setting.scene.knots.lastIndexOf(last);
  const stay = staysOf(setting).find((s) => s.lead === lead && s.from === from);
  return passage(setting, stay?.hung ?? 0);
}

/** Depth of a lead that comes from behind to the knot at a place: as a float, or by its tail. */
export function passageTo(setting: Setting, index: number): Passage {
  const stay = staysOf(setting).find((s) => s.to === index);
  return passage(setting, stay?.float ?? 0);
}

/** Whether the lead that ties a knot was behind the work since its knot before. */
export const comesFromBehind = (setting: Setting, index: number): boolean =>
  staysOf(setting).some((s) => s.to === index);

function passage({ options }: Setting, layer: number): Passage {
  const d = options.diameter;
  return { diameter: d, behind: (options.ratio / 2 + NEAREST + LAYER * layer) * d };
}

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
  const { at, heading } = exitOf(layout, last);
  const way = wayOutOf(layout, last, by);
  const y = at[1] + way.radius * way.heading[1] * d;
  return [at[0] + heading[0] * (way.radius - way.letGo) * d, y, 0];
}

/** Where a lead comes through to the front for a knot. */
export function wayIn(setting: Setting, knot: RowKnot): Vec3 {
  const { layout, options } = setting;
  const d = options.diameter;
  const { at, heading } = entryOf(layout, knot);
  const side = heading[0] < 0 ? -1 : 1;
  const { beside, below } = wayInOf(setting, knot);
  const y = ((knot.row ?? 0) - 0.5) * layout.rowHeight;
  return [at[0] - side * beside * d, y + below * d, 0];
}

/**
 * How a lead comes up to a knot. Two that come up in one gap, for an edge knot and the knot after it, keep
 * apart.
 */
export function wayInOf({ scene, layout }: Setting, knot: RowKnot): WayIn {
  const i = scene.knots.indexOf(knot);
  const isPair = (first: RowKnot | undefined, second: RowKnot | undefined): boolean =>
    first !== undefined &&
    second !== undefined &&
    first.tying !== second.tying &&
    (first.row ?? 0) === (second.row ?? 0) &&
    Math.abs(entryOf(layout, first).at[0] - entryOf(layout, second).at[0]) < layout.pitch / 2;
  const catches = layout.catches(knot);
  if (i > 0 && isPair(knot, scene.knots[i + 1])) return WAY_IN_FIRST;
  if (i > 1 && isPair(scene.knots[i - 1], knot)) {
    return catches ? WAY_IN_SECOND_PAST : WAY_IN_SECOND;
  }
  return catches ? WAY_IN_PAST : WAY_IN;
}

/** Whether a lead goes to the back and comes up again between the same two base strings. */
export const inOneGap = ({ layout }: Setting, from: Vec3, to: Vec3): boolean =>
  Math.abs(from[0] - to[0]) < layout.pitch / 2;

/**
 * How far to the right of where it goes to the back a lead hangs, in diameters: behind its last knot or
 * the one that caught it. Laid through an edge knot, which no plan asks for, it comes out at the side.
 */
export function asideOf(setting: Setting, last: RowKnot, by: RowKnot | undefined): number {
  const { layout, options } = setting;
  if (by && layout.catches(by)) return fromRight(by) ? ASIDE : -ASIDE;
  const side = exitOf(layout, last).heading[0] < 0 ? -1 : 1;
  if (by?.change?.how !== 'laid-through') {
    // Work two knots wide has one gap for all: the other side, out of the way of what hangs there.
    const flip = setting.scene.base.length === 2 && by?.change?.how === 'taken-down';
    return (flip ? side : -side) * ASIDE;
  }
  const from = wayOut(setting, last, by)[0];
  return (layout.placeOf(by)[0] - from) / options.diameter + side * STICKS_OUT;
}

/** How far beyond the edge string, in diameters. */
const STICKS_OUT = 2.6;

/**
 * When leads are behind the work, and how deep. What comes later lies behind all that is there
 * where it lies, as it does in the hand.
 */
function staysOf(setting: Setting): readonly Stay[] {
  const { scene } = setting;
  let stays = known.get(scene);
  if (!stays) {
    stays = work(setting);
    known.set(scene, stays);
  }
  return stays;
}

function work(setting: Setting): Stay[] {
  const { scene, options } = setting;
  const d = options.diameter;
  const patches: Patch[] = [];
  const lay = (a: Vec3, b: Vec3): number => {
    const m = (MARGIN / 2) * d;
    const box = [
      Math.min(a[0], b[0]) - m,
      Math.min(a[1], b[1]) - m,
      Math.max(a[0], b[0]) + m,
      Math.max(a[1], b[1]) + m,
    ] as const;
    const layer =
      1 + Math.max(-1, ...patches.filter((p) => overlap(p.box, box)).map((p) => p.layer));
    patches.push({ layer, box });
    return layer;
  };
  const stays: Stay[] = [];
  const last = new Map<string, number>();
  const open = new Map<string, Stay>();
  const far = 100 * d;
  const comeUp = (knot: RowKnot, i: number): void => {
    const stay = open.get(knot.tying);
    const place = wayIn(setting, knot);
    if (stay) {
      const from = scene.knots[stay.from!]!;
      stay.to = i;
      const out = wayOut(setting, from, catcher(setting, stay));
      // A loop hangs down until it is pulled straight; within a gap the float lies to the side.
      const near = inOneGap(setting, out, place);
      const x = place[0] + knotSide(setting, knot) * ASIDE * 1.5 * d;
      stay.float = near
        ? lay([x, out[1], 0], place)
        : lay(
            [out[0], Math.max(out[1], place[1]) + far, 0],
            [place[0], Math.min(out[1], place[1]), 0],
          );
      open.delete(knot.tying);
    } else if (!last.has(knot.tying) && i > 0) {
      const x = place[0] + knotSide(setting, knot) * ASIDE * d;
      const float = lay(place, [x, place[1] + far, 0]);
      stays.push({ lead: knot.tying, from: undefined, to: i, hung: float, float });
    }
  };
  const goBehind = (knot: RowKnot, old: string): void => {
    const left = last.get(old);
    if (left === undefined) return;
    const from = scene.knots[left]!;
    const out = wayOut(setting, from, knot);
    const x = out[0] + asideOf(setting, from, knot) * d;
    const hung = lay(out, [x, out[1] + far, 0]);
    const stay = { lead: old, from: left, to: undefined, hung, float: hung };
    stays.push(stay);
    open.set(old, stay);
  };
  scene.knots.forEach((knot, i) => {
    const { change } = knot;
    // An old lead is laid through a knot whose own lead has come up; otherwise it goes first.
    const first = change && change.how !== 'laid-through';
    if (first) goBehind(knot, change.oldLead);
    comeUp(knot, i);
    if (change && !first) goBehind(knot, change.oldLead);
    last.set(knot.tying, i);
  });
  return stays;
}

/** The knot that took over when a lead left the front. */
export function catcher(
  { scene }: Pick<Setting, 'scene'>,
  stay: { lead: string; from: number | undefined },
) {
  return scene.knots.find((k, i) => i > (stay.from ?? -1) && k.change?.oldLead === stay.lead);
}

const knotSide = ({ layout }: Setting, knot: RowKnot): -1 | 1 =>
  entryOf(layout, knot).heading[0] < 0 ? -1 : 1;

type Box = Patch['box'];

const overlap = (a: Box, b: Box): boolean =>
  a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
