/** A centre-line to look for near threads on. */
export interface NearLine {
  /** x, y, z triplets in mm. */
  readonly points: Float32Array;
  readonly diameter: number;
}

/** Distance of the samples that are looked at, in diameters: shades change no faster. */
const SAMPLE = 0.45;
/** How far near is, in diameters between centre-lines; one is touching. */
const REACH = 2.1;

/** Samples of all lines in one row of arrays. */
interface Samples {
  readonly count: number;
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly z: Float32Array;
  /** Which line, which of its points, the length there and the length it stands for. */
  readonly line: Int32Array;
  readonly point: Int32Array;
  readonly at: Float32Array;
  readonly span: Float32Array;
}

/**
 * For each point of each line, a vector towards the threads close by, the longer the nearer and
 * the more of them: what the darkening between touching threads is made from.
 *
 * A line's own stretch within two and a half diameters along it does not count. Looked at in
 * samples about half a diameter apart, and drawn out between them.
 *
 * @param into one array for each line, as long as its points
 */
export function nearThreads(lines: readonly NearLine[], into: readonly Float32Array[]): void {
  let widest = 0;
  for (const line of lines) widest = Math.max(widest, line.diameter);
  for (const array of into) array.fill(0);
  if (widest === 0) return;
  const samples = sample(lines);
  const vectors = nearnessOf(samples, lines, widest);
  for (let s = 0; s < samples.count; s++) {
    const out = into[samples.line[s] as number] as Float32Array;
    const from = samples.point[s] as number;
    const goesOn = s + 1 < samples.count && samples.line[s + 1] === samples.line[s];
    const to = goesOn ? (samples.point[s + 1] as number) : from + 1;
    for (let p = from; p < to; p++) {
      const f = (p - from) / (to - from);
      for (let k = 0; k < 3; k++) {
        const here = vectors[3 * s + k] as number;
        const there = goesOn ? (vectors[3 * s + 3 + k] as number) : here;
        out[3 * p + k] = here + (there - here) * f;
      }
    }
  }
}

function sample(lines: readonly NearLine[]): Samples {
  let most = 0;
  for (const line of lines) most += line.points.length / 3;
  const samples = {
    count: 0,
    x: new Float32Array(most),
    y: new Float32Array(most),
    z: new Float32Array(most),
    line: new Int32Array(most),
    point: new Int32Array(most),
    at: new Float32Array(most),
    span: new Float32Array(most),
  };
  lines.forEach((line, which) => {
    const { points } = line;
    const last = points.length / 3 - 1;
    let length = 0;
    let taken = Number.NEGATIVE_INFINITY;
    for (let p = 0; p <= last; p++) {
      if (p > 0) length += stepTo(points, p);
      if (p < last && length - taken < SAMPLE * line.diameter) continue;
      const s = samples.count++;
      samples.x[s] = points[3 * p] as number;
      samples.y[s] = points[3 * p + 1] as number;
      samples.z[s] = points[3 * p + 2] as number;
      samples.line[s] = which;
      samples.point[s] = p;
      samples.at[s] = length;
      // Each stretch between two samples counts half for either.
      const stretch = p === 0 ? 0 : length - taken;
      samples.span[s] = stretch / 2;
      if (p > 0) samples.span[s - 1] = (samples.span[s - 1] as number) + stretch / 2;
      taken = length;
    }
  });
  return samples;
}

function nearnessOf(samples: Samples, lines: readonly NearLine[], widest: number): Float32Array {
  const { count, x, y, z, line, at, span } = samples;
  const reach = REACH * widest;
  const vectors = new Float32Array(3 * count);
  // Sorted down the page, so that only a strip of the samples is looked through for each.
  const order = Int32Array.from({ length: count }, (_, s) => s).sort(
    (a, b) => (y[a] as number) - (y[b] as number),
  );
  for (let i = 0; i < count; i++) {
    const a = order[i] as number;
    const own = 2.5 * (lines[line[a] as number] as NearLine).diameter;
    for (let j = i + 1; j < count; j++) {
      const b = order[j] as number;
      const dy = (y[b] as number) - (y[a] as number);
      if (dy >= reach) break;
      const dx = (x[b] as number) - (x[a] as number);
      if (dx >= reach || dx <= -reach) continue;
      if (line[a] === line[b] && Math.abs((at[b] as number) - (at[a] as number)) < own) continue;
      const dz = (z[b] as number) - (z[a] as number);
      const apart = Math.sqrt(dx * dx + dy * dy + dz * dz);
      if (apart >= reach || apart < 1e-6) continue;
      const fall = 1 - apart / reach;
      const pull = (2.6 * fall * fall) / widest / apart;
      const towardsB = pull * (span[b] as number);
      const towardsA = pull * (span[a] as number);
      vectors[3 * a] = (vectors[3 * a] as number) + dx * towardsB;
      vectors[3 * a + 1] = (vectors[3 * a + 1] as number) + dy * towardsB;
      vectors[3 * a + 2] = (vectors[3 * a + 2] as number) + dz * towardsB;
      vectors[3 * b] = (vectors[3 * b] as number) - dx * towardsA;
      vectors[3 * b + 1] = (vectors[3 * b + 1] as number) - dy * towardsA;
      vectors[3 * b + 2] = (vectors[3 * b + 2] as number) - dz * towardsA;
    }
  }
  return vectors;
}

function stepTo(points: Float32Array, p: number): number {
  return Math.hypot(
    (points[3 * p] as number) - (points[3 * p - 3] as number),
    (points[3 * p + 1] as number) - (points[3 * p - 2] as number),
    (points[3 * p + 2] as number) - (points[3 * p - 1] as number),
  );
}

/** Length along a line at each of its points, in mm. */
export function lengthsAlong(points: Float32Array): Float32Array {
  const count = points.length / 3;
  const lengths = new Float32Array(count);
  for (let i = 1; i < count; i++) lengths[i] = (lengths[i - 1] as number) + stepTo(points, i);
  return lengths;
}
