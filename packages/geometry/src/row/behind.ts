import type { Vec3 } from '../curve/track.js';
import { staysInLanes } from './lanes.js';
import { staysInLayers } from './layers.js';
import { asideOf, catcher, ownWayIn, placeIn } from './places.js';
import type { Passage, WayIn } from './routes.js';
import type { RowKnot, RowScene } from './scene.js';
import type { Setting } from './setting.js';
import type { Lane, Stay } from './stay.js';

/** Distance of neighbouring layers, in diameters. */
const LAYER = 1.06;

/** From the held strings' middle to the nearest layer, in diameters beyond half the held string. */
const NEAREST = 2;

interface Behind {
  readonly stays: readonly Stay[];
  readonly busy: boolean;
}

const known = new WeakMap<RowScene, Behind>();

/** Depth at which a lead that is not tying at the moment hangs behind the work. */
export function hungPassage(setting: Setting, lead: string, last: RowKnot): Passage {
  const from = setting.scene.knots.lastIndexOf(last);
  const stay = staysOf(setting).find((s) => s.lead === lead && s.from === from);
  return passage(setting, stay?.hung ?? 0);
}

/** How far to the right of where it went to the back such a lead hangs, in diameters. */
export function hungAside(setting: Setting, lead: string, last: RowKnot): number {
  const from = setting.scene.knots.lastIndexOf(last);
  const stay = staysOf(setting).find((s) => s.lead === lead && s.from === from);
  return stay?.aside ?? asideOf(setting, last, catcher(setting, { lead, from }));
}

/** Depth of a lead that comes from behind to the knot at a place: as a float, or by its tail. */
export const passageTo = (setting: Setting, index: number): Passage =>
  passage(setting, stayTo(setting, index)?.float ?? 0);

/** Whether the lead that ties a knot was behind the work since its knot before. */
export const comesFromBehind = (setting: Setting, index: number): boolean =>
  stayTo(setting, index) !== undefined;

/** How a lead comes to a knot where much lies behind the work; undefined where little does. */
export const laneTo = (setting: Setting, index: number): Lane | undefined =>
  stayTo(setting, index)?.lane;

/** How a lead comes up to a knot. */
export const wayInOf = (setting: Setting, knot: RowKnot): WayIn =>
  laneTo(setting, setting.scene.knots.indexOf(knot))?.into ?? ownWayIn(setting, knot);

/** Where a lead comes through to the front for a knot. */
export const wayIn = (setting: Setting, knot: RowKnot): Vec3 =>
  placeIn(setting, knot, wayInOf(setting, knot));

/** Whether each lead behind the work has to be kept clear of every other, in a lane of its own. */
export const isBusy = (setting: Setting): boolean => workedOut(setting).busy;

const stayTo = (setting: Setting, index: number): Stay | undefined =>
  staysOf(setting).find((s) => s.to === index);

function passage({ options }: Setting, layer: number): Passage {
  const d = options.diameter;
  return { diameter: d, behind: (options.ratio / 2 + NEAREST + LAYER * layer) * d };
}

const staysOf = (setting: Setting): readonly Stay[] => workedOut(setting).stays;

function workedOut(setting: Setting): Behind {
  const { scene, layout } = setting;
  let found = known.get(scene);
  if (!found) {
    const { stays, tangled } = staysInLayers(setting);
    const busy = tangled || layout.crowded.size > 0;
    found = { busy, stays: busy ? staysInLanes(setting) : stays };
    known.set(scene, found);
  }
  return found;
}
