import { lengthOf, resample } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import { Rope, type RopeStrand } from './rope.js';

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
  /** Least radius of a bend, in diameters; a wider one where threads press on each other. */
  readonly bend?: number;
  /** Another thread that is drawn tight with it, caught in the hitch. */
  readonly caught?: Caught;
}

/** A thread held at both ends, its last end drawn to a new place. */
export interface Caught {
  readonly start: Float64Array;
  readonly end: Vec3;
  /** Points of each frame, which follow those of the hitch. */
  readonly points: number;
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

/** With a caught thread beside it the incoming end has no room to turn. */
const BOTH: readonly [number, number] = [2, 2];

/** A caught thread is not pulled as hard as the one that ties. */
const CAUGHT_PULL = 0.3;

/** Where neither end may turn, bends next to them take more rounds to open. */
const BOTH_END_ROUNDS = 25;

interface Placing {
  readonly end: Vec3;
  readonly height: number;
  /** How far the caught thread's end has been drawn, 0 to 1: first, out of the way of the lead's end. */
  readonly drawn: number;
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
  const history = new History(frame(task, task.start, task.caught?.start));
  let rope = beaded(task, task.start, task.caught?.start);
  const caughtFrom = task.caught && endOf(task.caught.start);
  const from = endOf(task.start);
  const low = rope.heightOnCore() ?? task.height;
  let dressing = false;
  const run = (steps: number, pull: number, sweeps: number, at: (k: number) => Placing) => {
    for (let k = 1; k <= steps; k++) {
      const { end, height, drawn } = at(k / steps);
      moveEnd(rope, 0, end);
      if (task.caught && caughtFrom) moveEnd(rope, 1, mix(caughtFrom, task.caught.end, drawn));
      dress(rope, height);
      if (task.middle !== undefined && dressing) rope.keepMiddle(task.middle);
      rope.step(pull, sweeps);
      if (k % 25 === 0) {
        history.keep(frameOf(rope, task), false);
        if (pull === PULL) rope = rebeaded(rope, task);
      }
    }
  };
  const mid: Vec3 = [task.end[0], task.end[1] + low - task.height, task.end[2]];
  const near = low - (low - task.height) * 0.2;
  run(1500, PULL, 4, (f) => ({
    end: mix(from, mid, smooth(f)),
    height: mixed(low, near, f),
    drawn: smooth(f),
  }));
  run(1500, PULL, 4, () => ({ end: mid, height: near, drawn: 1 }));
  dressing = true;
  run(3500, PULL, 4, (f) => ({
    end: mix(mid, task.end, smooth(f)),
    height: mixed(near, task.height, smooth(f)),
    drawn: 1,
  }));
  for (const pass of PASSES) {
    run(pass.steps, pass.pull, pass.sweeps, () => ({
      end: task.end,
      height: task.height,
      drawn: 1,
    }));
  }
  history.keep(frameOf(rope, task), true);
  return history.pick(task.frames);
}

/** Slides the hitch towards a height. */
function dress(rope: Rope, height: number): void {
  const now = rope.heightOnCore();
  if (now === undefined) return;
  rope.slide(Math.min(Math.max((height - now) * 0.05, -MOST_SLIDE), MOST_SLIDE));
}

function moveEnd(rope: Rope, strand: number, to: Vec3): void {
  const here = endOf(rope.pointsOf(strand));
  rope.moveEnd(strand, to[0] - here[0], to[1] - here[1], to[2] - here[2]);
}

const frameOf = (rope: Rope, task: TightenTask): Float64Array =>
  frame(task, rope.pointsOf(0), task.caught && rope.pointsOf(1));

function frame(task: TightenTask, lead: Float64Array, caught?: Float64Array): Float64Array {
  const curve = resample(lead, task.points);
  return task.caught && caught
    ? Float64Array.from([...curve, ...resample(caught, task.caught.points)])
    : curve;
}

function beaded(task: TightenTask, lead: Float64Array, caught?: Float64Array): Rope {
  const strand = { closed: false, diameter: 1 + SLACK };
  const strands: RopeStrand[] = [
    { ...strand, points: beads(lead, task.start), held: task.caught ? BOTH : HELD },
  ];
  if (task.caught && caught) {
    strands.push({ ...strand, points: beads(caught, task.caught.start), pull: CAUGHT_PULL });
  }
  return new Rope(strands, {
    coreRadius: task.coreRadius + SLACK / 2,
    bend: task.bend ?? BEND,
    ceiling: task.ceiling,
    ...(task.caught ? { endRounds: BOTH_END_ROUNDS } : {}),
  });
}

function beads(points: Float64Array, start: Float64Array): Float64Array {
  const heading = headingOfEnd(start);
  const out = resample(points, Math.round(lengthOf(points) / SPACING) + 1);
  // The last two beads hold the outgoing end's direction, which resampling would blur.
  const last = out.length - 3;
  for (let c = 0; c < 3; c++) out[last - 3 + c] = out[last + c]! - heading[c]! * SPACING;
  return out;
}

/** The same rope with fewer beads when shortening has crowded them. */
function rebeaded(rope: Rope, task: TightenTask): Rope {
  const crowded = (strand: number) => {
    const points = rope.pointsOf(strand);
    return lengthOf(points) / (points.length / 3 - 1) < SPACING * 0.9;
  };
  if (!crowded(0) && !(task.caught && crowded(1))) return rope;
  return beaded(task, rope.pointsOf(0), task.caught && rope.pointsOf(1));
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
