import { knotsAcross } from '../lattice.js';
import type { DiagonalPattern } from '../pattern.js';
import { NO_KNOT } from '../pattern.js';
import { primeFactors } from '../permutation.js';

/**
 * The fewest rows after which the knots of an endless pattern begin anew on the same slots.
 *
 * @param rowsApart rows from the beginning of a repeat to that of the next, even; those beyond the
 *   pattern's own have no knots
 */
export function knotsPeriod(pattern: DiagonalPattern, rowsApart: number): number {
  const across = knotsAcross(pattern);
  const knots = new Uint8Array(rowsApart * across).fill(NO_KNOT);
  knots.set(pattern.knots.subarray(0, pattern.rows * across));
  const repeats = (rows: number): boolean => {
    const apart = rows * across;
    for (let i = apart; i < knots.length; i++) if (knots[i] !== knots[i - apart]) return false;
    return true;
  };
  let period = rowsApart;
  for (const prime of primeFactors(rowsApart)) {
    while (period % prime === 0) {
      const shorter = period / prime;
      if (shorter % 2 === 1 || !repeats(shorter)) break;
      period = shorter;
    }
  }
  return period;
}
