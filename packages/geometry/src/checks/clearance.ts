import { segmentDistance } from './segments.js';

export interface CheckedStrand {
  readonly id: string;
  /** xyz triplets. */
  readonly points: ArrayLike<number>;
  readonly radius: number;
}

/** The narrowest place found. */
export interface Clearance {
  /** Distance of the centre-lines over the sum of the radii: 1 when the strands just touch. */
  readonly ratio: number;
  readonly distance: number;
  /** Strand ids and segment numbers. */
  readonly between: readonly [string, string];
  readonly segments: readonly [number, number];
  /** A point there. */
  readonly at: readonly [number, number, number];
}

/**
 * Parts of one strand nearer to each other along it than this many diameters are kept apart by the
 * bending limit and not counted: half a turn on the tightest bend allowed is pi/2 diameters.
 */
export const OWN_BEND = 1.7;

/** Distances larger than this, in sums of radii, are of no interest unless another reach is given. */
const REACH = 1.6;

/** Segments following each other on a strand that are looked for together. */
const RUN = 6;

/** Some segments of a strand, and the box round them. */
interface Run {
  readonly strand: number;
  readonly from: number;
  readonly to: number;
  /** Least and greatest x, y and z. */
  readonly box: readonly [number, number, number, number, number, number];
}

/**
 * The least clearance between strands, and between parts of one strand beyond its own bend, from
 * exact segment distances, with a grid so that only neighbours are compared.
 *
 * @param reach distances larger than this, in sums of radii, are not looked at: less is quicker
 * @returns undefined when nothing is nearer than `reach`
 */
export function leastClearance(
  strands: readonly CheckedStrand[],
  reach = REACH,
): Clearance | undefined {
  const widest = Math.max(...strands.map((s) => s.radius));
  const cell = widest * 2 * reach;
  const along = strands.map(({ points }) => lengthsAlong(points));
  const runs: Run[] = [];
  const grid = new Map<number, number[]>();
  const seen: number[] = [];
  let least: Clearance | undefined;
  const check = (run: Run, other: Run): void => {
    const a = strands[run.strand]!;
    const b = strands[other.strand]!;
    const near = () => (least?.ratio ?? reach) * (a.radius + b.radius);
    if (boxDistance(run.box, other.box) > near()) return;
    for (let i = run.from; i < run.to; i++) {
      for (let j = other.from; j < other.to; j++) {
        if (a === b && !apartOnStrand(along[run.strand]!, j, i, a.radius)) continue;
        const distance = segmentDistance(a.points, i * 3, b.points, j * 3);
        if (distance >= near()) continue;
        least = {
          ratio: distance / (a.radius + b.radius),
          distance,
          between: [a.id, b.id],
          segments: [i, j],
          at: [a.points[i * 3]!, a.points[i * 3 + 1]!, a.points[i * 3 + 2]!],
        };
      }
    }
  };
  strands.forEach((strand, k) => {
    const count = strand.points.length / 3 - 1;
    for (let from = 0; from < count; from += RUN) {
      const to = Math.min(from + RUN, count);
      const run: Run = { strand: k, from, to, box: boxOf(strand.points, from, to) };
      const id = runs.length;
      runs.push(run);
      seen.push(-1);
      check(run, run);
      forCells(run.box, cell, reach * (strand.radius + widest), (key) => {
        for (const other of grid.get(key) ?? []) {
          if (seen[other] === id) continue;
          seen[other] = id;
          check(run, runs[other]!);
        }
      });
      forCells(run.box, cell, 0, (key) => {
        const list = grid.get(key);
        if (list) list.push(id);
        else grid.set(key, [id]);
      });
    }
  });
  return least;
}

/** Length of a strand up to each of its points. */
function lengthsAlong(points: ArrayLike<number>): Float64Array {
  const out = new Float64Array(points.length / 3);
  for (let i = 1; i < out.length; i++) {
    const a = i * 3 - 3;
    out[i] =
      out[i - 1]! +
      Math.hypot(
        points[a + 3]! - points[a]!,
        points[a + 4]! - points[a + 1]!,
        points[a + 5]! - points[a + 2]!,
      );
  }
  return out;
}

/** Whether the second segment is so far along a strand from the first that they have to keep apart. */
const apartOnStrand = (
  along: Float64Array,
  first: number,
  second: number,
  radius: number,
): boolean => along[second]! - along[first + 1]! >= OWN_BEND * 2 * radius;

function boxOf(points: ArrayLike<number>, from: number, to: number): Run['box'] {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = from * 3; i <= to * 3 + 2; i++) {
    low[i % 3] = Math.min(low[i % 3]!, points[i]!);
    high[i % 3] = Math.max(high[i % 3]!, points[i]!);
  }
  return [low[0]!, high[0]!, low[1]!, high[1]!, low[2]!, high[2]!];
}

function boxDistance(a: Run['box'], b: Run['box']): number {
  const gap = (low: number) => Math.max(a[low]! - b[low + 1]!, b[low]! - a[low + 1]!, 0);
  return Math.hypot(gap(0), gap(2), gap(4));
}

/**
 * Cells of the grid that a box, grown by `margin`, overlaps. Different cells may share a number,
 * which only leads to comparing more.
 */
function forCells(
  box: Run['box'],
  cell: number,
  margin: number,
  visit: (key: number) => void,
): void {
  const low = (c: number) => Math.floor((box[2 * c]! - margin) / cell);
  const high = (c: number) => Math.floor((box[2 * c + 1]! + margin) / cell);
  const [y0, y1, z0, z1] = [low(1), high(1), low(2), high(2)];
  for (let x = low(0); x <= high(0); x++) {
    for (let y = y0; y <= y1; y++) {
      for (let z = z0; z <= z1; z++) {
        visit((x * 73856093) ^ (y * 19349663) ^ (z * 83492791));
      }
    }
  }
}
