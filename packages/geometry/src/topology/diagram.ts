import { meet } from './crossings.js';

/**
 * A link diagram. Every edge runs from one crossing to the next along a component; a component
 * without crossings has no edge and is counted as a free circle.
 */
export interface LinkDiagram {
  readonly components: number;
  readonly freeCircles: number;
  readonly crossings: readonly DiagramCrossing[];
}

export interface DiagramCrossing {
  /** +1 or -1, in the right-handed frame of the points. */
  readonly sign: 1 | -1;
  readonly underIn: number;
  readonly underOut: number;
  readonly overIn: number;
  readonly overOut: number;
  /** Components of the upper and the lower strand. */
  readonly over: number;
  readonly under: number;
}

interface Passage {
  readonly component: number;
  readonly at: number;
  readonly crossing: number;
  readonly upper: boolean;
}

/**
 * The diagram of closed polylines seen along a direction.
 *
 * @param components closed polylines (last point joined to the first), xyz triplets in a
 *   RIGHT-handed frame: x right, y up, z to the viewer. Points of this package's frame are turned
 *   with `upright`.
 * @param turn the view is turned by these angles (radians, about x and then y) before projection,
 *   so that no crossing falls on a vertex. The default is a small general turn.
 */
export function diagramOf(
  components: readonly ArrayLike<number>[],
  turn: readonly [number, number] = [0.0123, 0.0271],
): LinkDiagram {
  const views = components.map((points) => turned(points, turn));
  const signs: (1 | -1)[] = [];
  const passages: Passage[] = [];
  for (let a = 0; a < views.length; a++) {
    for (let b = 0; b <= a; b++) collect(views[a]!, views[b]!, a, b, signs, passages);
  }
  return numbered(components.length, signs, passages);
}

function collect(
  p: Float64Array,
  q: Float64Array,
  a: number,
  b: number,
  signs: (1 | -1)[],
  passages: Passage[],
): void {
  const n = p.length / 3;
  const m = q.length / 3;
  for (let i = 0; i < n; i++) {
    const i1 = (i + 1) % n;
    const limit = a === b ? i - 1 : m;
    for (let j = 0; j < limit; j++) {
      const j1 = (j + 1) % m;
      if (a === b && j1 === i) continue;
      if (a === b && i1 === j) continue;
      const ax = p[i * 3]!;
      const bx = p[i1 * 3]!;
      const cx = q[j * 3]!;
      const dx = q[j1 * 3]!;
      if (Math.max(cx, dx) < Math.min(ax, bx) || Math.min(cx, dx) > Math.max(ax, bx)) continue;
      const ay = p[i * 3 + 1]!;
      const by = p[i1 * 3 + 1]!;
      const cy = q[j * 3 + 1]!;
      const dy = q[j1 * 3 + 1]!;
      const found = meet(ax, ay, bx, by, cx, cy, dx, dy);
      if (!found) continue;
      const z =
        p[i * 3 + 2]! * (1 - found.s) +
        p[i1 * 3 + 2]! * found.s -
        q[j * 3 + 2]! * (1 - found.t) -
        q[j1 * 3 + 2]! * found.t;
      const cross = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx);
      const crossing = signs.length;
      signs.push(cross * z > 0 ? 1 : -1);
      passages.push({ component: a, at: i + found.s, crossing, upper: z > 0 });
      passages.push({ component: b, at: j + found.t, crossing, upper: z <= 0 });
    }
  }
}

function numbered(
  components: number,
  signs: readonly (1 | -1)[],
  passages: readonly Passage[],
): LinkDiagram {
  const found = signs.map((sign) => ({
    sign,
    underIn: -1,
    underOut: -1,
    overIn: -1,
    overOut: -1,
    over: -1,
    under: -1,
  }));
  let edge = 0;
  let freeCircles = 0;
  for (let c = 0; c < components; c++) {
    const along = passages.filter((p) => p.component === c).sort((p, q) => p.at - q.at);
    if (along.length === 0) freeCircles++;
    along.forEach((passage, k) => {
      const crossing = found[passage.crossing]!;
      const before = edge + ((k + along.length - 1) % along.length);
      if (passage.upper) {
        crossing.over = c;
        crossing.overIn = before;
        crossing.overOut = edge + k;
      } else {
        crossing.under = c;
        crossing.underIn = before;
        crossing.underOut = edge + k;
      }
    });
    edge += along.length;
  }
  return { components, freeCircles, crossings: found };
}

function turned(points: ArrayLike<number>, turn: readonly [number, number]): Float64Array {
  const [cx, sx] = [Math.cos(turn[0]), Math.sin(turn[0])];
  const [cy, sy] = [Math.cos(turn[1]), Math.sin(turn[1])];
  const out = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    const y = points[i + 1]! * cx - points[i + 2]! * sx;
    const z = points[i + 1]! * sx + points[i + 2]! * cx;
    out[i] = points[i]! * cy + z * sy;
    out[i + 1] = y;
    out[i + 2] = z * cy - points[i]! * sy;
  }
  return out;
}

/** Points of this package's frame (y down) in a right-handed one (y up). */
export function upright(points: ArrayLike<number>): Float64Array {
  const out = Float64Array.from(points);
  for (let i = 1; i < out.length; i += 3) out[i] = -out[i]!;
  return out;
}

/** Linking number of two components, by counting signed crossings; exact. */
export function linkingNumber(diagram: LinkDiagram, a = 0, b = 1): number {
  let sum = 0;
  for (const { over, under, sign } of diagram.crossings) {
    if ((over === a && under === b) || (over === b && under === a)) sum += sign;
  }
  return sum / 2;
}

/** Sum of the signs of all crossings. */
export const writhe = (diagram: LinkDiagram): number =>
  diagram.crossings.reduce((sum, crossing) => sum + crossing.sign, 0);
