import { CAUGHT_POINTS, FRAMES, OVER_POINTS } from '../../relax/grid.js';
import { unpackMotion } from './coding.js';
import { OVER_EQUAL } from './over-equal.data.js';
import { RatioStore } from './ratio-store.js';

/** Packed curves of a half tied over an old lead, and of that lead, at one ratio. */
export interface OverTexts {
  readonly tying: string;
  readonly caught: string;
}

interface OverCurves {
  readonly tying: readonly Float64Array[];
  readonly caught: readonly Float64Array[];
}

/** Strings of one thickness are always there; `every-ratio.ts` adds the rest. */
export const overStore = new RatioStore<OverTexts, OverCurves>(OVER_EQUAL, (texts) => ({
  tying: unpackMotion(texts.tying, OVER_POINTS * 3, FRAMES),
  caught: unpackMotion(texts.caught, CAUGHT_POINTS * 3, FRAMES),
}));

/**
 * The curves that a second half tied over an old lead goes through from loose (not included) to tight,
 * and those of the lead it catches.
 */
export function tighteningOver(ratio: number): OverCurves {
  return {
    tying: overStore.between(ratio, ({ tying }) => tying),
    caught: overStore.between(ratio, ({ caught }) => caught),
  };
}
