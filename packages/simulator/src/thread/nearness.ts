/** A centre-line to look for near threads on. */
export interface NearLine {
  /** x, y, z triplets in mm. */
  readonly points: Float32Array;
  readonly diameter: number;
}

/**
 * For each point of each line, a vector towards the threads close by, the longer the nearer and
 * the more of them: what the darkening between touching threads is made from.
 *
 * A line's own stretch within two and a half diameters along it does not count.
 *
 * @param into one array for each line, as long as its points
 */
export function nearThreads(lines: readonly NearLine[], into: readonly Float32Array[]): void {
  let widest = 0;
  for (const line of lines) widest = Math.max(widest, line.diameter);
  if (widest === 0) return;
  const reach = 2.1 * widest;
  const grid = new Map<number, number[]>();
  const cell = (x: number, y: number, z: number): number =>
    (Math.floor(x / reach) * 73_856_093) ^
    (Math.floor(y / reach) * 19_349_663) ^
    (Math.floor(z / reach) * 83_492_791);
  const lengths = lines.map((line) => lengthsAlong(line.points));
  lines.forEach((line, which) => {
    for (let i = 0; i < line.points.length / 3; i++) {
      const key = cell(
        line.points[3 * i] as number,
        line.points[3 * i + 1] as number,
        line.points[3 * i + 2] as number,
      );
      const list = grid.get(key);
      if (list === undefined) grid.set(key, [which, i]);
      else list.push(which, i);
    }
  });
  const keys = new Set<number>();
  lines.forEach((line, which) => {
    const out = into[which] as Float32Array;
    const own = lengths[which] as Float32Array;
    out.fill(0);
    for (let i = 0; i < line.points.length / 3; i++) {
      const x = line.points[3 * i] as number;
      const y = line.points[3 * i + 1] as number;
      const z = line.points[3 * i + 2] as number;
      keys.clear();
      for (let a = -1; a <= 1; a++)
        for (let b = -1; b <= 1; b++)
          for (let c = -1; c <= 1; c++) keys.add(cell(x + a * reach, y + b * reach, z + c * reach));
      for (const key of keys) {
        const list = grid.get(key);
        if (list === undefined) continue;
        for (let k = 0; k < list.length; k += 2) {
          const other = list[k] as number;
          const j = list[k + 1] as number;
          const theirs = lengths[other] as Float32Array;
          if (
            other === which &&
            Math.abs((own[j] as number) - (own[i] as number)) < 2.5 * line.diameter
          ) {
            continue;
          }
          const points = (lines[other] as NearLine).points;
          const dx = (points[3 * j] as number) - x;
          const dy = (points[3 * j + 1] as number) - y;
          const dz = (points[3 * j + 2] as number) - z;
          const apart = Math.sqrt(dx * dx + dy * dy + dz * dz);
          if (apart >= reach || apart < 1e-6) continue;
          const next = theirs[Math.min(theirs.length - 1, j + 1)] as number;
          const last = theirs[Math.max(0, j - 1)] as number;
          const fall = 1 - apart / reach;
          // Weighed by the length the point stands for, so that density of points doesn't count.
          const weight = (2.6 * fall * fall * (next - last)) / (2 * widest) / apart;
          out[3 * i] = (out[3 * i] as number) + dx * weight;
          out[3 * i + 1] = (out[3 * i + 1] as number) + dy * weight;
          out[3 * i + 2] = (out[3 * i + 2] as number) + dz * weight;
        }
      }
    }
  });
}

/** Length along a line at each of its points, in mm. */
export function lengthsAlong(points: Float32Array): Float32Array {
  const count = points.length / 3;
  const lengths = new Float32Array(count);
  for (let i = 1; i < count; i++) {
    lengths[i] =
      (lengths[i - 1] as number) +
      Math.hypot(
        (points[3 * i] as number) - (points[3 * i - 3] as number),
        (points[3 * i + 1] as number) - (points[3 * i - 2] as number),
        (points[3 * i + 2] as number) - (points[3 * i - 1] as number),
      );
  }
  return lengths;
}
