import { lengthOf, mirrored } from '../curve/polyline.js';
import { LEVEL_TOLERANCE, thinned } from '../fabric/levels.js';
import { BEAD_STEP, settle } from '../fabric/settle.js';
import { type LatticeKnot, latticeKnots, type Strand } from './shapes.js';
import { spacing } from './spacing.js';

/** A string's way from one knot to the next, settled between the two. Diameters of the thread. */
export interface Way {
  /** Points by level of detail, ends included, from the middle of the place it comes from. */
  readonly levels: readonly Float64Array[];
  readonly length: number;
}

/** How far a string hangs straight above its first and below its last knot. */
export const HANGING = { above: 8, below: 12 } as const;

/** Rows over which a way without knots is settled as a whole; longer ones hang straight. */
const MOST_SETTLED = 4;

/** Points of a knot at the end of a way that the way need not keep away from. */
const OWN = 14;

/**
 * Ways between knots. They depend on the two knots alone, since no third one reaches there, so all
 * pieces have them from one table, worked out as they are first needed.
 */
const ways = new Map<string, Way>();

/**
 * The way of the string that leaves a knot on one side, to the knot it is next part of.
 *
 * @param from kind code of the knot it leaves
 * @param side the side on which it leaves it: -1 left, 1 right
 * @param to kind code of the knot it goes to
 * @param right places of that knot to the right (-1, 0 or 1 half ones, one slot each)
 * @param down rows down to it
 */
export function wayBetween(
  from: number,
  side: -1 | 1,
  to: number,
  right: number,
  down: number,
): Way {
  const make = () =>
    side === -1
      ? mirror(wayBetween(flipped(from), 1, flipped(to), -right, down))
      : down <= MOST_SETTLED
        ? settledWay(from, to, right, down)
        : hangingWay(from, to, right, down);
  return down <= MOST_SETTLED ? kept(`${from} ${side} ${to} ${right} ${down}`, make) : make();
}

/** The way of a string that hangs straight down in its slot into the knot at one side of it. */
export function wayIn(to: number, side: -1 | 1): Way {
  return kept(`in ${to} ${side}`, () => {
    if (side === 1) return mirror(wayIn(flipped(to), -1));
    const { slot } = spacing();
    const knot = latticeKnots()[to]!;
    const x = -slot / 2;
    const y = -HANGING.above;
    const into = end(strandFrom(knot, -1), 'in', 0, 0);
    const guess = [x, y - BEAD_STEP, 0, x, y, 0, x, -slot, into[2]! * 0.7, ...into];
    return wayOf(settle(guess, obstaclesOf(knot, 0, 0, 'in', -1)));
  });
}

/** The way out of a knot and down where the string hangs. */
export function wayOut(from: number, side: -1 | 1): Way {
  return kept(`out ${from} ${side}`, () => {
    if (side === -1) return mirror(wayOut(flipped(from), 1));
    const { slot } = spacing();
    const knot = latticeKnots()[from]!;
    const x = slot / 2;
    const out = end(strandTo(knot, 1), 'out', 0, 0);
    const y = HANGING.below;
    const guess = [...out, x, slot, out[5]! * 0.7, x, y, 0, x, y + BEAD_STEP, 0];
    return wayOf(settle(guess, obstaclesOf(knot, 0, 0, 'out', 1)));
  });
}

/** The string that comes into a knot from a side. */
const strandFrom = (knot: LatticeKnot, side: -1 | 1): Strand =>
  knot.tying.comes === side ? knot.tying : knot.held;

/** The string that leaves a knot on a side. */
const strandTo = (knot: LatticeKnot, side: -1 | 1): Strand =>
  knot.tying.goes === side ? knot.tying : knot.held;

const flipped = (code: number): number => code ^ 1;

function kept(key: string, make: () => Way): Way {
  let way = ways.get(key);
  if (way === undefined) {
    way = make();
    ways.set(key, way);
  }
  return way;
}

/** A way that leaves its knot on the right. */
function settledWay(from: number, to: number, right: number, down: number): Way {
  const { slot, row } = spacing();
  const knots = latticeKnots();
  const [a, b] = [knots[from]!, knots[to]!];
  const [x, y] = [right * slot, down * row];
  const side = right > 0 ? -1 : 1;
  const out = end(strandTo(a, 1), 'out', 0, 0);
  const into = end(strandFrom(b, side), 'in', x, y);
  const middle: number[] = [];
  if (down === 1) middle.push(x / 2, y / 2, (out[5]! + into[2]!) / 2);
  else for (let k = 1; k < down; k++) middle.push(slot / 2, k * row, 0.5);
  const obstacles = [...obstaclesOf(a, 0, 0, 'out', 1), ...obstaclesOf(b, x, y, 'in', side)];
  return wayOf(settle([...out, ...middle, ...into], obstacles));
}

/** Down from the one knot as a string hangs, and into the other as one does. */
function hangingWay(from: number, to: number, right: number, down: number): Way {
  const { slot, row } = spacing();
  const [x, y] = [right * slot, down * row];
  const above = wayOut(from, 1).levels[0]!;
  const below = wayIn(to, right > 0 ? -1 : 1).levels[0]!;
  const out: number[] = [];
  for (let i = 0; i < above.length && above[i + 1]! < y / 2; i += 3) {
    out.push(above[i]!, above[i + 1]!, above[i + 2]!);
  }
  for (let i = 0; i < below.length; i += 3) {
    if (below[i + 1]! + y <= y / 2) continue;
    out.push(below[i]! + x, below[i + 1]! + y, below[i + 2]!);
  }
  return wayOf(Float64Array.from(out), 0);
}

/** @param margin points at each end that only give the direction there */
function wayOf(path: Float64Array, margin = 1): Way {
  const last = path.length / 3 - 1 - margin;
  return {
    levels: LEVEL_TOLERANCE.map((tolerance) => thinned(path, tolerance, margin, last)),
    length: lengthOf(path.subarray(3 * margin, 3 * last + 3)),
  };
}

const mirror = ({ levels, length }: Way): Way => ({ levels: levels.map(mirrored), length });

/** Two points of a knot, in the string's direction, between which a way begins or ends. */
function end({ points, from, to }: Strand, which: 'in' | 'out', x: number, y: number): number[] {
  const picks = which === 'out' ? [to - 2, to] : [from, from + 2];
  return picks.flatMap((i) => [points[3 * i]! + x, points[3 * i + 1]! + y, points[3 * i + 2]!]);
}

/** Both strings of a knot, but for the end that the way itself goes on from. */
function obstaclesOf(
  knot: LatticeKnot,
  x: number,
  y: number,
  which: 'in' | 'out',
  side: -1 | 1,
): number[] {
  const own = which === 'out' ? strandTo(knot, side) : strandFrom(knot, side);
  const out: number[] = [];
  for (const strand of [knot.tying, knot.held]) {
    const count = strand.points.length / 3;
    const first = strand === own && which === 'in' ? strand.from + OWN : 0;
    const last = strand === own && which === 'out' ? strand.to - OWN : count - 1;
    const step = strand === knot.tying ? 2 : 1;
    for (let i = first; i <= last; i += step) {
      out.push(
        strand.points[3 * i]! + x,
        strand.points[3 * i + 1]! + y,
        strand.points[3 * i + 2]!,
        1,
      );
    }
  }
  return out;
}
