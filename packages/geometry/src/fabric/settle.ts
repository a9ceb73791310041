/** A path's own parts nearer along it than this, in tying diameters, need not keep apart. */
const OWN_BEND = 1.7;

/** Distance of a path's beads, in tying diameters. */
export const BEAD_STEP = 0.25;

const ROUNDS = 6;
const PASSES = 20;

/** Share by which a bead moves to where the thread bends evenly, in a pass. */
const EVEN = 0.4;

/** Passes for which a bead's list of what is near it holds, and how much further away that may be. */
const LISTED = 15;
const LIST_REACH = 0.8;

const LAST_ROUNDS = 3;
const LAST_PASSES = 15;
const LAST_EVEN = 0.05;

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
  let lists: Lists = { others: [], own: [] };
  for (let round = 0; round < ROUNDS; round++) {
    // The pull eases off, so that what touches is parted in the end.
    const pull = 0.3 * (1 - round / ROUNDS) + 0.02;
    for (let pass = 0; pass < PASSES; pass++) {
      if (pass % LISTED === 0) lists = listed(beads, near);
      draw(beads, pull, EVEN);
      part(beads, near, lists);
    }
    if (round < ROUNDS - 1) beads = spread(beads);
  }
  // What still presses is parted last of all, with no more bending than keeps the thread smooth.
  for (let round = 0; round < LAST_ROUNDS; round++) {
    beads = spread(beads);
    for (let pass = 0; pass < LAST_PASSES; pass++) {
      if (pass % LISTED === 0) lists = listed(beads, near);
      draw(beads, 0, LAST_EVEN);
      part(beads, near, lists);
    }
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
function draw(p: Float64Array, pull: number, evening: number): void {
  const before = Float64Array.from(p);
  for (let i = 6; i < p.length - 6; i += 3) {
    for (let c = 0; c < 3; c++) {
      const at = i + c;
      const middle = (before[at - 3]! + before[at + 3]!) / 2 - before[at]!;
      const even =
        (4 * (before[at - 3]! + before[at + 3]!) - before[at - 6]! - before[at + 6]!) / 6 -
        before[at]!;
      p[at] = before[at]! + pull * middle + evening * even;
    }
  }
}

/** For each bead what it may come to touch in the next passes: places in `near` and in the path. */
interface Lists {
  readonly others: readonly (readonly number[])[];
  readonly own: readonly (readonly number[])[];
}

function listed(p: Float64Array, near: Float64Array): Lists {
  const others: number[][] = [];
  const own: number[][] = [];
  for (let i = 0; i < p.length; i += 3) {
    const list: number[] = [];
    const mine: number[] = [];
    for (let k = 0; k < near.length; k += 4) {
      const reach = near[k + 3]! + LIST_REACH;
      const dx = p[i]! - near[k]!;
      const dy = p[i + 1]! - near[k + 1]!;
      const dz = p[i + 2]! - near[k + 2]!;
      if (dx * dx + dy * dy + dz * dz < reach * reach) list.push(k);
    }
    others.push(list);
    for (let j = 0; j < p.length; j += 3) {
      if (Math.abs(j - i) / 3 > OWN_BEND / BEAD_STEP && gap(p, i, j) < 1 + LIST_REACH) mine.push(j);
    }
    own.push(mine);
  }
  return { others, own };
}

function part(p: Float64Array, near: Float64Array, lists: Lists): void {
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
    for (const k of lists.others[i / 3]!) {
      touch(near[k]!, near[k + 1]!, near[k + 2]!, near[k + 3]!);
    }
    for (const j of lists.own[i / 3]!) touch(p[j]!, p[j + 1]!, p[j + 2]!, 1);
    const length = Math.hypot(x, y, z);
    if (length === 0) continue;
    const move = (0.6 * most) / length;
    // Beads pushed along the thread would leave a hole in it.
    const tx = p[i + 3]! - p[i - 3]!;
    const ty = p[i + 4]! - p[i - 2]!;
    const tz = p[i + 5]! - p[i - 1]!;
    const square = tx * tx + ty * ty + tz * tz;
    const along = square > 0 ? (x * tx + y * ty + z * tz) / square : 0;
    x -= along * tx;
    y -= along * ty;
    z -= along * tz;
    p[i] = p[i]! + x * move;
    p[i + 1] = p[i + 1]! + y * move;
    p[i + 2] = p[i + 2]! + z * move;
  }
}
