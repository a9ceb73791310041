import { CAUGHT_POINTS, OVER_POINTS, RATIOS } from '../../relax/grid.js';
import { unpack } from './coding.js';
import { PACKED_OVER } from './over.data.js';

const known = new Map<number, readonly Float64Array[]>();

function stored(column: number): readonly Float64Array[] {
  let curves = known.get(column);
  if (!curves) {
    curves = unpack(PACKED_OVER[column]!, (OVER_POINTS + CAUGHT_POINTS) * 3);
    known.set(column, curves);
  }
  return curves;
}

/**
 * The curves that a second half tied over an old lead goes through from loose (not included) to tight,
 * each followed by the old lead's.
 */
export function tighteningOver(ratio: number): Float64Array[] {
  let i = 0;
  while (i < RATIOS.length - 2 && ratio > RATIOS[i + 1]!) i++;
  const low = RATIOS[i]!;
  const f = (ratio - low) / (RATIOS[i + 1]! - low);
  const a = stored(i);
  const b = stored(i + 1);
  return a.map((curve, k) => curve.map((v, c) => v + (b[k]![c]! - v) * f));
}
