/** Points of a stored curve. */
export const FRAME_POINTS = 81;

/** Curves from a loose half hitch (not stored) to the tight one. */
export const FRAMES = 28;

/** Held/tying ratios at which the hitches are tightened; between them curves are interpolated. */
export const RATIOS: readonly number[] = [0.5, 0.7, 1, 1.4, 2];

/** Points of a stored curve of a lead that is tied over another, and of the lead it catches. */
export const OVER_POINTS = 97;
export const CAUGHT_POINTS = 41;
