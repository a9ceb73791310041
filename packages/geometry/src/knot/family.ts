import { lengthOf, mirrored } from '../curve/polyline.js';
import { Track, type Vec3 } from '../curve/track.js';
import { type Proportions, proportionsFor } from './proportions.js';
import { type Leaving, type Reach, threaded } from './reach.js';

/** The knots up to mirror images: both halves forward, or a forward and then a backward one. */
export type Pairing = 'same' | 'opposite';

/** Points of a stored zone, the part of the lead between the two places where it is held. */
export const ZONE_POINTS = 161;

/** One half hitch, in its own frame, in which it is a forward one. */
export interface HalfFamily {
  readonly reach: Reach;
  readonly leaving: Leaving;
  /** Whether this half's frame is the mirror image of the first half's. */
  readonly flipped: boolean;
  /** Thread between the knot's start and this half's reach, in this half's frame. */
  readonly before: Float64Array;
  readonly beforeLength: number;
  /** From the loop just threaded to the snug half hitch: zones from the knot's start. */
  readonly zones: readonly Float64Array[];
  /** Height at which the loose loop is made. */
  readonly looseLength: number;
}

export interface KnotFamily {
  readonly proportions: Proportions;
  readonly halves: readonly [HalfFamily, HalfFamily];
  /** Length of the tight knot's zone. */
  readonly tightLength: number;
}

export const RIGHT: Vec3 = [1, 0, 0];
export const DOWN: Vec3 = [0, 1, 0];

function half(
  before: Float64Array,
  flipped: boolean,
  heading: Reach['heading'],
  drops: { readonly loose: number; readonly tight: number },
  leave: (bar: number) => Leaving,
  p: Proportions,
): HalfFamily {
  const last = before.length - 3;
  const start: Vec3 = [before[last]!, before[last + 1]!, before[last + 2]!];
  const reach: Reach = {
    start,
    heading,
    bar: start[1] + drops.loose,
    gap: 1.5,
    layer: p.layer,
    bend: p.bend,
    clear: p.layer + 1.1,
  };
  const beforeLength = lengthOf(before);
  const trackFor = (r: Reach, leaving: Leaving) => {
    const track = new Track(start, heading === 'right' ? RIGHT : DOWN);
    if (beforeLength > 0) track.follow(before, beforeLength, DOWN);
    return threaded(track, r, 0, leaving).track;
  };
  const loose = trackFor(reach, leave(reach.bar));
  const tightBar = start[1] + drops.tight;
  const tightReach: Reach = {
    ...reach,
    bar: tightBar,
    gap: 1.06,
    bend: 0.52,
    clear: p.layer + 1.06,
  };
  const tight = trackFor(tightReach, leave(tightBar));
  return {
    reach,
    leaving: leave(reach.bar),
    flipped,
    before,
    beforeLength,
    zones: [loose.sample(ZONE_POINTS), tight.sample(ZONE_POINTS)],
    looseLength: loose.length,
  };
}

function build(pairing: Pairing, ratio: number): KnotFamily {
  const p = proportionsFor(ratio);
  const opposite = pairing === 'opposite';
  const start = Float64Array.of(-p.halfPitch, 0, p.layer);
  const first = half(
    start,
    false,
    'right',
    { loose: 4, tight: 0 },
    (bar) =>
      opposite
        ? { way: 'across-and-down', x: p.layer + 0.4, bottom: bar + 1 }
        : { way: 'down-over-bar', bottom: bar + 1 },
    p,
  );
  const tight = first.zones[first.zones.length - 1]!;
  const second = half(
    opposite ? mirrored(tight) : tight,
    opposite,
    'down',
    { loose: 4, tight: 2.6 },
    () => ({ way: 'across', x: p.halfPitch }),
    p,
  );
  const zone = second.zones[second.zones.length - 1]!;
  return { proportions: p, halves: [first, second], tightLength: lengthOf(zone) };
}

const cache = new Map<string, KnotFamily>();
const CACHE_LIMIT = 32;

/** The family of curves of a knot for one held/tying ratio; the last few are kept. */
export function familyFor(pairing: Pairing, ratio: number): KnotFamily {
  const key = `${pairing} ${ratio}`;
  const known = cache.get(key);
  if (known) return known;
  const family = build(pairing, ratio);
  if (cache.size >= CACHE_LIMIT) cache.delete(cache.keys().next().value!);
  cache.set(key, family);
  return family;
}
