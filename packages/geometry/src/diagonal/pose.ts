import {
  type DiagonalPattern,
  type HalfWay,
  halvesOf,
  KNOT_KINDS,
  type KnotKind,
} from '@halfhitch/core';
import { spliced } from '../curve/blend.js';
import { joined, lengthOf, mirrored, placed, resample } from '../curve/polyline.js';
import type { Vec3 } from '../curve/track.js';
import { familyFor } from '../knot/family.js';
import { momentOf, workingLength } from '../knot/motion.js';
import { GeometryError, resolveOptions } from '../knot/options.js';
import { inMillimetres } from '../knot/pose.js';
import { type KnotStage, STAGE_ENDS } from '../knot/stages.js';
import { ofLength } from '../row/joint.js';
import { latticeWork } from './knots.js';
import { leaned } from './leaning.js';
import { KnotSequence } from './sequence.js';
import { latticeKnots } from './shapes.js';
import { spacing } from './spacing.js';
import { HANGING, wayBetween, wayIn, wayOut } from './ways.js';

export interface DiagonalSceneOptions {
  /** Diameter of the strings, mm. Default 1. */
  readonly diameter?: number;
  /** Slots shown on each side of the knot being tied, at least. Default 5. */
  readonly beside?: number;
  /** Rows shown above the one in work. Default 4. */
  readonly above?: number;
}

/** A diagonal pattern of which one knot after the other can be posed. */
export interface DiagonalScene {
  readonly pattern: DiagonalPattern;
  /** How many knots it has. */
  readonly knots: number;
  /** Distance of neighbouring slots and of rows, mm. */
  readonly slotPitch: number;
  readonly rowHeight: number;
  /** @internal */
  readonly sequence: KnotSequence;
  /** @internal */
  readonly diameter: number;
  /** @internal */
  readonly beside: number;
  /** @internal */
  readonly above: number;
}

/** A string at one moment. Points are xyz triplets in mm. */
export interface DiagonalStrandPose {
  readonly id: string;
  /** `#rrggbb` */
  readonly colour: string;
  /** Its part in the knot being tied, or none. */
  readonly role: 'tying' | 'held' | 'other';
  readonly points: Float64Array;
  readonly radius: number;
  /** Points that the current move moves: first and last index, inclusive. */
  readonly active?: { readonly from: number; readonly to: number };
}

export interface DiagonalPose {
  /** In the order of knotting, from 0. */
  readonly knot: number;
  readonly row: number;
  readonly place: number;
  readonly t: number;
  readonly kind: KnotKind;
  readonly halfWay: HalfWay;
  readonly stage: KnotStage;
  readonly stageProgress: number;
  readonly strands: readonly DiagonalStrandPose[];
  /** Middle of the knot being tied, for a camera. Mm. */
  readonly focus: Vec3;
}

/** @throws GeometryError when the diameter is outside its limits */
export function diagonalScene(
  pattern: DiagonalPattern,
  options: DiagonalSceneOptions = {},
): DiagonalScene {
  const { diameter } = resolveOptions(
    options.diameter === undefined ? {} : { tyingDiameter: options.diameter },
  );
  const sequence = new KnotSequence(latticeWork(pattern));
  const { slot, row } = spacing();
  return {
    pattern,
    knots: sequence.cells.length,
    slotPitch: slot * diameter,
    rowHeight: row * diameter,
    sequence,
    diameter,
    beside: Math.max(2, Math.trunc(options.beside ?? 5)),
    above: Math.max(1, Math.trunc(options.above ?? 4)),
  };
}

/** Share of the first half in which the two strings are brought together. */
const TOGETHER = 0.12;

/** Share of the second half in which the knot is settled between its neighbours. */
const SETTLING = 0.12;

/** Points of the tying string from its knot's start on. */
const POINTS = 200;

/** More of the free end's way than its length, in diameters, to be cut to measure. */
const BEYOND = 8;

/** Free length of a tying string when its knot is done, and of others below the row, in diameters. */
const TAIL = 13;
const BELOW = 14;

