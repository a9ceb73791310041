import { CHART_LIMITS } from '@halfhitch/core';

/** Stated limits of a picture that becomes a chart. */
export const PICTURE_LIMITS = {
  /** Size of the file. */
  maxBytes: 32 * 2 ** 20,
  /** Unpacked, a pixel takes four bytes: 200 MB, which a phone can spare. */
  maxPixels: 50_000_000,
  /** Longest side, px; some browsers draw nothing longer. */
  maxSide: 16_384,
  minColours: 2,
  maxColours: CHART_LIMITS.maxColours,
} as const;

/** Knots that are still worked out and drawn as thread in a preview. */
export const MOST_KNOTS_DRAWN = 20_000;
