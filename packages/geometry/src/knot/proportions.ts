/** Sizes of a hitch, in diameters of the tying string. */
export interface Proportions {
  /** Held diameter over tying diameter. */
  readonly ratio: number;
  /** Distance of the centre-lines of two strings that touch: tying on held. */
  readonly touch: number;
  /** How far the laid-over strand runs in front of (and behind, and beside) the held string. */
  readonly layer: number;
  /** Half the distance of neighbouring held strings in a row. */
  readonly halfPitch: number;
  /** Radius of free bends. */
  readonly bend: number;
}

/** The smallest and largest held/tying diameter ratio the motions are made and checked for. */
export const RATIO_LIMITS = { least: 0.5, most: 2 } as const;

/** Slack that keeps strands that lie on each other from touching through rounding. */
const EASE = 0.03;

export function proportionsFor(ratio: number): Proportions {
  const touch = (ratio + 1) / 2;
  return {
    ratio,
    touch,
    layer: touch + EASE,
    halfPitch: touch + 0.5,
    bend: 0.6,
  };
}
