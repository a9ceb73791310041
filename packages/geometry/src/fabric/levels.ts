/** Levels of detail: 0 for close views to 3 for a piece seen whole. */
export type Level = 0 | 1 | 2 | 3;

export const LEVELS: readonly Level[] = [0, 1, 2, 3];

/** How far a curve may be from the full one at each level, in tying diameters. */
export const LEVEL_TOLERANCE: readonly number[] = [0.012, 0.04, 0.13, 0.45];

/** The least size of a knot on screen, in pixels, for which levels 0, 1 and 2 are worth drawing. */
const PIXELS = [44, 20, 9] as const;

/**
 * The level of detail for a view in which a knot is so many pixels wide. Curves then differ from
 * the full ones by less than half a pixel, except at the coarsest level.
 */
export function levelFor(pixelsPerKnot: number): Level {
  if (pixelsPerKnot >= PIXELS[0]) return 0;
  if (pixelsPerKnot >= PIXELS[1]) return 1;
  return pixelsPerKnot >= PIXELS[2] ? 2 : 3;
}

/**
 * A curve with fewer points, nowhere further from the given one than `tolerance` (Douglas and
 * Peucker 1973). The ends stay.
 *
 * @param points xyz triplets
 * @param from,to first and last point of the part that is wanted
 */
export function thinned(
  points: Float64Array,
  tolerance: number,
  from = 0,
  to = points.length / 3 - 1,
): Float64Array {
  const keep = new Uint8Array(to - from + 1);
  keep[0] = 1;
  keep[to - from] = 1;
  const open = [from, to];
  while (open.length > 0) {
    const end = open.pop()!;
    const start = open.pop()!;
    let most = tolerance;
    let furthest = -1;
    for (let i = start + 1; i < end; i++) {
      const distance = offLine(points, i * 3, start * 3, end * 3);
      if (distance > most) {
        most = distance;
        furthest = i;
      }
    }
    if (furthest < 0) continue;
    keep[furthest - from] = 1;
    open.push(start, furthest, furthest, end);
  }
  const out: number[] = [];
  for (let i = from; i <= to; i++) {
    if (keep[i - from]) out.push(points[i * 3]!, points[i * 3 + 1]!, points[i * 3 + 2]!);
  }
  return Float64Array.from(out);
}

/** Distance of a point from a straight piece. */
function offLine(p: Float64Array, i: number, a: number, b: number): number {
  const ux = p[b]! - p[a]!;
  const uy = p[b + 1]! - p[a + 1]!;
  const uz = p[b + 2]! - p[a + 2]!;
  const wx = p[i]! - p[a]!;
  const wy = p[i + 1]! - p[a + 1]!;
  const wz = p[i + 2]! - p[a + 2]!;
  const square = ux * ux + uy * uy + uz * uz;
  const f = square > 0 ? Math.min(Math.max((wx * ux + wy * uy + wz * uz) / square, 0), 1) : 0;
  return Math.hypot(wx - ux * f, wy - uy * f, wz - uz * f);
}
