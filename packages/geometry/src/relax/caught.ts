import { resample } from '../curve/polyline.js';
import { laidOver, looseOver, oldLeadTo } from '../knot/caught.js';
import { proportionsFor } from '../knot/proportions.js';
import { CAUGHT_POINTS, FRAMES, OVER_POINTS } from './grid.js';
import { tighten } from './tighten.js';

/**
 * Works out the tightening of a clove hitch's second half over an old lead laid over the first. Each
 * curve is the new lead's followed by the old one's.
 *
 * @param before the tight first half
 */
export function tightenOver(ratio: number, before: Float64Array): Float64Array[] {
  const p = proportionsFor(ratio);
  const { zone, end, height, ceiling } = looseOver(p, before);
  return tighten({
    start: resample(zone.sample(601), 401),
    end,
    height,
    ceiling,
    coreRadius: ratio / 2,
    points: OVER_POINTS,
    frames: FRAMES,
    bend: 0.85,
    caught: {
      start: resample(laidOver(p, true, 0).sample(401), 201),
      end: oldLeadTo(p),
      points: CAUGHT_POINTS,
    },
  });
}
