/**
 * The least distance of segments p0-p1 and q0-q1, given by offsets into arrays of xyz triplets.
 * (The closed form with clamping of C. Ericson, Real-Time Collision Detection, 2005, section 5.1.9.)
 */
export function segmentDistance(
  p: ArrayLike<number>,
  i: number,
  q: ArrayLike<number>,
  j: number,
): number {
  const ux = p[i + 3]! - p[i]!;
  const uy = p[i + 4]! - p[i + 1]!;
  const uz = p[i + 5]! - p[i + 2]!;
  const vx = q[j + 3]! - q[j]!;
  const vy = q[j + 4]! - q[j + 1]!;
  const vz = q[j + 5]! - q[j + 2]!;
  const wx = p[i]! - q[j]!;
  const wy = p[i + 1]! - q[j + 1]!;
  const wz = p[i + 2]! - q[j + 2]!;
  const a = ux * ux + uy * uy + uz * uz;
  const b = ux * vx + uy * vy + uz * vz;
  const e = vx * vx + vy * vy + vz * vz;
  const c = ux * wx + uy * wy + uz * wz;
  const f = vx * wx + vy * wy + vz * wz;
  let s = 0;
  let t = 0;
  if (a <= 1e-18 && e > 1e-18) t = clamp(f / e);
  else if (a > 1e-18 && e <= 1e-18) s = clamp(-c / a);
  else if (a > 1e-18) {
    const det = a * e - b * b;
    if (det > 1e-18) s = clamp((b * f - c * e) / det);
    t = (b * s + f) / e;
    if (t < 0) {
      t = 0;
      s = clamp(-c / a);
    } else if (t > 1) {
      t = 1;
      s = clamp((b - c) / a);
    }
  }
  return Math.hypot(wx + ux * s - vx * t, wy + uy * s - vy * t, wz + uz * s - vz * t);
}

const clamp = (x: number): number => Math.min(Math.max(x, 0), 1);
