import { FRAME_POINTS, FRAMES } from '../../relax/grid.js';
import type { Pairing } from '../loose.js';
import { unpackMotion } from './coding.js';
import { EQUAL } from './equal.data.js';
import { RatioStore } from './ratio-store.js';

export type HalfName = 'first' | 'second';

/** Packed curves of the hitches at one ratio. */
export type HitchTexts = Readonly<Record<Pairing, Readonly<Record<HalfName, string>>>>;

type HitchCurves = Readonly<Record<Pairing, Readonly<Record<HalfName, readonly Float64Array[]>>>>;

function unpackHitches(texts: HitchTexts): HitchCurves {
  const curves = (text: string) => unpackMotion(text, FRAME_POINTS * 3, FRAMES);
  const halves = ({ first, second }: HitchTexts[Pairing]) => ({
    first: curves(first),
    second: curves(second),
  });
  return { same: halves(texts.same), opposite: halves(texts.opposite) };
}

/** Strings of one thickness are always there; `every-ratio.ts` adds the rest. */
export const hitchStore = new RatioStore<HitchTexts, HitchCurves>(EQUAL, unpackHitches);

/**
 * The curves a half hitch goes through from loose (not included) to tight, for any held/tying ratio
 * within the limits: interpolated between the ratios that were worked out.
 *
 * @throws GeometryError when strings are unequal and curves for them are not loaded
 */
export function tightening(pairing: Pairing, half: HalfName, ratio: number): Float64Array[] {
  return hitchStore.between(ratio, (curves) => curves[pairing][half]);
}
