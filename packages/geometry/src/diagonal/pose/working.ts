import { spliced } from '../../curve/blend.js';
import { joined, lengthOf, mirrored, placed, resample } from '../../curve/polyline.js';
import { workingLength } from '../../knot/motion.js';
import { ofLength } from '../../row/joint.js';
import { leaned } from '../leaning.js';
import type { KnotSequence } from '../sequence.js';
import { familyOf, POINTS, settledAt, TAIL, type Tied, togetherAt } from './moment.js';
import { moved, ofEntry, settlingOf, without } from './settling.js';
import { BELOW, hangingTo, knotted, outOf, wayTo } from './strand.js';

/** Points of a string that is moved from one way of lying to another. */
const MOVED = 161;

/** What is bent anew where a way between knots goes on in a lead on the move, in diameters. */
const GIVES_WAY = { before: [0.35, 1.7], after: [0.35, 0.9] } as const;

const mix = ([a, b]: readonly [number, number], f: number): number => a + (b - a) * f;

export function tyingString(
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

export function heldString(
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

/** Part of the way between two ways of lying, which are near each other. */
function mixed(a: Float64Array, b: Float64Array, f: number, length: number): Float64Array {
  const [from, to] = [a, b].map((points) => resample(ofLength(points, length), MOVED)) as [
    Float64Array,
    Float64Array,
  ];
  return to.map((v, i) => from[i]! + (v - from[i]!) * f);
}
