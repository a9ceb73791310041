import { KNOT_KINDS, type KnotKind, mirrorKnot } from '@halfhitch/core';
import { mirrored } from '../curve/polyline.js';
import { shapeOf } from '../fabric/shapes.js';
import { bentCow, bentHeld } from './bent-cow.js';

/**
 * A tight knot as it sits in a lattice of knots, in diameters of the thread, all strings alike, the
 * middle of its place on x = y = 0. Its held string runs at 45 degrees: through the knot where the
 * two strings change places, and with a bend in the knot where they come back to their sides.
 */
export interface LatticeKnot {
  readonly kind: KnotKind;
  /** The string that ties, from above; only `from` to `to` belong to the knot itself. */
  readonly tying: Strand;
  /** The string that is held, from above. */
  readonly held: Strand;
}

export interface Strand {
  /** xyz triplets. */
  readonly points: Float64Array;
  /** First and last point that belong to the knot and not to the ways between knots. */
  readonly from: number;
  readonly to: number;
  /** Side from which it comes and to which it goes: -1 left, 1 right. */
  readonly comes: -1 | 1;
  readonly goes: -1 | 1;
}

/**
 * Half the length of held string that is taken as straight or evenly bent within a knot: beyond it
 * finds its way among the wraps.
 */
const WITHIN = { clove: 1.25, cow: 1.1 } as const;

/** Steps of the held string's points. */
const STEP = 0.13;

let known: readonly LatticeKnot[] | undefined;

/** The four knots, in the order of KNOT_KINDS. */
export function latticeKnots(): readonly LatticeKnot[] {
  known ??= made();
  return known;
}

function made(): readonly LatticeKnot[] {
  const forward = tilted();
  const forwardBackward = turnedBack();
  return [forward, mirror(forward), forwardBackward, mirror(forwardBackward)];
}

/** The held string of a forward knot runs from the upper right to the lower left. */
function tilted(): LatticeKnot {
  const { points, from, to } = shapeOf(KNOT_KINDS.indexOf('forward'), 1, 1);
  const steps = Math.ceil((2 * WITHIN.clove) / STEP);
  const held = new Float64Array(3 * (steps + 1));
  for (let i = 0; i <= steps; i++) held[3 * i + 1] = WITHIN.clove * ((2 * i) / steps - 1);
  return {
    kind: 'forward',
    tying: { points: turned(points), from, to, comes: -1, goes: 1 },
    held: { points: turned(held), from: 0, to: steps, comes: 1, goes: -1 },
  };
}

function turnedBack(): LatticeKnot {
  const { from, to } = shapeOf(KNOT_KINDS.indexOf('forward-backward'), 1, 1);
  const held = bentHeld(-WITHIN.cow, WITHIN.cow);
  return {
    kind: 'forward-backward',
    tying: { points: bentCow(), from, to, comes: -1, goes: -1 },
    held: { points: held, from: 0, to: held.length / 3 - 1, comes: 1, goes: 1 },
  };
}

function mirror({ kind, tying, held }: LatticeKnot): LatticeKnot {
  const flipped = (strand: Strand): Strand => ({
    ...strand,
    points: mirrored(strand.points),
    comes: strand.comes === 1 ? -1 : 1,
    goes: strand.goes === 1 ? -1 : 1,
  });
  return {
    kind: mirrorKnot(kind),
    tying: flipped(tying),
    held: flipped(held),
  };
}

function turned(points: Float64Array): Float64Array {
  const out = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    out[i] = Math.SQRT1_2 * (points[i]! - points[i + 1]!);
    out[i + 1] = Math.SQRT1_2 * (points[i]! + points[i + 1]!);
    out[i + 2] = points[i + 2]!;
  }
  return out;
}
