import type { Vec3 } from '../curve/track.js';
import type { KnotEnd } from '../knot/finished.js';

const POINTS = 25;

/**
 * A smooth thread from one knot's exit to the next one's entry: a cubic with the ends' headings.
 * `bow` pushes its middle aside, so that a thread turning back goes round and not through.
 */
export function linkBetween(from: KnotEnd, to: KnotEnd, bow: Vec3 = [0, 0, 0]): Float64Array {
  const out = new Float64Array(POINTS * 3);
  const reach = Math.hypot(to.at[0] - from.at[0], to.at[1] - from.at[1], to.at[2] - from.at[2]);
  for (let i = 0; i < POINTS; i++) {
    const s = i / (POINTS - 1);
    const a = 2 * s ** 3 - 3 * s ** 2 + 1;
    const b = (s ** 3 - 2 * s ** 2 + s) * reach;
    const c = -2 * s ** 3 + 3 * s ** 2;
    const d = (s ** 3 - s ** 2) * reach;
    const bump = 16 * s ** 2 * (1 - s) ** 2;
    for (let k = 0; k < 3; k++) {
      out[i * 3 + k] =
        a * from.at[k]! +
        b * from.heading[k]! +
        c * to.at[k]! +
        d * to.heading[k]! +
        bump * bow[k]!;
    }
  }
  return out;
}
