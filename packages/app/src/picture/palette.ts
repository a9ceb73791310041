import { kmeansGenerator } from 'ml-kmeans';
import { hexOfOklab, oklabOf } from '../colour/spaces.js';
import { CHROMA_WEIGHT } from './nearest.js';

/** Points that are grouped; more of them would only take longer. */
const MOST_POINTS = 16_384;
/** Knots between two chances to give work up. */
const KNOTS_AT_A_TIME = 4096;
/** Points for a weight of one: enough for the least weight to come to one. */
const POINTS_A_ROOT = 4;
const MOST_ROUNDS = 40;
/** Centres that moved less than this, squared, have come to rest: far below what eyes see. */
const AT_REST = 1e-6;
/** Any number does: a picture must give the same colours each time. */
const SEED = 1709;
/** Colours nearer than about this in OKLab are taken together before they are grouped. */
const GRAIN = 0.02;

/** A knot with no neighbour of nearly its colour is most likely a mixture of two things' edges. */
const LONE_WEIGHT = 0.1;
/** How near a neighbour must be, in OKLab, to be of the same thing. */
const SAME = 0.05;

/** Colours that are nearly the same. */
interface Shade {
  /** The commonest of them, `#rrggbb`. */
  readonly hex: string;
  /** L, and a and b as they are weighed. */
  readonly point: readonly [number, number, number];
  /** Its area in knots, those at edges counted for less. */
  readonly weight: number;
}

/**
 * Reduces colours to so many by k-means (started by k-means++) in OKLab, where distances are near
 * to what is seen. A shade weighs by the root of its area, so that small things in a colour of
 * their own keep it beside large skies; knots on edges, which mix two colours, count for little. A
 * group is shown by that of its shades which is nearest to all others, not by their mean: flat
 * colours of a drawing come out as they are, not mixed with those of its soft edges.
 *
 * A generator, so that work can be given up between rounds.
 *
 * @param oklab L, a and b of each knot, row by row
 * @param count most colours wanted, at least 1
 * @returns `#rrggbb` of different colours, commonest first
 */
export function* reduceColours(
  oklab: Float32Array,
  columns: number,
  count: number,
): Generator<undefined, string[], undefined> {
  const weights = yield* weighColours(oklab, columns);
  if (weights.size <= count) return commonestFirst(weights);
  const shades = shadesOf(weights);
  const { points, owners } = weighed(shades);
  let groups: readonly number[] = [];
  const rounds = kmeansGenerator(points, Math.min(count, points.length), {
    seed: SEED,
    maxIterations: MOST_ROUNDS,
    tolerance: AT_REST,
  });
  for (const round of rounds) {
    groups = round.clusters;
    yield;
  }
  const members = new Map<number, Set<Shade>>();
  groups.forEach((group, i) => {
    const its = members.get(group) ?? new Set();
    its.add(owners[i] as Shade);
    members.set(group, its);
  });
  const chosen = new Map<string, number>();
  for (const its of members.values()) {
    const all = [...its];
    chosen.set(
      inTheMiddle(all).hex,
      all.reduce((sum, { weight }) => sum + weight, 0),
    );
    yield;
  }
  return commonestFirst(chosen);
}

/** Each colour with the knots that have it, by how much they count. */
function* weighColours(
  oklab: Float32Array,
  columns: number,
): Generator<undefined, Map<string, number>, undefined> {
  const weights = new Map<string, number>();
  const knots = oklab.length / 3;
  const same = (one: number, other: number): number => {
    const dl = (oklab[3 * one] as number) - (oklab[3 * other] as number);
    const da = (oklab[3 * one + 1] as number) - (oklab[3 * other + 1] as number);
    const db = (oklab[3 * one + 2] as number) - (oklab[3 * other + 2] as number);
    return dl * dl + CHROMA_WEIGHT ** 2 * (da * da + db * db) < SAME * SAME ? 1 : 0;
  };
  for (let knot = 0; knot < knots; knot++) {
    const hex = hexOfOklab({
      l: oklab[3 * knot] as number,
      a: oklab[3 * knot + 1] as number,
      b: oklab[3 * knot + 2] as number,
    });
    let alike = 0;
    if (knot % columns > 0) alike += same(knot, knot - 1);
    if (knot % columns < columns - 1) alike += same(knot, knot + 1);
    if (knot >= columns) alike += same(knot, knot - columns);
    if (knot + columns < knots) alike += same(knot, knot + columns);
    weights.set(hex, (weights.get(hex) ?? 0) + LONE_WEIGHT + alike);
    if (knot % KNOTS_AT_A_TIME === 0) yield;
  }
  return weights;
}

function commonestFirst(counts: ReadonlyMap<string, number>): string[] {
  return [...counts].sort(([, one], [, other]) => other - one).map(([hex]) => hex);
}

function shadesOf(weights: ReadonlyMap<string, number>): Shade[] {
  const shades = new Map<string, { hex: string; most: number; weight: number }>();
  for (const [hex, weight] of weights) {
    const { l, a, b } = oklabOf(hex);
    const bin = [l, a, b].map((value) => Math.round(value / GRAIN)).join();
    const shade = shades.get(bin);
    if (shade === undefined) shades.set(bin, { hex, most: weight, weight });
    else {
      shade.weight += weight;
      if (weight > shade.most) Object.assign(shade, { hex, most: weight });
    }
  }
  return [...shades.values()].map(({ hex, weight }) => {
    const { l, a, b } = oklabOf(hex);
    return { hex, weight, point: [l, CHROMA_WEIGHT * a, CHROMA_WEIGHT * b] };
  });
}

/** The library weighs all points alike, so a shade is put in as often as it weighs. */
function weighed(shades: readonly Shade[]): { points: number[][]; owners: Shade[] } {
  const whole = shades.reduce((sum, { weight }) => sum + Math.sqrt(weight), 0);
  const scale = Math.min(POINTS_A_ROOT, (MOST_POINTS - shades.length) / whole);
  const owners = shades.flatMap((shade) =>
    Array<Shade>(Math.max(1, Math.round(Math.sqrt(shade.weight) * scale))).fill(shade),
  );
  return { points: owners.map(({ point }) => [...point]), owners };
}

/** The shade from which the way to all others, each as much as it weighs, is shortest. */
function inTheMiddle(shades: readonly Shade[]): Shade {
  let middle = shades[0] as Shade;
  let least = Number.POSITIVE_INFINITY;
  for (const one of shades) {
    let way = 0;
    for (const { point, weight } of shades) {
      way +=
        weight *
        Math.hypot(point[0] - one.point[0], point[1] - one.point[1], point[2] - one.point[2]);
    }
    if (way < least) {
      least = way;
      middle = one;
    }
  }
  return middle;
}
