import { joined, placed } from '../../curve/polyline.js';
import type { KnotSequence } from '../sequence.js';
import { spacing } from '../spacing.js';
import { HANGING, wayBetween, wayIn, wayOut } from '../ways.js';
import type { DiagonalScene } from './scene.js';

/** Free length of a string that is not tying, below the row, in diameters. */
export const BELOW = 14;

/** From a string's last knot, or from where it is hung, to a knot. */
export function wayTo(sequence: KnotSequence, string: number, order: number): Float64Array {
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
export function knotted(sequence: KnotSequence, string: number, cell: number): Float64Array {
  const { points, from, to } = sequence.strandOf(string, cell);
  const [x, y] = sequence.placeOf(cell);
  return placed(points.subarray(3 * from, 3 * to + 3), 1, x, y);
}

export function outOf(sequence: KnotSequence, cell: number, side: -1 | 1): Float64Array {
  const [x, y] = sequence.placeOf(cell);
  const way = placed(wayOut(sequence.kindOf(cell), side).levels[0]!, 1, x, y);
  const n = way.length;
  // Further down, to be cut to measure.
  return joined(way, [way[n - 3]!, way[n - 2]! + 40, 0]);
}

/** A string as it hangs before a knot is begun, from where the way to the knot begins. */
export function hangingTo(
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
export function finishedPath(
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
export function hangingFrom(
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
