import { short } from './markup.js';

export type Point = readonly [x: number, y: number];
/** A cubic Bézier curve. */
export type Curve = readonly [Point, Point, Point, Point];
/** Curves that follow each other, as one stretch of thread lies. */
export type Stretch = readonly Curve[];

export function pathOf(stretches: readonly Stretch[]): string {
  let path = '';
  for (const stretch of stretches) {
    const start = stretch[0]?.[0];
    if (start === undefined) continue;
    path += `M${pair(start)}`;
    for (const [, a, b, end] of stretch) path += `C${pair(a)} ${pair(b)} ${pair(end)}`;
  }
  return path;
}

function pair([x, y]: Point): string {
  return `${short(x)} ${short(y)}`;
}

/** The lines between the plies of a twisted thread: slanting, bowed over its roundness. */
export function plyLines(
  stretches: readonly Stretch[],
  thickness: number,
  perCurve: number,
): string {
  const half = thickness * 0.44;
  const lean = thickness * 0.26;
  let path = '';
  for (const curve of stretches.flat()) {
    for (let i = 0; i < perCurve; i++) {
      const { x, y, angle } = along(curve, (i + 0.5) / perCurve);
      const ux = Math.cos(angle);
      const uy = Math.sin(angle);
      const point = (across: number, forth: number): Point => [
        x - uy * across + ux * forth,
        y + ux * across + uy * forth,
      ];
      path += `M${pair(point(-half, -lean))}Q${pair(point(-half * 0.45, lean * 0.15))} ${pair(point(half, lean))}`;
    }
  }
  return path;
}

function along([a, b, c, d]: Curve, t: number): { x: number; y: number; angle: number } {
  const u = 1 - t;
  const at = (k: 0 | 1): number =>
    u ** 3 * a[k] + 3 * u * u * t * b[k] + 3 * u * t * t * c[k] + t ** 3 * d[k];
  const slope = (k: 0 | 1): number =>
    3 * u * u * (b[k] - a[k]) + 6 * u * t * (c[k] - b[k]) + 3 * t * t * (d[k] - c[k]);
  return { x: at(0), y: at(1), angle: Math.atan2(slope(1), slope(0)) };
}
