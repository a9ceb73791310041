export interface Bend {
  /** Radius of the circle through three neighbouring points. */
  readonly radius: number;
  readonly point: number;
}

/** The sharpest bend of a polyline: the least circle through three points following each other. */
export function sharpestBend(points: ArrayLike<number>): Bend {
  let least: Bend = { radius: Infinity, point: -1 };
  for (let i = 1; i + 1 < points.length / 3; i++) {
    const radius = circleThrough(points, i);
    if (radius < least.radius) least = { radius, point: i };
  }
  return least;
}

function circleThrough(points: ArrayLike<number>, i: number): number {
  const side = (p: number, q: number) =>
    Math.hypot(
      points[p * 3]! - points[q * 3]!,
      points[p * 3 + 1]! - points[q * 3 + 1]!,
      points[p * 3 + 2]! - points[q * 3 + 2]!,
    );
  const a = side(i - 1, i);
  const b = side(i, i + 1);
  const c = side(i - 1, i + 1);
  const s = (a + b + c) / 2;
  const area = Math.sqrt(Math.max(s * (s - a) * (s - b) * (s - c), 0));
  return area > 0 ? (a * b * c) / (4 * area) : Infinity;
}

/** The furthest any point goes between two poses with the same number of points. */
export function furthestStep(before: ArrayLike<number>, after: ArrayLike<number>): number {
  let most = 0;
  for (let i = 0; i + 2 < before.length; i += 3) {
    most = Math.max(
      most,
      Math.hypot(
        after[i]! - before[i]!,
        after[i + 1]! - before[i + 1]!,
        after[i + 2]! - before[i + 2]!,
      ),
    );
  }
  return most;
}
