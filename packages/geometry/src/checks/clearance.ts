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

/** All segments of all strands, in one list. */
interface Segments {
  readonly strand: number[];
  readonly index: number[];
  /** Length of the strand before the segment, and of the segment. */
  readonly along: number[];
  readonly length: number[];
  /** Middles, as triplets. */
  readonly middle: number[];
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
  const all: Segments = { strand: [], index: [], along: [], length: [], middle: [] };
  const grid = new Map<number, number[]>();
  const seen: number[] = [];
  let least: Clearance | undefined;
  strands.forEach((strand, k) => {
    const { points } = strand;
    const margin = reach * (strand.radius + widest);
    let along = 0;
    for (let i = 0; i + 1 < points.length / 3; i++) {
      const id = all.strand.length;
      all.strand.push(k);
      all.index.push(i);
      all.along.push(along);
      const length = stepOf(points, i);
      all.length.push(length);
      for (let c = 0; c < 3; c++) {
        all.middle.push((points[i * 3 + c]! + points[i * 3 + 3 + c]!) / 2);
      }
      seen.push(-1);
      forCells(points, i * 3, cell, margin, (key) => {
        for (const other of grid.get(key) ?? []) {
          if (seen[other] === id) continue;
          seen[other] = id;
          const found = compare(strands, all, id, other, least?.ratio ?? reach);
          if (found) least = found;
        }
      });
      forCells(points, i * 3, cell, 0, (key) => {
        const list = grid.get(key);
        if (list) list.push(id);
        else grid.set(key, [id]);
      });
      along += length;
    }
  });
  return least;
}

function compare(
  strands: readonly CheckedStrand[],
  all: Segments,
  p: number,
  q: number,
  below: number,
): Clearance | undefined {
  const a = strands[all.strand[p]!]!;
  const b = strands[all.strand[q]!]!;
  const i = all.index[p]!;
  const j = all.index[q]!;
  if (a === b) {
    const apart = all.along[p]! - all.along[q]! - all.length[q]!;
    if (apart < OWN_BEND * 2 * a.radius) return undefined;
  }
  // Segments whose middles are far apart cannot be nearer than what was found before.
  const m = all.middle;
  const dx = m[p * 3]! - m[q * 3]!;
  const dy = m[p * 3 + 1]! - m[q * 3 + 1]!;
  const dz = m[p * 3 + 2]! - m[q * 3 + 2]!;
  const reach = below * (a.radius + b.radius) + (all.length[p]! + all.length[q]!) / 2;
  if (dx * dx + dy * dy + dz * dz > reach * reach) return undefined;
  const distance = segmentDistance(a.points, i * 3, b.points, j * 3);
  const ratio = distance / (a.radius + b.radius);
  if (ratio >= below) return undefined;
  return {
    ratio,
    distance,
    between: [a.id, b.id],
    segments: [i, j],
    at: [a.points[i * 3]!, a.points[i * 3 + 1]!, a.points[i * 3 + 2]!],
  };
}

const stepOf = (p: ArrayLike<number>, i: number): number =>
  Math.hypot(
    p[i * 3 + 3]! - p[i * 3]!,
    p[i * 3 + 4]! - p[i * 3 + 1]!,
    p[i * 3 + 5]! - p[i * 3 + 2]!,
  );

/**
 * Cells of the grid that a segment's box, grown by `margin`, overlaps. Different cells may share a
 * number, which only leads to comparing more.
 */
function forCells(
  points: ArrayLike<number>,
  at: number,
  cell: number,
  margin: number,
  visit: (key: number) => void,
): void {
  const low = (c: number) =>
    Math.floor((Math.min(points[at + c]!, points[at + 3 + c]!) - margin) / cell);
  const high = (c: number) =>
    Math.floor((Math.max(points[at + c]!, points[at + 3 + c]!) + margin) / cell);
  const [y0, y1, z0, z1] = [low(1), high(1), low(2), high(2)];
  for (let x = low(0); x <= high(0); x++) {
    for (let y = y0; y <= y1; y++) {
      for (let z = z0; z <= z1; z++) {
        visit((x * 73856093) ^ (y * 19349663) ^ (z * 83492791));
      }
    }
  }
}
