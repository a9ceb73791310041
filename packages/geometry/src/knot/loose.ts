import { Track, type Vec3 } from '../curve/track.js';
import { entryOfKnot, type Proportions } from './proportions.js';
import { type Leaving, type Reach, threaded } from './reach.js';

/** The knots up to mirror images: both halves forward, or a forward and then a backward one. */
export type Pairing = 'same' | 'opposite';

export const RIGHT: Vec3 = [1, 0, 0];
export const DOWN: Vec3 = [0, 1, 0];

/** A half hitch before it is pulled tight, and where it is pulled to, in its own frame. */
export interface LooseHalf {
  readonly reach: Reach;
  readonly leaving: Leaving;
  /** From the knot's start to the place where the outgoing lead is held. */
  readonly zone: Track;
  /** Where that place ends up, and the height at which the half hitch is dressed. */
  readonly end: Vec3;
  readonly height: number;
}

/** How far below its start the bar of a loose loop is made, so that there is room for the hand. */
const FIRST_DROP = 4;
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
  };
}

/** Distance of the two ends of a cow hitch. */
const BOTH_ENDS = 1.02;
