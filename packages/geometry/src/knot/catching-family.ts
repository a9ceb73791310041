import { guidedBy, smoothLength } from '../curve/smooth.js';
import { CAUGHT_POINTS, OVER_POINTS } from '../relax/grid.js';
import { laidOver, lifted, looseOver } from './caught.js';
import { familyFor, type KnotFamily, kept } from './family.js';
import { RIGHT } from './loose.js';
import { tighteningOver } from './tightened/over.js';

/** A clove hitch that catches an old lead, with that lead's curves: tying diameters. */
export interface CatchingFamily extends KnotFamily {
  /** The old lead while the second half is pulled tight over it, in the knot's frame. */
  readonly caught: readonly Float64Array[];
}

function build(ratio: number): CatchingFamily {
  const plain = familyFor('same', ratio);
  const p = plain.proportions;
  const [first] = plain.halves;
  const snug = first.zones[first.zones.length - 1]!;
  const loose = looseOver(p, snug);
  const { tying, caught } = tighteningOver(ratio);
  const zones = [loose.zone.sample(OVER_POINTS), ...tying];
  const tight = zones[zones.length - 1]!;
  const before = lifted(p, snug).sample(OVER_POINTS);
  return {
    pairing: 'same',
    proportions: p,
    halves: [first, { loose, flipped: false, before, zones }],
    tight,
    tightLength: smoothLength(guidedBy(tight, RIGHT)),
    caught: [laidOver(p, true, 0).sample(CAUGHT_POINTS), ...caught],
  };
}

const cache = new Map<string, CatchingFamily>();

/** The family of curves of a clove hitch that catches an old lead between its halves. */
export const catchingFamilyFor = (ratio: number): CatchingFamily =>
  kept(cache, `${ratio}`, () => build(ratio));