/** Points of a string that is moved from one way of lying to another. */
const MOVED = 161;

/** What is bent anew where a way between knots goes on in a lead on the move, in diameters. */
const GIVES_WAY = { before: [0.35, 1.7], after: [0.35, 0.9] } as const;

const mix = ([a, b]: readonly [number, number], f: number): number => a + (b - a) * f;

/**
 * All strings near a knot while it is tied: knots before it finished, later ones not yet begun, and
 * what is not in it hanging. Pure: the same arguments give the same pose.
 *
 * @param knot in the order of knotting, from 0
 * @param t 0 to 2: the first half hitch from 0 to 1, the second from 1 to 2
 * @throws GeometryError when there is no such knot
 */
export function diagonalPose(scene: DiagonalScene, knot: number, t: number): DiagonalPose {
  const { sequence } = scene;
  const cell = sequence.cells[knot];
  if (cell === undefined) {
    throw new GeometryError(
      `Knot ${knot} asked for; the pattern has ${scene.knots}, counted from 0.`,
    );
  }
  if (Number.isNaN(t)) throw new GeometryError('t is not a number; give the time from 0 to 2.');
  const time = Math.min(Math.max(t, 0), 2);
  const { tying, held, across } = sequence.work;
  const kind = KNOT_KINDS[sequence.kindOf(cell)] as KnotKind;
  const moment = tiedAt(sequence.kindOf(cell), time);
  const strands = stringsNear(scene, cell).map((string): DiagonalStrandPose => {
    const { id, colour } = sequence.work.strings[string]!;
    const before = finishedPath(scene, string, knot, cell);
    const own = { id, colour, radius: scene.diameter / 2 };
    if (string === tying[cell]) {
      const { points, from } = tyingString(sequence, knot, string, before, moment, time);
      const active = { from, to: points.length / 3 - 1 };
      return { ...own, role: 'tying', points: placed(points, scene.diameter), active };
    }
    const points =
      string === held[cell]
        ? heldString(sequence, knot, string, before, time)
        : joined(
            before,
            heldAside(sequence, string, knot, hangingFrom(sequence, string, knot, cell), time),
          );
    return {
      ...own,
      role: string === held[cell] ? 'held' : 'other',
      points: placed(points, scene.diameter),
    };
  });
  const [x, y] = sequence.placeOf(cell);
  return {
    knot,
    row: sequence.rowOf(cell),
    place: cell % across,
    t: time,
    kind,
    halfWay: halvesOf(kind)[moment.half],
    stage: moment.stage,
    stageProgress: moment.progress,
    strands,
    focus: [x * scene.diameter, y * scene.diameter, 0],
  };
}

const familyOf = (code: number) => familyFor(code >= 2 ? 'opposite' : 'same', 1);

interface Tied {
  readonly half: 0 | 1;
  readonly stage: KnotStage;
  readonly progress: number;
  /** The lead from the knot's start on, from the middle of the knot's place; diameters. */
  readonly points: Float64Array;
  /** Point at which the part that moves begins. */
  readonly moving: number;
}

/** What the tying string does in its knot at a time, leaning as its held string does. */
function tiedAt(code: number, time: number): Tied {
  return time < 1 ? madeAt(code, 0, firstHalfAt(time)) : madeAt(code, 1, time - 1);
}

/** The same at a fraction of one of its halves. */
function madeAt(code: number, half: 0 | 1, u: number): Tied {
  const comesBack = code >= 2;
  const family = familyOf(code);
  const length = workingLength(family, TAIL) + BEYOND;
  const moment = momentOf(family, half, u, length, POINTS);
  const straight = inMillimetres(moment, false, 1);
  // A cow hitch's middle is half way between its two ends, which lie one below the other.
  const middle = comesBack ? 0.51 : 0;
  const lean = leaned(placed(straight, 1, 0, -middle), comesBack);
  return {
    half,
    stage: moment.stage,
    progress: moment.progress,
    points: resample(code % 2 === 1 ? mirrored(lean) : lean, POINTS),
    moving: Math.floor((moment.moving / length) * (POINTS - 1)),
  };
}

