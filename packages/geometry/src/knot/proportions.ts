import type { Vec3 } from '../curve/track.js';

/** Sizes of a hitch, in diameters of the tying string. */
export interface Proportions {
  /** Held diameter over tying diameter. */
  readonly ratio: number;
  /** Distance of the centre-lines of two strings that touch: tying on held. */
  readonly touch: number;
  /** How far the laid-over strand runs behind and beside the held string. */
  readonly layer: number;
  /** Half the distance of neighbouring held strings in a row. */
  readonly halfPitch: number;
  /** Depth at which the lead passes from one knot to the next, in front. */
  readonly passing: number;
  /** Radius of free bends. */
  readonly bend: number;
}

/** The smallest and largest held/tying diameter ratio the motions are made and checked for. */
export const RATIO_LIMITS = { least: 0.5, most: 2 } as const;

/** Slack that keeps strands that lie on each other from touching through rounding. */
const EASE = 0.03;

export function proportionsFor(ratio: number): Proportions {
  const touch = (ratio + 1) / 2;
  const halfPitch = touch + 0.5;
  return {
    ratio,
    touch,
    layer: touch + EASE,
    halfPitch,
    // The exit of a half hitch slides up between the held string and the place where the lead comes
    // in, which is therefore a diameter further out than a strand that lies on the held string.
    passing: Math.max(Math.sqrt((touch + 1) ** 2 - halfPitch ** 2), touch) + EASE,
    bend: 0.75,
  };
}

/** Where the lead comes into a knot that is begun from the left. */
export const entryOfKnot = (p: Proportions): Vec3 => [-p.halfPitch, 0, p.passing];
