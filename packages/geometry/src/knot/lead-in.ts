import type { Vec3 } from '../curve/track.js';
import type { Proportions } from './proportions.js';
import { entryOfKnot } from './proportions.js';

/** Where a lead that comes from above hangs, counted from the knot's entry. */
export interface LeadInWay {
  readonly aside: number;
  readonly front: number;
  /** How strongly the bend keeps to its direction at the knot. */
  readonly pull: number;
}

/** Well outside the knot, with room for a wide bend. */
const OUTSIDE_WAY: LeadInWay = { aside: 1.8, front: 0, pull: 4 };

/** In front of the gap between two base strings, where the next knot leaves no room beside. */
export const BETWEEN_WAY: LeadInWay = { aside: -0.9, front: 1.8, pull: 1.6 };

/** The same in a wide gap, where base strings are thicker or thinner than the lead. */
export const BESIDE_WAY: LeadInWay = { aside: 0.3, front: 0.9, pull: 1.6 };

/** Height above the entry at which the lead leaves straightness. */
const BEND_HEIGHT = 3.6;

/**
 * How strongly the bend keeps to its directions at the top and at the knot, the latter more where the
 * lead has to turn back up. Found by search as those with the widest bends over all motions.
 */
const TOP_PULL = 3;
const KNOT_PULL_TURNING = 2;

/**
 * The lead from above into a knot begun from the left, in tying diameters: straight down, then bent
 * to the direction in which it goes into the knot.
 */
export function leadIn(
  p: Proportions,
  heading: Vec3,
  above: number,
  count: number,
  way: LeadInWay = OUTSIDE_WAY,
): Float64Array {
  const entry = entryOfKnot(p);
  const bend = Math.min(BEND_HEIGHT, above);
  const straight = above - bend;
  const from: Vec3 = [entry[0] - way.aside, entry[1] - bend, entry[2] + way.front];
  const out = new Float64Array(count * 3);
  // Half the points for the straight part, the others for the bend.
  const lines = straight > 0 ? count >> 2 : 0;
  for (let i = 0; i < lines; i++) {
    out.set([from[0], from[1] - straight * (1 - i / lines), from[2]], i * 3);
  }
  const pull = way.pull + KNOT_PULL_TURNING * (1 - heading[1]);
  for (let i = lines; i < count; i++) {
    const s = (i - lines) / (count - 1 - lines);
    const a = 2 * s ** 3 - 3 * s ** 2 + 1;
    const b = (s ** 3 - 2 * s ** 2 + s) * TOP_PULL;
    const c = 1 - a;
    const d = (s ** 3 - s ** 2) * pull;
    for (let k = 0; k < 3; k++) {
      out[i * 3 + k] = a * from[k]! + b * (k === 1 ? 1 : 0) + c * entry[k]! + d * heading[k]!;
    }
  }
  return out;
}
