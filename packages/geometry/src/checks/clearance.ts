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

/** Distances larger than this, in sums of radii, are of no interest. */
const REACH = 1.6;

interface Segment {
  readonly strand: number;
  readonly index: number;
  readonly along: number;
}

/**
 * The least clearance between strands, and between parts of one strand beyond its own bend, from
 * exact segment distances, with a grid so that only neighbours are compared.
 *
 * @returns undefined when nothing is nearer than 1.6 sums of radii
 */
export function leastClearance(strands: readonly CheckedStrand[]): Clearance | undefined {
  let cell = 0;
  for (const s of strands) cell = Math.max(cell, s.radius * 2 * REACH);
  const grid = new Map<string, Segment[]>();
  let least: Clearance | undefined;
  strands.forEach((strand, k) => {
    const { points } = strand;
    let along = 0;
    for (let i = 0; i + 1 < points.length / 3; i++) {
      const a = i * 3;
      const segment: Segment = { strand: k, index: i, along };
      const near = new Set<Segment>();
      forCells(points, a, cell, REACH * strand.radius * 2, (key) => {
        for (const other of grid.get(key) ?? []) near.add(other);
      });
      for (const other of near) {
        const found = compare(strands, segment, other);
        if (found && (!least || found.ratio < least.ratio)) least = found;
      }
      forCells(points, a, cell, 0, (key) => {
        const list = grid.get(key);
        if (list) list.push(segment);
        else grid.set(key, [segment]);
      });
      along += Math.hypot(
        points[a + 3]! - points[a]!,
        points[a + 4]! - points[a + 1]!,
        points[a + 5]! - points[a + 2]!,
      );
    }
  });
  return least;
}

function compare(strands: readonly CheckedStrand[], p: Segment, q: Segment): Clearance | undefined {
  const a = strands[p.strand]!;
  const b = strands[q.strand]!;
  if (p.strand === q.strand) {
    const i = q.index * 3;
    const own = Math.hypot(
      b.points[i + 3]! - b.points[i]!,
      b.points[i + 4]! - b.points[i + 1]!,
      b.points[i + 5]! - b.points[i + 2]!,
    );
    if (p.along - q.along - own < OWN_BEND * 2 * a.radius) return undefined;
  }
  const distance = segmentDistance(a.points, p.index * 3, b.points, q.index * 3);
  const ratio = distance / (a.radius + b.radius);
  if (ratio > REACH) return undefined;
  const i = p.index * 3;
  return {
    ratio,
    distance,
    between: [a.id, b.id],
    segments: [p.index, q.index],
    at: [a.points[i]!, a.points[i + 1]!, a.points[i + 2]!],
  };
}

/** Cells of the grid that a segment's box, grown by `margin`, overlaps. */
function forCells(
  points: ArrayLike<number>,
  at: number,
  cell: number,
  margin: number,
  visit: (key: string) => void,
): void {
  const low = [0, 1, 2].map((c) =>
    Math.floor((Math.min(points[at + c]!, points[at + 3 + c]!) - margin) / cell),
  );
  const high = [0, 1, 2].map((c) =>
    Math.floor((Math.max(points[at + c]!, points[at + 3 + c]!) + margin) / cell),
  );
  for (let x = low[0]!; x <= high[0]!; x++) {
    for (let y = low[1]!; y <= high[1]!; y++) {
      for (let z = low[2]!; z <= high[2]!; z++) visit(`${x},${y},${z}`);
    }
  }
}
