import type { Vec3 } from '../curve/track.js';
import { distance, type Lying, layerBehind, type Place, roomRound } from './lying.js';
import { asideOf, knotSide, ownWayIn, placeIn, wayOut } from './places.js';
import { BEND, NEARBY, TAIL, TAIL_ASIDE, type WayIn } from './routes.js';
import type { RowKnot } from './scene.js';
import type { Setting } from './setting.js';
import { followLeads, type Lane, type Stay } from './stay.js';

/** How near to each other threads may be that go through to the front or the back, in diameters. */
const APART = 1.06;

/** How far below where it begins to hang a lead may be bent to be drawn out, in diameters. */
const LOWEST = 12;

/** How much further aside than usual a lead may hang, in diameters. */
const FURTHER = 1.8;

/** Layers at least between a lead that hangs and its float, for the bends from one to the other. */
const DEEPER = 2;

/** Where else than usual a lead may come through to the front, in diameters: beside and below. */
const ELSEWHERE: readonly (readonly [number, number])[] = [0, 0.25, 0.5, 0.75, 1]
  .flatMap((beside) => [0, 0.25, -0.25].map((below) => [beside, below] as const))
  .sort((a, b) => cost(a) - cost(b));

function cost([beside, below]: readonly [number, number]): number {
  return Math.abs(beside) + 2 * Math.abs(below);
}

/**
 * When leads are behind the work and where they lie there, in work with so many that each needs a place
 * of its own. What comes later lies deeper. A lead that is taken up again is first drawn out to the back
 * where nothing lies over it, and then brought to where nothing is in its way to the front.
 */
export function staysInLanes(setting: Setting): Stay[] {
  const { scene, options } = setting;
  const d = options.diameter;
  const far = 100 * d;
  const lying: Lying[] = [];
  const stays: Stay[] = [];
  const open = new Map<string, { readonly stay: Stay; readonly hung: Lying }>();
  const outs: Place[] = [];
  const ins: Place[] = [];
  followLeads(scene, {
    comeUp: (knot) => ins.push(flat(placeIn(setting, knot, ownWayIn(setting, knot)))),
    goBehind: (knot, _, from) => outs.push(flat(wayOut(setting, scene.knots[from]!, knot))),
  });
  const deepest = (lines: readonly (readonly Place[])[]): number =>
    layerBehind(lines, lying, NEARBY * d);

  /** How a lead comes to the front where nothing is in its way. */
  const comesThrough = (knot: RowKnot, from: Place | undefined): [WayIn, Place] => {
    const own = ownWayIn(setting, knot);
    let best: { readonly way: WayIn; readonly place: Place; readonly room: number } | undefined;
    for (const [beside, below] of ELSEWHERE) {
      const way = { ...own, beside: own.beside + beside, below: own.below + below };
      const place = flat(placeIn(setting, knot, way));
      const room = Math.min(
        roomRound([place], lying),
        ...outs.map((out) => distance([place], [out])),
        from ? distance([place], [from]) - 2 * BEND * d + APART * d : Infinity,
      );
      if (!best || room > best.room) best = { way, place, room };
      if (best.room >= APART * d) break;
    }
    return [best!.way, best!.place];
  };

  /** How far aside a lead hangs where it is not in the way of those that hang already or come later. */
  const hangsAside = (out: Place, usual: number): number => {
    const hanging = [...open.values()].map(({ hung }) => hung.line);
    const later = [...ins, ...outs].filter((place) => reach(place, out) > 1e-6).map((p) => [p]);
    let best = usual;
    let most = -1;
    for (let more = 0; more <= FURTHER; more += FURTHER / 6) {
      const aside = usual + Math.sign(usual) * more;
      const x = out[0] + aside * d;
      const turn: Place = [x, out[1]];
      const end: Place = [x, out[1] + far];
      const room = Math.min(
        APART * d,
        ...hanging.map((line) => distance(line, [turn, end])),
        ...later.map((place) => distance(place, [out, turn, end])),
      );
      if (room > most + 1e-9) {
        best = aside;
        most = room;
      }
    }
    return best;
  };

  followLeads(scene, {
    comeUp: (knot, i) => {
      const hanging = open.get(knot.tying);
      ins.shift();
      if (!hanging) {
        const [into, to] = comesThrough(knot, undefined);
        const x = to[0] + knotSide(setting, knot) * TAIL_ASIDE * d;
        const float = deepest([[to, [x, to[1]], [x, to[1] + far]]]);
        lying.push({ layer: float, line: [to, [x, to[1]], [x, to[1] + (BEND + TAIL) * d]] });
        const lane: Lane = { into, drawnAt: undefined, corner: undefined };
        stays.push({ lead: knot.tying, from: undefined, to: i, hung: float, float, lane });
        return;
      }
      const { stay, hung } = hanging;
      open.delete(knot.tying);
      lying.splice(lying.indexOf(hung), 1);
      const [out, turn] = hung.line as [Place, Place];
      const drawnAt = drawnFrom(out, turn, stay.hung, lying, d);
      const from: Place = drawnAt === undefined ? out : [turn[0], drawnAt + BEND * d];
      const [into, to] = comesThrough(knot, from);
      const corner = cornerOf(
        from,
        to,
        ins,
        [...open.values()].map((other) => other.hung.line[0]!),
        d,
      );
      const route = corner ? [from, corner, to] : [from, to];
      stay.to = i;
      stay.float = Math.max(deepest([route]), stay.hung + DEEPER);
      stay.lane = { into, drawnAt, corner };
      if (drawnAt !== undefined) lying.push({ layer: stay.hung, line: [out, turn, from] });
      lying.push({ layer: stay.float, line: route });
    },
    goBehind: (knot, lead, left) => {
      const from = scene.knots[left]!;
      const out = flat(wayOut(setting, from, knot));
      const aside = hangsAside(out, asideOf(setting, from, knot));
      const turn: Place = [out[0] + aside * d, out[1]];
      const end: Place = [turn[0], turn[1] + far];
      // While it is let down it comes past all that is below where it went to the back.
      const layer = deepest([
        [out, turn, end],
        [out, [out[0], out[1] + far]],
      ]);
      const hung: Lying = { layer, line: [out, turn, end] };
      lying.push(hung);
      const stay: Stay = { lead, from: left, to: undefined, hung: layer, float: layer, aside };
      stays.push(stay);
      open.set(lead, { stay, hung });
    },
  });
  return stays;
}

