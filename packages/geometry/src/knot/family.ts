import { mirrored } from '../curve/polyline.js';
import { guidedBy, smoothLength } from '../curve/smooth.js';
import { CAUGHT_POINTS, FRAME_POINTS, OVER_POINTS } from '../relax/grid.js';
import { laidOver, lifted, looseOver } from './caught.js';
import { type LooseHalf, looseFirst, looseSecond, type Pairing, RIGHT } from './loose.js';
import { type Proportions, proportionsFor } from './proportions.js';
import { tightening } from './tightened/curves.js';
import { tighteningOver } from './tightened/over.js';

/** One half hitch, in its own frame, in which it is a forward one. */
export interface HalfFamily {
  readonly loose: LooseHalf;
  /** Whether this half's frame is the mirror image of the first half's. */
  readonly flipped: boolean;
  /** Thread between the knot's start and this half's reach, in this half's frame. */
  readonly before: Float64Array | undefined;
  /** The lead from the knot's start, from the loop just threaded to the snug half hitch. */
  readonly zones: readonly Float64Array[];
}

export interface KnotFamily {
  readonly pairing: Pairing;
  readonly proportions: Proportions;
  readonly halves: readonly [HalfFamily, HalfFamily];
  /** The tight knot's zone, in the second half's frame, and its length. */
  readonly tight: Float64Array;
  readonly tightLength: number;
}

function build(pairing: Pairing, ratio: number): KnotFamily {
  const p = proportionsFor(ratio);
  const opposite = pairing === 'opposite';
  const a = looseFirst(pairing, p);
  const first = [a.zone.sample(FRAME_POINTS), ...tightening(pairing, 'first', ratio)];
  const snug = first[first.length - 1]!;
  const before = opposite ? mirrored(snug) : snug;
  const b = looseSecond(pairing, p, before);
  const second = [b.zone.sample(FRAME_POINTS), ...tightening(pairing, 'second', ratio)];
  const tight = second[second.length - 1]!;
  return {
    pairing,
    proportions: p,
    halves: [
      { loose: a, flipped: false, before: undefined, zones: first },
      { loose: b, flipped: opposite, before, zones: second },
    ],
    tight,
    tightLength: smoothLength(guidedBy(tight, RIGHT)),
  };
}

/** A clove hitch that catches an old lead, with that lead's curves: tying diameters. */
export interface CatchingFamily extends KnotFamily {
  /** The old lead while the second half is pulled tight over it, in the knot's frame. */
  readonly caught: readonly Float64Array[];
}

function buildCatching(ratio: number): CatchingFamily {
  const plain = familyFor('same', ratio);
  const p = plain.proportions;
  const [first] = plain.halves;
  const snug = first.zones[first.zones.length - 1]!;
  const loose = looseOver(p, snug);
  const curves = tighteningOver(ratio);
  const split = OVER_POINTS * 3;
  const zones = [loose.zone.sample(OVER_POINTS), ...curves.map((c) => c.subarray(0, split))];
  const tight = zones[zones.length - 1]!;
  const before = lifted(p, snug).sample(OVER_POINTS);
  return {
    pairing: 'same',
    proportions: p,
    halves: [first, { loose, flipped: false, before, zones }],
    tight,
    tightLength: smoothLength(guidedBy(tight, RIGHT)),
    caught: [laidOver(p, true, 0).sample(CAUGHT_POINTS), ...curves.map((c) => c.subarray(split))],
  };
}

const cache = new Map<string, KnotFamily>();
const CACHE_LIMIT = 32;

/** The family of curves of a knot for one held/tying ratio; the last few are kept. */
export const familyFor = (pairing: Pairing, ratio: number): KnotFamily =>
  kept(cache, `${pairing} ${ratio}`, () => build(pairing, ratio));

const catching = new Map<string, CatchingFamily>();

/** The same for a clove hitch that catches an old lead between its halves. */
export const catchingFamilyFor = (ratio: number): CatchingFamily =>
  kept(catching, `${ratio}`, () => buildCatching(ratio));

function kept<T>(families: Map<string, T>, key: string, make: () => T): T {
  const known = families.get(key);
  if (known) return known;
  const family = make();
  if (families.size >= CACHE_LIMIT) families.delete(families.keys().next().value!);
  families.set(key, family);
  return family;
}
