import { lengthOf, resample } from '../curve/polyline.js';
import { Rope } from './rope.js';

/** A thread that keeps still while another settles. */
export interface Obstacle {
  readonly points: ArrayLike<number>;
  readonly diameter: number;
}

export interface SettleTask {
  /** The whole thread; only points from `from` to `to` (inclusive) may move. */
  readonly points: Float64Array;
  readonly from: number;
  readonly to: number;
  readonly diameter: number;
  readonly obstacles: readonly Obstacle[];
}

const SPACING = 0.13;
const SLACK = 1.015;
const BEND = 0.58;
const STEPS = [
  { count: 40, pull: 0.05 },
  { count: 20, pull: 0.01 },
] as const;

/** Parts of the thread nearer to the moving part than this, along it, are not obstacles to it. */
const OWN = 1.9;

/**
 * Lets a short part of a thread find its place: free of kinks and of whatever it overlaps, its ends
 * and all other threads kept still. For joints, where a curve was only sketched.
 */
export function settled(task: SettleTask): Float64Array {
  const { points, from, to, diameter: d } = task;
  const part = points.subarray(from * 3, (to + 1) * 3);
  const count = Math.max(Math.round(lengthOf(part) / (SPACING * d)), 8) + 1;
  const box = boxOf(part, 1.7 * d);
  const strands = [
    { points: scaled(resample(part, count), 1 / d), closed: false, diameter: SLACK },
    ...own(task).flatMap((p) => still(p, d, d, box)),
    ...task.obstacles.flatMap((o) => still(o.points, o.diameter, d, box)),
  ];
  const rope = new Rope(strands, { bend: BEND });
  for (const { count: steps, pull } of STEPS) for (let k = 0; k < steps; k++) rope.step(pull, 3);
  const moved = scaled(rope.pointsOf(0), d);
  const out = new Float64Array(points.length - part.length + moved.length);
  out.set(points.subarray(0, from * 3));
  out.set(moved, from * 3);
  out.set(points.subarray((to + 1) * 3), from * 3 + moved.length);
  return out;
}

function own({ points, from, to, diameter }: SettleTask): Float64Array[] {
  let before = from;
  for (let s = 0; before > 0 && s < OWN * diameter; before--) s += step(points, before - 1);
  let after = to;
  const last = points.length / 3 - 1;
  for (let s = 0; after < last && s < OWN * diameter; after++) s += step(points, after);
  return [points.subarray(0, (before + 1) * 3), points.subarray(after * 3)];
}

const step = (p: ArrayLike<number>, i: number): number =>
  Math.hypot(
    p[i * 3 + 3]! - p[i * 3]!,
    p[i * 3 + 4]! - p[i * 3 + 1]!,
    p[i * 3 + 5]! - p[i * 3 + 2]!,
  );

type Box = readonly [number, number, number, number, number, number];

function boxOf(points: ArrayLike<number>, margin: number): Box {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < points.length; i++) {
    low[i % 3] = Math.min(low[i % 3]!, points[i]! - margin);
    high[i % 3] = Math.max(high[i % 3]!, points[i]! + margin);
  }
  return [low[0]!, low[1]!, low[2]!, high[0]!, high[1]!, high[2]!];
}

/** The stretches of a thread within a box, as beads that do not move. */
function still(points: ArrayLike<number>, diameter: number, unit: number, box: Box) {
  const beads: number[] = [];
  const grow = diameter / 2;
  for (let i = 0; i + 5 < points.length; i += 3) {
    const inside = [0, 1, 2].every((c) => {
      const a = points[i + c]!;
      const b = points[i + 3 + c]!;
      return Math.max(a, b) > box[c]! - grow && Math.min(a, b) < box[c + 3]! + grow;
    });
    if (!inside) continue;
    const parts = Math.max(1, Math.ceil(step(points, i / 3) / (SPACING * unit)));
    for (let k = 0; k < parts; k++) {
      const p = [0, 1, 2].map((c) => {
        const a = points[i + c]!;
        return a + ((points[i + 3 + c]! - a) * k) / parts;
      });
      if (p.every((v, c) => v > box[c]! - grow && v < box[c + 3]! + grow)) beads.push(...p);
    }
  }
  if (beads.length === 0) return [];
  const strand = { points: beads.map((v) => v / unit), closed: false, held: 'all' as const };
  return [{ ...strand, diameter: diameter / unit }];
}

const scaled = (points: ArrayLike<number>, by: number): Float64Array =>
  Float64Array.from(points, (v) => v * by);
