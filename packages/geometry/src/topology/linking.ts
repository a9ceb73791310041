type P = readonly [number, number, number];

const minus = (a: P, b: P): P => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: P, b: P): P => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: P, b: P): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

function normal(a: P, b: P): P | undefined {
  const n = cross(a, b);
  const length = Math.hypot(n[0], n[1], n[2]);
  return length > 1e-14 ? [n[0] / length, n[1] / length, n[2] / length] : undefined;
}

const arcsine = (x: number): number => Math.asin(Math.min(Math.max(x, -1), 1));

/**
 * The Gauss linking integral of two closed polylines. Each pair of segments is integrated exactly,
 * as the solid angle of the directions in which they are seen to cross (K. Klenin and J. Langowski,
 * "Computation of writhe in modeling of supercoiled DNA", Biopolymers 54 (2000) 307-317, method 1a).
 * The result of disjoint curves is a whole number up to rounding.
 *
 * @param a xyz triplets in a right-handed frame, closed from the last point to the first
 */
export function gaussLinking(a: ArrayLike<number>, b: ArrayLike<number>): number {
  const at = (points: ArrayLike<number>, i: number): P => {
    const k = (i % (points.length / 3)) * 3;
    return [points[k]!, points[k + 1]!, points[k + 2]!];
  };
  let sum = 0;
  for (let i = 0; i < a.length / 3; i++) {
    for (let j = 0; j < b.length / 3; j++) {
      sum += solidAngle(at(a, i), at(a, i + 1), at(b, j), at(b, j + 1));
    }
  }
  return sum / (4 * Math.PI);
}

function solidAngle(p1: P, p2: P, p3: P, p4: P): number {
  const r13 = minus(p3, p1);
  const r14 = minus(p4, p1);
  const r23 = minus(p3, p2);
  const r24 = minus(p4, p2);
  const n1 = normal(r13, r14);
  const n2 = normal(r14, r24);
  const n3 = normal(r24, r23);
  const n4 = normal(r23, r13);
  // Segments in one plane are seen to cross from no direction.
  if (!n1 || !n2 || !n3 || !n4) return 0;
  const angle =
    arcsine(dot(n1, n2)) + arcsine(dot(n2, n3)) + arcsine(dot(n3, n4)) + arcsine(dot(n4, n1));
  return angle * Math.sign(dot(cross(minus(p4, p3), minus(p2, p1)), r13));
}
