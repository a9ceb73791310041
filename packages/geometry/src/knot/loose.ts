import { Track, type Vec3 } from '../curve/track.js';
import { entryOfKnot, type Proportions } from './proportions.js';
import { type Leaving, type Reach, threaded } from './reach.js';

/** The knots up to mirror images: both halves forward, or a forward and then a backward one. */
export type Pairing = 'same' | 'opposite';

export const RIGHT: Vec3 = [1, 0, 0];
export const DOWN: Vec3 = [0, 1, 0];
/** Where a lead that comes back to its side is led before it hangs down: to the front, dropping. */
export const OUTWARD: Vec3 = [0, 0.3, Math.sqrt(1 - 0.09)];

/** A half hitch before it is pulled tight, and where it is pulled to, in its own frame. */
export interface LooseHalf {
  readonly reach: Reach;
  readonly leaving: Leaving;
  /** From the knot's start to the place where the outgoing lead is held. */
  readonly zone: Track;
  /** Where that place ends up, and the height at which the half hitch is dressed. */
  readonly end: Vec3;
  readonly height: number;
  /** How high the lead may rise: there the finished work begins. */
  readonly ceiling: number;
}

/** How far below its start the bar of a loose loop is made, so that there is room for the hand. */
const FIRST_DROP = 5.2;

/** A first loop leans aside only below the knots already tied in its row. */
const FIRST_STEM = 1.1;
const SECOND_DROP = 3.2;

/** Height at which the lead hangs free of a first half. */
const HANG = 1.7;

const reachFrom = (
  p: Proportions,
  start: Vec3,
  heading: Reach['heading'],
  drop: number,
): Reach => ({
  start,
  heading,
  bar: start[1] + drop,
  stem: heading === 'right' ? FIRST_STEM : 0,
  gap: 1.5,
  layer: p.layer,
  bend: p.bend,
  clear: 1.06,
});

/** The first half, in whose frame it is a forward one begun from the left. */
export function looseFirst(pairing: Pairing, p: Proportions): LooseHalf {
  const reach = reachFrom(p, entryOfKnot(p), 'right', FIRST_DROP);
  const bottom = reach.bar + 1;
  const leaving: Leaving =
    pairing === 'same'
      ? { way: 'down-over-bar', bottom }
      : { way: 'across-and-down', x: p.layer + 0.4, bottom };
  const zone = threaded(new Track(reach.start, RIGHT), reach, 0, leaving).track;
  return {
    reach,
    leaving,
    zone,
    // Where the second half goes back over the held string the lead waits in front of the wraps.
    end: pairing === 'same' ? [-p.layer, HANG, p.layer + 0.75] : [p.layer, HANG, p.layer + 1.05],
    height: -0.5,
    ceiling: -1,
  };
}

/**
 * The second half, in the frame in which it is a forward one: the first half's own for like halves,
 * its mirror image for opposite ones.
 *
 * @param before the tight first half in this frame, points at equal steps
 */
export function looseSecond(pairing: Pairing, p: Proportions, before: Float64Array): LooseHalf {
  const n = before.length;
  const start: Vec3 = [before[n - 3]!, before[n - 2]!, before[n - 1]!];
  const reach = reachFrom(p, start, 'down', SECOND_DROP);
  const leaving: Leaving = { way: 'across', x: p.halfPitch };
  const zone = new Track([before[0]!, before[1]!, before[2]!], RIGHT);
  zone.follow(before, DOWN);
  threaded(zone, reach, 0, leaving);
  // Both ends of a cow hitch are on one side, one above the other.
  const opposite = pairing === 'opposite';
  return {
    reach,
    leaving,
    zone,
    end: [p.halfPitch, opposite ? BOTH_ENDS : 0, p.passing],
    height: opposite ? BOTH_ENDS / 2 : 0,
    ceiling: opposite ? -1.06 : -1.3,
  };
}

/**
 * Extends a track that has left a knot to the right by the bend into hanging free. A cow hitch's lead
 * hangs beside the knot it came from, and so further out in front.
 */
export function hangFree(track: Track, pairing: Pairing, p: Proportions): Track {
  if (pairing !== 'opposite') return track.turn(DOWN, p.bend);
  const [, y, z] = OUTWARD;
  return track.turn(OUTWARD, p.bend).turn([0, z, -y], p.bend, Math.acos(y));
}

/** Length of the bend of `hangFree`. */
export const hangLength = (pairing: Pairing, p: Proportions): number =>
  p.bend * (Math.PI / 2 + (pairing === 'opposite' ? Math.acos(OUTWARD[1]) : 0));

/** Distance of the two ends of a cow hitch. */
const BOTH_ENDS = 1.02;
