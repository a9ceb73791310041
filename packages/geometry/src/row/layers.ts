import type { Vec3 } from '../curve/track.js';
import { distance, type Place } from './lying.js';
import { asideOf, catcher, inOneGap, knotSide, ownWayIn, placeIn, wayOut } from './places.js';
import { ASIDE, BEND, NEARBY, TAIL } from './routes.js';
import type { Setting } from './setting.js';
import { followLeads, type Stay } from './stay.js';

/** What lies in a layer behind the work, seen from the front. */
interface Patch {
  readonly layer: number;
  readonly box: readonly [number, number, number, number];
  /** The thread itself. */
  line: readonly Place[];
}

/** Nearer than this, in diameters, a thread would press into another. */
const TOUCHING = 0.98;

export interface LayeredStays {
  readonly stays: readonly Stay[];
  /** Whether a lead that comes or goes would have to pass through another. */
  readonly tangled: boolean;
}

/**
 * When leads are behind the work, and how deep. What comes later lies behind all that is there
 * where it lies, as it does in the hand.
 */
export function staysInLayers(setting: Setting): LayeredStays {
  const { scene, options } = setting;
  const d = options.diameter;
  const patches: Patch[] = [];
  const lay = (a: Vec3, b: Vec3, line: readonly Place[]): Patch => {
    const box = boxOf(a, b, (NEARBY / 2) * d);
    const layer =
      1 + Math.max(-1, ...patches.filter((p) => overlap(p.box, box)).map((p) => p.layer));
    const patch = { layer, box, line };
    patches.push(patch);
    return patch;
  };
  let tangled = false;
  /** Whether anything lies deeper than a layer between two places. */
  const over = (a: Vec3, b: Vec3, layer: number): void => {
    const box = boxOf(a, b, NEARBY * d);
    if (patches.some((p) => p.layer > layer && overlap(p.box, box))) tangled = true;
  };
  /** A lead goes to the front or to the back. */
  const through = ([x, y]: Vec3): void => {
    if (patches.some(({ line }) => distance([[x, y]], line) < TOUCHING * d)) tangled = true;
  };
  const stays: Stay[] = [];
  const open = new Map<string, { readonly stay: Stay; readonly hung: Patch }>();
  const far = 100 * d;
  followLeads(scene, {
    comeUp: (knot, i) => {
      const hanging = open.get(knot.tying);
      const place = placeIn(setting, knot, ownWayIn(setting, knot));
      through(place);
      const [px, py] = place;
      if (!hanging) {
        const x = px + knotSide(setting, knot) * ASIDE * d;
        const tail: readonly Place[] = [flat(place), [x, py], [x, py + (BEND + TAIL) * d]];
        const float = lay(place, [x, py + far, 0], tail).layer;
        stays.push({ lead: knot.tying, from: undefined, to: i, hung: float, float });
        return;
      }
      const { stay, hung } = hanging;
      const from = scene.knots[stay.from!]!;
      stay.to = i;
      const out = wayOut(setting, from, catcher(setting, stay));
      // A loop hangs down until it is pulled straight; within a gap the float lies to the side.
      const near = inOneGap(setting, out, place);
      // It comes from where it hangs past all that lies between there and its float.
      const lane: Vec3 = [
        out[0] + asideOf(setting, from, catcher(setting, stay)) * d,
        out[1] + far,
        0,
      ];
      over(out, lane, stay.hung);
      over(lane, place, stay.hung);
      const x = px + knotSide(setting, knot) * ASIDE * 1.5 * d;
      const float = near
        ? lay([x, out[1], 0], place, [flat(out), [x, out[1]], [x, py], flat(place)])
        : lay(
            [out[0], Math.max(out[1], py) + far, 0],
            [px, Math.min(out[1], py), 0],
            [flat(out), flat(place)],
          );
      stay.float = float.layer;
      hung.line = float.line;
      open.delete(knot.tying);
    },
    goBehind: (knot, lead, left) => {
      const from = scene.knots[left]!;
      const out = wayOut(setting, from, knot);
      through(out);
      const x = out[0] + asideOf(setting, from, knot) * d;
      const low = out[1] + far;
      const hung = lay(out, [x, low, 0], [flat(out), [x, out[1]], [x, low]]);
      const { layer } = hung;
      const stay: Stay = { lead, from: left, to: undefined, hung: layer, float: layer };
      stays.push(stay);
      open.set(lead, { stay, hung });
    },
  });
  return { stays, tangled };
}

const flat = ([x, y]: Vec3): Place => [x, y];

type Box = Patch['box'];

const boxOf = (a: Vec3, b: Vec3, margin: number): Box => [
  Math.min(a[0], b[0]) - margin,
  Math.min(a[1], b[1]) - margin,
  Math.max(a[0], b[0]) + margin,
  Math.max(a[1], b[1]) + margin,
];

const overlap = (a: Box, b: Box): boolean =>
  a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
