import { type LatticeKnot, latticeKnots } from './shapes.js';

/**
 * Room between knots that touch, for the strings that go in and out of them, in diameters of the
 * thread; real thread is pressed together there.
 */
const ROOM = 0.18;

/** Distances of the lattice in diameters of the thread. */
export interface Spacing {
  /** Distance of neighbouring slots: half that of the knots of a row. */
  readonly slot: number;
  /** Distance of rows. */
  readonly row: number;
  /** Half the width and half the height of the largest knot, thread thickness included. */
  readonly halfWidth: number;
  readonly halfHeight: number;
  /** Depth of the hindmost and the foremost centre-line. */
  readonly back: number;
  readonly front: number;
}

let known: Spacing | undefined;

/**
 * How far apart knots sit: strings run at 45 degrees, as the held strings of knots side by side and
 * below each other then leave both the same room, and neighbours along them lie at the least
 * distance at which any two kinds of knots fit, with some room for the ways between.
 */
export function spacing(): Spacing {
  known ??= workedOut(latticeKnots());
  return known;
}

function workedOut(knots: readonly LatticeKnot[]): Spacing {
  const curves = knots.map(({ tying: { points, from, to } }) =>
    points.subarray(3 * from, 3 * to + 3),
  );
  let along = 0;
  for (const above of curves) {
    for (const below of curves) along = Math.max(along, fits(above, below));
  }
  const slot = (along + ROOM) * Math.SQRT1_2;
  const low = [0, 0, 0];
  const high = [0, 0, 0];
  for (const curve of curves) {
    curve.forEach((v, i) => {
      low[i % 3] = Math.min(low[i % 3]!, v);
      high[i % 3] = Math.max(high[i % 3]!, v);
    });
  }
  return {
    slot,
    row: slot,
    halfWidth: Math.max(-low[0]!, high[0]!) + 0.5,
    halfHeight: Math.max(-low[1]!, high[1]!) + 0.5,
    back: low[2]!,
    front: high[2]!,
  };
}

/** Distance down to the right at which a knot touches the one above. */
function fits(above: Float64Array, below: Float64Array): number {
  let least = 0;
  for (let i = 0; i < above.length; i += 3) {
    for (let j = 0; j < below.length; j += 3) {
      const x = above[i]! - below[j]!;
      const y = above[i + 1]! - below[j + 1]!;
      const z = above[i + 2]! - below[j + 2]!;
      const along = (x + y) * Math.SQRT1_2;
      const rest = 1 - (x * x + y * y + z * z - along * along);
      if (rest > 0) least = Math.max(least, along + Math.sqrt(rest));
    }
  }
  return least;
}