/** Time within the first half hitch, which begins when the strings have been brought together. */
function firstHalfAt(time: number): number {
  const lying = STAGE_ENDS.lying;
  if (time <= TOGETHER) return (time / TOGETHER) * lying;
  return lying + ((time - TOGETHER) / (1 - TOGETHER)) * (1 - lying);
}

const ease = (x: number): number => x * x * (3 - 2 * x);

/** How far the strings have been brought together, and how far the knot is settled. */
const togetherAt = (time: number): number => ease(Math.min(time / TOGETHER, 1));
const settledAt = (time: number): number => ease(Math.max(0, (time - 2) / SETTLING + 1));

function tyingString(
  sequence: KnotSequence,
  order: number,
  string: number,
  before: Float64Array,
  tied: Tied,
  time: number,
): { readonly points: Float64Array; readonly from: number } {
  const cell = sequence.cells[order]!;
  const [x, y] = sequence.placeOf(cell);
  const into = wayTo(sequence, string, order);
  const length = lengthOf(into) + workingLength(familyOf(sequence.kindOf(cell)), TAIL);
  const settling = settledAt(time);
  const together = togetherAt(time);
  let lead = tied.points;
  if (settling > 0) lead = moved(lead, settlingOf(sequence.kindOf(cell)), settling);
  const whole = placed(lead, 1, x, y);
  // In the lattice the way to a knot goes straight on into its curve, further along.
  const now = settling > 0 ? without(whole, settling * ofEntry(sequence.kindOf(cell))) : whole;
  const loose = 1 - settling;
  const own = spliced(
    into,
    now,
    [mix(GIVES_WAY.before, loose), mix(GIVES_WAY.after, loose)],
    1,
  ).points;
  if (together < 1) {
    const hanging = hangingTo(sequence, string, order, into);
    const points = joined(before, mixed(hanging, own, together, length));
    return { points, from: Math.max(before.length / 3 - 1, 0) };
  }
  const points = joined(before, ofLength(own, length));
  const from = points.length / 3 - Math.max(POINTS - tied.moving, 2);
  return { points, from: Math.min(Math.max(from, 0), points.length / 3 - 2) };
}

function heldString(
  sequence: KnotSequence,
  order: number,
  string: number,
  before: Float64Array,
  time: number,
): Float64Array {
  const cell = sequence.cells[order]!;
  const [x, y] = sequence.placeOf(cell);
  const code = sequence.kindOf(cell);
  const into = wayTo(sequence, string, order);
  const strand = sequence.strandOf(string, cell);
  const knot = knotted(sequence, string, cell);
  const length = lengthOf(into) + lengthOf(knot) + BELOW;
  const lean = leaned(straightDown(-lengthOf(knot) / 2, BELOW + 6), code >= 2);
  const now = placed(code % 2 === 1 ? mirrored(lean) : lean, 1, x, y);
  const settling = settledAt(time);
  if (settling > 0) {
    const done = joined(knot, outOf(sequence, cell, strand.goes));
    const rest = length - lengthOf(into);
    return joined(before, into, mixed(now, done, settling, rest));
  }
  const together = togetherAt(time);
  const ready = joined(into, now);
  if (together === 1) return joined(before, ofLength(ready, length));
  return joined(before, mixed(hangingTo(sequence, string, order, into), ready, together, length));
}

function straightDown(from: number, to: number): Float64Array {
  const points: number[] = [];
  for (let s = from; s < to; s += 0.13) points.push(0, s, 0);
  return Float64Array.from(points);
}

/** How a knot made on a leaning string differs from the one in the lattice, along its lead. */
interface Settling {
  /** Displacements at steps of `SETTLING_STEP` along the lead; xyz triplets. */
  readonly by: Float64Array;
}

const SETTLING_STEP = 0.1;
const settlings = new Map<number, Settling>();

