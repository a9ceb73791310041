import { FRAME_POINTS, RATIOS } from '../../relax/grid.js';
import type { Pairing } from '../loose.js';
import { unpack } from './coding.js';
import { PACKED } from './packed.data.js';

export type HalfName = 'first' | 'second';

const known = new Map<string, readonly Float64Array[]>();

function stored(pairing: Pairing, half: HalfName, column: number): readonly Float64Array[] {
  const key = `${pairing} ${half} ${column}`;
  let curves = known.get(key);
  if (!curves) {
    curves = unpack(PACKED[pairing][half][column]!, FRAME_POINTS * 3);
    known.set(key, curves);
  }
  return curves;
}

/**
 * The curves a half hitch goes through from loose (not included) to tight, for any held/tying ratio
 * within the limits: interpolated between the ratios that were worked out.
 */
export function tightening(pairing: Pairing, half: HalfName, ratio: number): Float64Array[] {
  let i = 0;
  while (i < RATIOS.length - 2 && ratio > RATIOS[i + 1]!) i++;
  const low = RATIOS[i]!;
  const f = (ratio - low) / (RATIOS[i + 1]! - low);
  const a = stored(pairing, half, i);
  const b = stored(pairing, half, i + 1);
  return a.map((curve, k) => curve.map((v, c) => v + (b[k]![c]! - v) * f));
}
