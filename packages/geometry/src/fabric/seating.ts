import { type EdgeTechnique, turnAt } from '@halfhitch/core';
import { knotFrameSize } from '../knot/finished.js';
import { isClove, type KnotShape, kindCode, shapeOf } from './shapes.js';

/** How knots sit on each other, in tying diameters. */
export interface Seating {
  readonly ratio: number;
  /** Distance of neighbouring base strings. */
  readonly pitch: number;
  /** Distance of rows. */
  readonly rowHeight: number;
  /** Shapes by kind, in the order of KNOT_KINDS. */
  readonly shapes: readonly KnotShape[];
  /** Depth of the hindmost and the foremost centre-line of a knot. */
  readonly back: number;
  readonly front: number;
  /** Half the width of a knot's centre-line. */
  readonly halfWidth: number;
}

/** Which kind sits right below which on the same string: `pairs[above * 4 + below]` is not 0. */
export type Pairs = Uint8Array;

/**
 * Furthest that the wraps of a clove hitch are drawn apart to fill a row whose height comes from
 * taller knots: they stay nearly in touch.
 */
const MOST_STRETCH = 1.25;

/** Distance of rows at which the lower knot touches the upper one. */
function seat(above: Float64Array, below: Float64Array): number {
  let least = 0;
  for (let i = 0; i < above.length; i += 3) {
    const x = above[i]!;
    const y = above[i + 1]!;
    const z = above[i + 2]!;
    for (let j = 0; j < below.length; j += 3) {
      const rest = 1 - (x - below[j]!) ** 2 - (z - below[j + 2]!) ** 2;
      if (rest > 0) least = Math.max(least, y - below[j + 1]! + Math.sqrt(rest));
    }
  }
  return least;
}

/**
 * Rows lie as far apart as the knots that sit on each other need. Where edge knots are taller than
 * the knots between them, the latter's wraps spread to fill the row, as they do in a piece whose
 * rows are kept level.
 */
export function seatingOf(pairs: Pairs, ratio: number): Seating {
  const key = `${ratio} ${Array.from(pairs, (v) => (v === 0 ? 0 : 1)).join('')}`;
  let seating = known.get(key);
  if (!seating) {
    seating = workOut(pairs, ratio);
    if (known.size >= KEPT) known.delete(known.keys().next().value!);
    known.set(key, seating);
  }
  return seating;
}

/** Seatings of the last pieces are kept, and with them the ways between their knots. */
const known = new Map<string, Seating>();
const KEPT = 8;

function workOut(pairs: Pairs, ratio: number): Seating {
  const tight = [0, 1, 2, 3].map((code) => shapeOf(code, ratio, 1));
  const rowHeight = heightOf(pairs, tight);
  let low = 1;
  let high = MOST_STRETCH;
  for (let i = 0; i < 20; i++) {
    const stretch = (low + high) / 2;
    const shapes = tight.map((shape, code) => (isClove(code) ? stretched(shape, stretch) : shape));
    if (heightOf(pairs, shapes) <= rowHeight) low = stretch;
    else high = stretch;
  }
  const shapes = tight.map((shape, code) => (isClove(code) ? stretched(shape, low) : shape));
  let back = 0;
  let front = 0;
  let halfWidth = 0;
  for (const { points } of shapes) {
    for (let i = 0; i < points.length; i += 3) {
      back = Math.min(back, points[i + 2]!);
      front = Math.max(front, points[i + 2]!);
    }
    for (let i = 0; i < points.length; i += 3) {
      // Beside the held string, where wraps turn to the back; ends reach out to the neighbours.
      if (points[i + 2]! < 0.5) halfWidth = Math.max(halfWidth, Math.abs(points[i]!));
    }
  }
  const { width } = knotFrameSize('forward', { tyingDiameter: 1, heldDiameter: ratio });
  return { ratio, pitch: width, rowHeight, shapes, back, front, halfWidth };
}

const stretched = (shape: KnotShape, stretch: number): KnotShape => {
  const along = (points: Float64Array) => points.map((v, i) => (i % 3 === 1 ? v * stretch : v));
  return { ...shape, points: along(shape.points), lifted: along(shape.lifted) };
};

function heightOf(pairs: Pairs, shapes: readonly KnotShape[]): number {
  let height = 0;
  for (let above = 0; above < 4; above++) {
    for (let below = 0; below < 4; below++) {
      if (pairs[above * 4 + below] === 0) continue;
      height = Math.max(height, seat(shapes[above]!.points, shapes[below]!.points));
    }
  }
  return height > 0 ? height : seat(shapes[0]!.points, shapes[1]!.points);
}

/** What sits on what in rows worked to and fro with an edge technique. */
export function pairsOf(edge: EdgeTechnique): Pairs {
  const pairs: Pairs = new Uint8Array(16);
  const forward = kindCode('forward');
  const backward = kindCode('backward');
  pairs[forward * 4 + backward] = 1;
  pairs[backward * 4 + forward] = 1;
  if (turnAt(edge, 'right') === 'inside') pairs[kindCode('forward-backward') * 5] = 1;
  if (turnAt(edge, 'left') === 'inside') pairs[kindCode('backward-forward') * 5] = 1;
  return pairs;
}

/** The shape of a knot of a kind; where none is, of a forward one. */
export function seatedShape({ shapes }: Seating, code: number): KnotShape {
  return shapes[code] ?? shapes[0]!;
}

/** Depth at which floats begin and end: behind the hindmost wraps. */
export function backDepth({ back }: Seating): number {
  return back - 0.5;
}
