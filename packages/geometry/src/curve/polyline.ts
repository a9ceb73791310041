/** Polylines are xyz triplets in one typed array. */
export type Points = Float64Array;

/** Length of a polyline, in its own unit. */
export function lengthOf(points: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 3; i + 2 < points.length; i += 3) {
    sum += Math.hypot(
      points[i]! - points[i - 3]!,
      points[i + 1]! - points[i - 2]!,
      points[i + 2]! - points[i - 1]!,
    );
  }
  return sum;
}

/** The same polyline with `count` points at equal steps along it. */
export function resample(points: ArrayLike<number>, count: number): Points {
  const n = points.length / 3;
  const out = new Float64Array(count * 3);
  const step = lengthOf(points) / (count - 1);
  let segment = 0;
  let before = 0;
  let here = segmentLength(points, 0);
  for (let k = 0; k < count; k++) {
    const s = k * step;
    while (segment < n - 2 && s > before + here) {
      before += here;
      segment++;
      here = segmentLength(points, segment);
    }
    const f = here > 0 ? Math.min((s - before) / here, 1) : 0;
    for (let c = 0; c < 3; c++) {
      const a = points[segment * 3 + c]!;
      out[k * 3 + c] = a + (points[segment * 3 + 3 + c]! - a) * f;
    }
  }
  return out;
}

function segmentLength(points: ArrayLike<number>, i: number): number {
  const a = i * 3;
  return Math.hypot(
    points[a + 3]! - points[a]!,
    points[a + 4]! - points[a + 1]!,
    points[a + 5]! - points[a + 2]!,
  );
}

/** The mirror image, left for right. */
export function mirrored(points: ArrayLike<number>): Points {
  const out = Float64Array.from(points);
  for (let i = 0; i < out.length; i += 3) out[i] = -out[i]!;
  return out;
}

/** Every point multiplied by `scale` and moved. */
export function placed(points: ArrayLike<number>, scale: number, dx = 0, dy = 0, dz = 0): Points {
  const out = new Float64Array(points.length);
  for (let i = 0; i < out.length; i += 3) {
    out[i] = points[i]! * scale + dx;
    out[i + 1] = points[i + 1]! * scale + dy;
    out[i + 2] = points[i + 2]! * scale + dz;
  }
  return out;
}

/** Polylines joined end to end; a point repeated at a join is kept once. */
export function joined(...parts: readonly ArrayLike<number>[]): Points {
  const out: number[] = [];
  for (const part of parts) {
    const n = out.length;
    const repeats =
      n >= 3 &&
      part.length >= 3 &&
      Math.abs(out[n - 3]! - part[0]!) < 1e-9 &&
      Math.abs(out[n - 2]! - part[1]!) < 1e-9 &&
      Math.abs(out[n - 1]! - part[2]!) < 1e-9;
    for (let i = repeats ? 3 : 0; i < part.length; i++) out.push(part[i]!);
  }
  return Float64Array.from(out);
}

/** The same points in the opposite order. */
export function reversed(points: ArrayLike<number>): Points {
  const out = new Float64Array(points.length);
  for (let i = 0; i < out.length; i += 3) {
    const j = out.length - 3 - i;
    out[i] = points[j]!;
    out[i + 1] = points[j + 1]!;
    out[i + 2] = points[j + 2]!;
  }
  return out;
}
