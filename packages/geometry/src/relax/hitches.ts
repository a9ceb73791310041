import { mirrored, resample } from '../curve/polyline.js';
import { looseFirst, looseSecond, type Pairing } from '../knot/loose.js';
import { proportionsFor } from '../knot/proportions.js';
import { FRAME_POINTS, FRAMES } from './grid.js';
import { tighten } from './tighten.js';

export interface TightenedHalves {
  readonly first: readonly Float64Array[];
  /** In the second half's own frame. */
  readonly second: readonly Float64Array[];
}

/** The middle of a cow hitch's bight is kept over the held string, as a maker dresses it. */
const BIGHT = -0.2;

/** Works out the tightening of both halves of a knot. Takes a few seconds. */
export function tightenHalves(pairing: Pairing, ratio: number): TightenedHalves {
  const p = proportionsFor(ratio);
  const common = { coreRadius: ratio / 2, points: FRAME_POINTS, frames: FRAMES };
  const a = looseFirst(pairing, p);
  const first = tighten({
    ...common,
    start: beads(a.zone.sample(401)),
    end: a.end,
    height: a.height,
    ceiling: a.ceiling,
  });
  const tight = first[first.length - 1]!;
  const before = pairing === 'same' ? tight : mirrored(tight);
  const b = looseSecond(pairing, p, before);
  const second = tighten({
    ...common,
    start: beads(b.zone.sample(401)),
    end: b.end,
    height: b.height,
    ceiling: b.ceiling,
    ...(pairing === 'opposite' ? { middle: BIGHT } : {}),
  });
  return { first, second };
}

const beads = (points: Float64Array): Float64Array => resample(points, 301);