/** Height at which a lead can be drawn out to the back from under what lies over it; see `Lane`. */
function drawnFrom(
  out: Place,
  turn: Place,
  hung: number,
  lying: readonly Lying[],
  d: number,
): number | undefined {
  const free = (line: readonly Place[]) => roomRound(line, lying, hung + 1) >= APART * d;
  if (free([out, turn])) return undefined;
  for (let below = BEND; below < LOWEST; below += 0.25) {
    const y = turn[1] + below * d;
    if (
      free([
        [turn[0], y + BEND * d],
        [turn[0], y + 3 * BEND * d],
      ])
    )
      return y;
  }
  return undefined;
}

/**
 * Where a float has to bend so as not to lie over the places where others are to come through, or over
 * those from where leads that hang are to be drawn out.
 */
function cornerOf(
  from: Place,
  to: Place,
  ins: readonly Place[],
  outs: readonly Place[],
  d: number,
): Place | undefined {
  const roomOf = (route: readonly Place[]): number => {
    const apart = (places: readonly Place[]) =>
      Math.min(APART * d, ...places.map((place) => distance([place], route)));
    return 2 * apart(ins) + apart(outs);
  };
  let best: Place | undefined;
  let most = roomOf([from, to]);
  let shortest = 0;
  for (const corner of cornersNear(from, to, d)) {
    if (most >= 3 * APART * d && shortest === 0) break;
    if (!canBend(from, corner, to, BEND * d)) continue;
    const room = roomOf([from, corner, to]);
    const length = reach(from, corner) + reach(corner, to);
    if (room < most - 1e-9 || (room < most + 1e-9 && length >= shortest)) continue;
    best = corner;
    most = room;
    shortest = length;
  }
  return best;
}

/** How far round its ends a float may bend, in diameters, and in what steps that is tried. */
const ROUND = 3;
const STEP = 0.5;

function* cornersNear(from: Place, to: Place, d: number): Generator<Place> {
  for (const [x, y] of [to, from]) {
    for (let dy = -ROUND; dy <= ROUND; dy += STEP) {
      for (let dx = -ROUND; dx <= ROUND; dx += STEP) yield [x + dx * d, y + dy * d];
    }
  }
}

/** Whether there is room for the bends at both ends of a float and at its corner. */
function canBend(from: Place, corner: Place, to: Place, bend: number): boolean {
  const [ax, ay] = [corner[0] - from[0], corner[1] - from[1]];
  const [bx, by] = [to[0] - corner[0], to[1] - corner[1]];
  const [a, b] = [Math.hypot(ax, ay), Math.hypot(bx, by)];
  const cos = (ax * bx + ay * by) / (a * b);
  // The tangent of half the angle, for the part of each leg that the bend takes.
  const least = bend * (1 + Math.sqrt((1 - cos) / (1 + cos)));
  return a >= least && b >= least;
}

const reach = (a: Place, b: Place): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

const flat = ([x, y]: Vec3): Place => [x, y];
