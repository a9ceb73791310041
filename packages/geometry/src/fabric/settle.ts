/** A path's own parts nearer along it than this, in tying diameters, need not keep apart. */
const OWN_BEND = 1.7;

/** Distance of a path's beads, in tying diameters. */
export const BEAD_STEP = 0.25;

const ROUNDS = 8;
const PASSES = 30;

/** Beads to keep away from: x, y, z and the distance to keep, one after another. */
export type Obstacles = readonly number[];

/**
 * Lets a thread between two held ends find its place: it pulls itself short and straight as far as
 * the strands beside it, which stay where they are, let it. Position-based: each pass moves beads
 * towards their neighbours' middle and out of what they touch.
 *
 * @param path xyz triplets; the first two and the last two points stay, and give the directions
 * @returns points at about equal steps, the first and last two as given
 */
export function settle(path: readonly number[], obstacles: Obstacles): Float64Array {
  const near = within(path, obstacles);
  let beads = spread(Float64Array.from(path));
  for (let round = 0; round < ROUNDS; round++) {
    // The pull eases off, so that what touches is parted in the end.
    const pull = 0.3 * (1 - round / ROUNDS) + 0.02;
    for (let pass = 0; pass < PASSES; pass++) {
      draw(beads, pull);
      part(beads, near);
    }
    if (round < ROUNDS - 1) beads = spread(beads);
  }
  return beads;
}

function within(path: readonly number[], obstacles: Obstacles): Float64Array {
  const low = [0, 1, 2].map((c) => Math.min(...path.filter((_, i) => i % 3 === c)) - 2);
  const high = [0, 1, 2].map((c) => Math.max(...path.filter((_, i) => i % 3 === c)) + 2);
  const near: number[] = [];
  for (let i = 0; i < obstacles.length; i += 4) {
    const inside = [0, 1, 2].every(
      (c) => obstacles[i + c]! > low[c]! && obstacles[i + c]! < high[c]!,
    );
    if (inside) for (let c = 0; c < 4; c++) near.push(obstacles[i + c]!);
  }
  return Float64Array.from(near);
}

/** Equal steps between the second and the last but one point. */
function spread(points: Float64Array): Float64Array {
  const last = points.length - 6;
  let length = 0;
  for (let i = 3; i < last; i += 3) length += gap(points, i, i + 3);
  const steps = Math.max(4, Math.round(length / BEAD_STEP));
  const out = new Float64Array((steps + 3) * 3);
  out.set(points.subarray(0, 6));
  let at = 3;
  let passed = 0;
  for (let k = 1; k < steps; k++) {
    const target = (length * k) / steps;
    let here = gap(points, at, at + 3);
    while (passed + here < target && at + 3 < last) {
      passed += here;
      at += 3;
      here = gap(points, at, at + 3);
    }
    const f = here > 0 ? Math.min((target - passed) / here, 1) : 0;
    for (let c = 0; c < 3; c++) {
      const a = points[at + c]!;
      out[(k + 1) * 3 + c] = a + (points[at + 3 + c]! - a) * f;
    }
  }
  out.set(points.subarray(points.length - 6), (steps + 1) * 3);
  return out;
}

const gap = (p: Float64Array, i: number, j: number): number =>
  Math.hypot(p[j]! - p[i]!, p[j + 1]! - p[i + 1]!, p[j + 2]! - p[i + 2]!);

/** Towards the neighbours' middle, and towards an even bend. */
function draw(p: Float64Array, pull: number): void {
  const before = Float64Array.from(p);
  for (let i = 6; i < p.length - 6; i += 3) {
    for (let c = 0; c < 3; c++) {
      const at = i + c;
      const middle = (before[at - 3]! + before[at + 3]!) / 2 - before[at]!;
      const even =
        (4 * (before[at - 3]! + before[at + 3]!) - before[at - 6]! - before[at + 6]!) / 6 -
        before[at]!;
      p[at] = before[at]! + pull * middle + 0.4 * even;
    }
  }
}

function part(p: Float64Array, near: Float64Array): void {
  const own = OWN_BEND / BEAD_STEP;
  for (let i = 6; i < p.length - 6; i += 3) {
    let x = 0;
    let y = 0;
    let z = 0;
    let most = 0;
    const touch = (ox: number, oy: number, oz: number, keep: number) => {
      const dx = p[i]! - ox;
      const dy = p[i + 1]! - oy;
      const dz = p[i + 2]! - oz;
      const square = dx * dx + dy * dy + dz * dz;
      if (square >= keep * keep || square === 0) return;
      const distance = Math.sqrt(square);
      const depth = keep - distance;
      const weight = depth / distance;
      x += dx * weight;
      y += dy * weight;
      z += dz * weight;
      most = Math.max(most, depth);
    };
    for (let k = 0; k < near.length; k += 4) {
      touch(near[k]!, near[k + 1]!, near[k + 2]!, near[k + 3]!);
    }
    for (let j = 0; j < p.length; j += 3) {
      if (Math.abs(j - i) / 3 > own) touch(p[j]!, p[j + 1]!, p[j + 2]!, 1);
    }
    const length = Math.hypot(x, y, z);
    if (length === 0) continue;
    const move = (0.6 * most) / length;
    p[i] = p[i]! + x * move;
    p[i + 1] = p[i + 1]! + y * move;
    p[i + 2] = p[i + 2]! + z * move;
  }
}