function settlingOf(code: number): Settling {
  let settling = settlings.get(code);
  if (settling === undefined) {
    const made = madeAt(code, 1, 1).points;
    const { tying } = latticeKnots()[code]!;
    const out = wayOut(code, tying.goes).levels[0]!;
    const end = out.length;
    const done = joined(tying.points.subarray(0, 3 * tying.to + 3), out, [
      out[end - 3]!,
      out[end - 2]! + 40,
      0,
    ]);
    const length = Math.min(lengthOf(made), lengthOf(done));
    const count = Math.floor(length / SETTLING_STEP);
    const [a, b] = [made, done].map((points) =>
      resample(ofLength(points, count * SETTLING_STEP), count + 1),
    ) as [Float64Array, Float64Array];
    settling = { by: b.map((v, i) => v - a[i]!) };
    settlings.set(code, settling);
  }
  return settling;
}

function moved(lead: Float64Array, { by }: Settling, share: number): Float64Array {
  const out = lead.slice();
  const last = by.length / 3 - 1;
  let along = 0;
  for (let i = 0; i < out.length; i += 3) {
    if (i > 0) along += gap(lead, i / 3 - 1, i / 3);
    const at = Math.min(along / SETTLING_STEP, last);
    const k = Math.min(Math.floor(at), last - 1);
    for (let c = 0; c < 3; c++) {
      const a = by[3 * k + c]!;
      out[i + c] = out[i + c]! + share * (a + (by[3 * k + 3 + c]! - a) * (at - k));
    }
  }
  return out;
}

/** Part of the way between two ways of lying, which are near each other. */
function mixed(a: Float64Array, b: Float64Array, f: number, length: number): Float64Array {
  const [from, to] = [a, b].map((points) => resample(ofLength(points, length), MOVED)) as [
    Float64Array,
    Float64Array,
  ];
  return to.map((v, i) => from[i]! + (v - from[i]!) * f);
}

/** Length of a tight knot's lead before the part that belongs to the knot itself. */
function ofEntry(code: number): number {
  const { points, from } = latticeKnots()[code]!.tying;
  return lengthOf(points.subarray(0, 3 * from + 3)) + 0.1;
}

/** A lead without the first `length` of it. */
function without(points: Float64Array, length: number): Float64Array {
  let first = 0;
  for (let left = length; ; first++) {
    const step = gap(points, first, first + 1);
    if (step > left) {
      const f = left / step;
      const out = points.slice(3 * first);
      for (let c = 0; c < 3; c++) out[c] = out[c]! + (out[3 + c]! - out[c]!) * f;
      return out;
    }
    left -= step;
  }
}

const gap = (p: Float64Array, i: number, j: number): number =>
  Math.hypot(p[3 * j]! - p[3 * i]!, p[3 * j + 1]! - p[3 * i + 1]!, p[3 * j + 2]! - p[3 * i + 2]!);

/** From a string's last knot, or from where it is hung, to a knot. */
function wayTo(sequence: KnotSequence, string: number, order: number): Float64Array {
  const { cells } = sequence;
  const cell = cells[order]!;
  const last = sequence.lastBegun(string, order);
  const strand = sequence.strandOf(string, cell);
  const code = sequence.kindOf(cell);
  if (last < 0) {
    const [x, y] = sequence.placeOf(cell);
    const way = placed(wayIn(code, strand.comes).levels[0]!, 1, x, y);
    return y === 0 ? way : joined([way[0]!, -HANGING.above, 0], way);
  }
  const from = cells[last]!;
  const [x, y] = sequence.placeOf(from);
  const right = sequence.slotOf(cell) - sequence.slotOf(from);
  const down = sequence.rowOf(cell) - sequence.rowOf(from);
  const { goes } = sequence.strandOf(string, from);
  const way = wayBetween(sequence.kindOf(from), goes, code, right, down);
  return placed(way.levels[0]!, 1, x, y);
}

/** A string's part of a tight knot. */
function knotted(sequence: KnotSequence, string: number, cell: number): Float64Array {
  const { points, from, to } = sequence.strandOf(string, cell);
  const [x, y] = sequence.placeOf(cell);
  return placed(points.subarray(3 * from, 3 * to + 3), 1, x, y);
}

