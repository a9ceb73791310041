import { halvesOf, type KnotKind } from '@halfhitch/core';
import { lengthOf, placed } from '../curve/polyline.js';
import { Track, type Vec3 } from '../curve/track.js';
import { familyFor, type KnotFamily } from './family.js';
import { RIGHT } from './loose.js';
import { type KnotOptions, type ResolvedOptions, resolveOptions } from './options.js';

/** A place where the lead enters or leaves a knot, and its unit direction of travel there. Mm. */
export interface KnotEnd {
  readonly at: readonly [number, number, number];
  readonly heading: readonly [number, number, number];
}

/** A tight knot, its held string on x = z = 0. Mm, in the frame of `frame.ts`. */
export interface FinishedKnot {
  readonly kind: KnotKind;
  /** The lead from entry to exit. */
  readonly tying: Float64Array;
  readonly entry: KnotEnd;
  readonly exit: KnotEnd;
  readonly tyingRadius: number;
  readonly heldRadius: number;
  /** Length of lead from entry to exit. */
  readonly tyingLength: number;
  readonly size: KnotFrameSize;
}

/** The room a knot takes in a fabric, in mm. */
export interface KnotFrameSize {
  /** Distance of neighbouring held strings. */
  readonly width: number;
  /** Height of the lead's wraps along the held string, thread thickness included. */
  readonly height: number;
  /** From the hindmost to the foremost point, thread thickness included. */
  readonly depth: number;
}

/** The tight knot. Throws GeometryError when an option is outside its limits. */
export function finishedKnot(kind: KnotKind, options: KnotOptions = {}): FinishedKnot {
  const o = resolveOptions(options);
  const halves = halvesOf(kind);
  return finishedFrom(kind, familyFor(halves[0] === halves[1] ? 'same' : 'opposite', o.ratio), o);
}

/** The tight knot of a family, of which a kind of knot has its shape. */
export function finishedFrom(kind: KnotKind, family: KnotFamily, o: ResolvedOptions): FinishedKnot {
  const halves = halvesOf(kind);
  const half = family.halves[1];
  const tying = placed(tightCurve(family), o.diameter);
  const left = (halves[0] === 'backward') !== o.mirror;
  if (half.flipped !== left) for (let i = 0; i < tying.length; i += 3) tying[i] = -tying[i]!;
  const outward = half.flipped !== left ? -1 : 1;
  const n = tying.length;
  return {
    kind,
    tying,
    entry: { at: [tying[0]!, tying[1]!, tying[2]!], heading: headingAt(tying) },
    exit: { at: [tying[n - 3]!, tying[n - 2]!, tying[n - 1]!], heading: [outward, 0, 0] },
    tyingRadius: o.diameter / 2,
    heldRadius: (o.diameter * o.ratio) / 2,
    tyingLength: lengthOf(tying),
    size: sizeOf(tying, o.diameter, family.proportions.halfPitch * 2 * o.diameter),
  };
}

/** The room a tight knot takes, in mm. */
export function knotFrameSize(kind: KnotKind, options: KnotOptions = {}): KnotFrameSize {
  return finishedKnot(kind, options).size;
}

const CURVE_POINTS = 161;

/** The tight knot's lead in the second half's frame, in tying diameters. */
function tightCurve(family: KnotFamily): Float64Array {
  const { tight } = family;
  return new Track([tight[0]!, tight[1]!, tight[2]!], RIGHT)
    .follow(tight, RIGHT)
    .sample(CURVE_POINTS);
}

function headingAt(points: Float64Array): Vec3 {
  const x = points[3]! - points[0]!;
  const y = points[4]! - points[1]!;
  const z = points[5]! - points[2]!;
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}

function sizeOf(points: Float64Array, diameter: number, width: number): KnotFrameSize {
  let top = Infinity;
  let bottom = -Infinity;
  let back = Infinity;
  let front = -Infinity;
  for (let i = 0; i < points.length; i += 3) {
    top = Math.min(top, points[i + 1]!);
    bottom = Math.max(bottom, points[i + 1]!);
    back = Math.min(back, points[i + 2]!);
    front = Math.max(front, points[i + 2]!);
  }
  return { width, height: bottom - top + diameter, depth: front - back + diameter };
}
