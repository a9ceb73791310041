/**
 * A smooth curve through points (Catmull-Rom), given as xyz triplets with one guiding point more at
 * each end, which the curve does not reach: coordinate `c` between the inner points `i` and `i + 1`,
 * `r` (0 to 1) of the way.
 */
export function smoothAt(guided: ArrayLike<number>, i: number, r: number, c: number): number {
  const k = i * 3 + c;
  const a = guided[k]!;
  const b = guided[k + 3]!;
  const d = guided[k + 6]!;
  const e = guided[k + 9]!;
  const r2 = r * r;
  const r3 = r2 * r;
  return (
    0.5 * (2 * b + (d - a) * r + (2 * a - 5 * b + 4 * d - e) * r2 + (3 * (b - d) + e - a) * r3)
  );
}

/**
 * Points with guiding points added: the curve begins straight, and ends in the given unit heading.
 */
export function guidedBy(
  points: ArrayLike<number>,
  heading: readonly [number, number, number],
): Float64Array {
  const n = points.length;
  const out = new Float64Array(n + 6);
  out.set(points as Float64Array, 3);
  const step = Math.hypot(
    points[n - 3]! - points[n - 6]!,
    points[n - 2]! - points[n - 5]!,
    points[n - 1]! - points[n - 4]!,
  );
  for (let c = 0; c < 3; c++) {
    out[c] = 2 * points[c]! - points[3 + c]!;
    // The curve's direction at a point is that from the point before it to the point after.
    out[n + 3 + c] = points[n - 6 + c]! + 2 * step * heading[c]!;
  }
  return out;
}

/** Length of the smooth curve through guided points. */
export function smoothLength(guided: ArrayLike<number>): number {
  let coarse = 0;
  let fine = 0;
  for (let i = 0; i < guided.length / 3 - 3; i++) {
    const a = i * 3 + 3;
    const mx = smoothAt(guided, i, 0.5, 0);
    const my = smoothAt(guided, i, 0.5, 1);
    const mz = smoothAt(guided, i, 0.5, 2);
    coarse += distance(guided[a]!, guided[a + 1]!, guided[a + 2]!, guided, a + 3);
    fine += distance(mx, my, mz, guided, a) + distance(mx, my, mz, guided, a + 3);
  }
  // Richardson's extrapolation from chords of whole and of half length.
  return (4 * fine - coarse) / 3;
}

const distance = (x: number, y: number, z: number, points: ArrayLike<number>, at: number): number =>
  Math.sqrt((x - points[at]!) ** 2 + (y - points[at + 1]!) ** 2 + (z - points[at + 2]!) ** 2);