function outOf(sequence: KnotSequence, cell: number, side: -1 | 1): Float64Array {
  const [x, y] = sequence.placeOf(cell);
  const way = placed(wayOut(sequence.kindOf(cell), side).levels[0]!, 1, x, y);
  const n = way.length;
  // Further down, to be cut to measure.
  return joined(way, [way[n - 3]!, way[n - 2]! + 40, 0]);
}

/** A string as it hangs before a knot is begun, from where the way to the knot begins. */
function hangingTo(
  sequence: KnotSequence,
  string: number,
  order: number,
  into: Float64Array,
): Float64Array {
  const last = sequence.lastBegun(string, order);
  if (last < 0) return Float64Array.of(into[0]!, into[1]!, into[2]!, into[0]!, 80 + into[1]!, 0);
  const from = sequence.cells[last]!;
  return outOf(sequence, from, sequence.strandOf(string, from).goes);
}

/** A string through its last knots before one, from the rows shown on. */
function finishedPath(
  scene: DiagonalScene,
  string: number,
  knot: number,
  cell: number,
): Float64Array {
  const { sequence, above } = scene;
  const top = sequence.rowOf(cell) - above;
  const knots = [...sequence.lastKnots(string, knot, above + 1)].filter(
    (order) => sequence.rowOf(sequence.cells[order]!) >= top,
  );
  return joined(
    ...knots.flatMap((order) => {
      const at = sequence.cells[order]!;
      return [wayTo(sequence, string, order), knotted(sequence, string, at)];
    }),
  );
}

/** What hangs of a string that is not in the knot being tied. */
function hangingFrom(
  sequence: KnotSequence,
  string: number,
  knot: number,
  cell: number,
): Float64Array {
  const bottom = sequence.rowOf(cell) * spacing().row + BELOW;
  const last = sequence.lastBegun(string, knot);
  if (last < 0) {
    const x = string * spacing().slot;
    return Float64Array.of(x, -HANGING.above, 0, x, bottom, 0);
  }
  const at = sequence.cells[last]!;
  const way = outOf(sequence, at, sequence.strandOf(string, at).goes);
  const n = way.length;
  way[n - 2] = Math.max(bottom, way[n - 5]! + 0.1);
  return way;
}

/** How far strings beside the knot being tied are held aside and back, and over what height. */
const ASIDE = { by: 0.7, back: 1.3, from: 1.4, to: 4.4 } as const;

/** What hangs beside the two strings of a knot is held out of their way while it is tied. */
function heldAside(
  sequence: KnotSequence,
  string: number,
  knot: number,
  hanging: Float64Array,
  time: number,
): Float64Array {
  const { order, strings } = sequence.work;
  const cell = sequence.cells[knot]!;
  const row = sequence.rowOf(cell);
  const [tying] = [sequence.work.tying[cell]!];
  const slots = order.subarray(row * strings.length, (row + 1) * strings.length);
  const side = slots.indexOf(string) < slots.indexOf(tying) ? -1 : 1;
  const share = togetherAt(time) * (1 - settledAt(time));
  if (share === 0) return hanging;
  const even = resample(hanging, Math.ceil(lengthOf(hanging) / 0.2) + 1);
  const start = row * spacing().row;
  for (let i = 0; i < even.length; i += 3) {
    const f = (even[i + 1]! - start - ASIDE.from) / (ASIDE.to - ASIDE.from);
    if (f <= 0) continue;
    const much = share * ease(Math.min(f, 1));
    even[i] = even[i]! + side * ASIDE.by * much;
    even[i + 2] = even[i + 2]! - ASIDE.back * much;
  }
  return even;
}

/** Strings in the slots round a knot. */
function stringsNear({ sequence, beside }: DiagonalScene, cell: number): number[] {
  const { order, strings } = sequence.work;
  const row = sequence.rowOf(cell);
  const slot = sequence.slotOf(cell);
  const from = Math.max(0, slot - beside);
  const to = Math.min(strings.length - 1, slot + 1 + beside);
  const before = row * strings.length;
  return Array.from(order.subarray(before + from, before + to + 1));
}
