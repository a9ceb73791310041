import { lengthOf, resample } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import { Rope } from './rope.js';

export interface TightenTask {
  /** The lead between the two places where it is held, in lead diameters. */
  readonly start: Float64Array;
  /** Where its outgoing end is pulled to. */
  readonly end: Vec3;
  /** Mean height along the held string at which the hitch is dressed; friction would hold it. */
  readonly height: number;
  /** Lower edge of the finished work above: the lead's centre-line stays below. */
  readonly ceiling: number;
  /** Radius of the held string. */
  readonly coreRadius: number;
  /** Points of each frame, and number of frames. */
  readonly points: number;
  readonly frames: number;
  /** The middle of the lead is kept this far to the right or further left. */
  readonly middle?: number;
}

/** Distance of beads, in diameters. */
const SPACING = 0.13;

/** Room left over so that curves interpolated between stored ones stay apart and gently bent. */
const SLACK = 0.025;
const BEND = 0.72;

const PULL = 0.5;

/** Travel between curves that are looked at, in diameters. */
const FINE_TRAVEL = 0.04;

/** Furthest slide in one step. */
const MOST_SLIDE = 0.004;

/** Pull, contact sweeps and steps of the settling passes, from coarse to fine. */
const PASSES = [
  { pull: PULL, sweeps: 4, steps: 4000 },
  { pull: 0.2, sweeps: 4, steps: 3000 },
  { pull: 0.06, sweeps: 6, steps: 2500 },
] as const;

/** The incoming end may turn, as a string does round the knot before; the outgoing one is held. */
const HELD: readonly [number, number] = [1, 2];

interface Placing {
  readonly end: Vec3;
  readonly height: number;
}

const smooth = (x: number): number => x * x * (3 - 2 * x);
const mixed = (a: number, b: number, f: number): number => a + (b - a) * f;
const mix = (a: Vec3, b: Vec3, f: number): Vec3 => [
  mixed(a[0], b[0], f),
  mixed(a[1], b[1], f),
  mixed(a[2], b[2], f),
];

/**
 * Tightens a hitch: it is slid along the held string to `height`, its free end going to `end`, and
 * then pulled tight.
 *
 * @returns curves from the first that differs from the start to the tight one
 */
export function tighten(task: TightenTask): Float64Array[] {
  const history = new History(resample(task.start, task.points));
  const heading = headingOfEnd(task.start);
  let rope = beaded(task.start, heading, task);
  const from = endOf(task.start);
  const low = rope.heightOnCore() ?? task.height;
  let dressing = false;
  const run = (steps: number, pull: number, sweeps: number, at: (k: number) => Placing) => {
    for (let k = 1; k <= steps; k++) {
      const { end, height } = at(k / steps);
      const here = endOf(rope.pointsOf(0));
      rope.moveEnd(0, end[0] - here[0], end[1] - here[1], end[2] - here[2]);
      dress(rope, height);
      if (task.middle !== undefined && dressing) rope.keepMiddle(task.middle);
      rope.step(pull, sweeps);
      if (k % 25 === 0) {
        history.keep(resample(rope.pointsOf(0), task.points), false);
        if (pull === PULL) rope = rebeaded(rope, heading, task);
      }
    }
  };
  const mid: Vec3 = [task.end[0], task.end[1] + low - task.height, task.end[2]];
  const near = low - (low - task.height) * 0.2;
  run(1500, PULL, 4, (f) => ({ end: mix(from, mid, smooth(f)), height: mixed(low, near, f) }));
  run(1500, PULL, 4, () => ({ end: mid, height: near }));
  dressing = true;
  run(3500, PULL, 4, (f) => ({
    end: mix(mid, task.end, smooth(f)),
    height: mixed(near, task.height, smooth(f)),
  }));
  for (const pass of PASSES) {
    run(pass.steps, pass.pull, pass.sweeps, () => ({ end: task.end, height: task.height }));
  }
  history.keep(resample(rope.pointsOf(0), task.points), true);
  return history.pick(task.frames);
}

/** Slides the hitch towards a height. */
function dress(rope: Rope, height: number): void {
  const now = rope.heightOnCore();
  if (now === undefined) return;
  rope.slide(Math.min(Math.max((height - now) * 0.05, -MOST_SLIDE), MOST_SLIDE));
}

function beaded(points: Float64Array, heading: Vec3, task: TightenTask): Rope {
  const count = Math.round(lengthOf(points) / SPACING) + 1;
  const beads = resample(points, count);
  // The last two beads hold the outgoing end's direction, which resampling would blur.
  const last = beads.length - 3;
  for (let c = 0; c < 3; c++) beads[last - 3 + c] = beads[last + c]! - heading[c]! * SPACING;
  return new Rope([{ points: beads, closed: false, diameter: 1 + SLACK, held: HELD }], {
    coreRadius: task.coreRadius + SLACK / 2,
    bend: BEND,
    ceiling: task.ceiling,
  });
}

/** The same rope with fewer beads when shortening has crowded them. */
function rebeaded(rope: Rope, heading: Vec3, task: TightenTask): Rope {
  const spacing = rope.lengthOf(0) / (rope.beads.count - 1);
  return spacing < SPACING * 0.9 ? beaded(rope.pointsOf(0), heading, task) : rope;
}

function headingOfEnd(points: ArrayLike<number>): Vec3 {
  const n = points.length;
  const v = [0, 1, 2].map((c) => points[n - 3 + c]! - points[n - 6 + c]!);
  const length = Math.hypot(v[0]!, v[1]!, v[2]!);
  return [v[0]! / length, v[1]! / length, v[2]! / length];
}

function endOf(points: ArrayLike<number>): Vec3 {
  const n = points.length;
  return [points[n - 3]!, points[n - 2]!, points[n - 1]!];
}

/** The curves a tightening goes through, and how far the fastest point has travelled by each. */
class History {
  private readonly curves: Float64Array[] = [];
  private readonly travelled: number[] = [];
  private last: Float64Array;

  constructor(start: Float64Array) {
    this.last = start;
  }

  keep(curve: Float64Array, always: boolean): void {
    const moved = furthest(this.last, curve);
    if (!always && moved < FINE_TRAVEL) return;
    this.curves.push(curve);
    this.travelled.push((this.travelled.at(-1) ?? 0) + moved);
    this.last = curve;
  }

  /** `count` of the curves at even travel, the last one included. */
  pick(count: number): Float64Array[] {
    const whole = this.travelled.at(-1)!;
    return Array.from({ length: count }, (_, k) => {
      const wanted = (whole * (k + 1)) / count;
      let best = 0;
      this.travelled.forEach((t, i) => {
        if (Math.abs(t - wanted) <= Math.abs(this.travelled[best]! - wanted)) best = i;
      });
      return this.curves[best]!;
    });
  }
}

function furthest(a: Float64Array, b: Float64Array): number {
  let most = 0;
  for (let i = 0; i < a.length; i += 3) {
    most = Math.max(most, Math.hypot(a[i]! - b[i]!, a[i + 1]! - b[i + 1]!, a[i + 2]! - b[i + 2]!));
  }
  return most;
}
