import { mirrored } from '../curve/polyline.js';
import { guidedBy, smoothLength } from '../curve/smooth.js';
import { FRAME_POINTS } from '../relax/grid.js';
import { type LooseHalf, looseFirst, looseSecond, type Pairing, RIGHT } from './loose.js';
import { type Proportions, proportionsFor } from './proportions.js';
import { tightening } from './tightened/curves.js';

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

const cache = new Map<string, KnotFamily>();

/** Ratios for which families are kept. */
const CACHE_LIMIT = 32;

/** The family of curves of a knot for one held/tying ratio; the last few are kept. */
export const familyFor = (pairing: Pairing, ratio: number): KnotFamily =>
  kept(cache, `${pairing} ${ratio}`, () => build(pairing, ratio));

/** What is known for a key, or made now; the oldest is forgotten when there are too many. */
export function kept<T>(families: Map<string, T>, key: string, make: () => T): T {
  const known = families.get(key);
  if (known) return known;
  const family = make();
  if (families.size >= CACHE_LIMIT) families.delete(families.keys().next().value!);
  families.set(key, family);
  return family;
}
