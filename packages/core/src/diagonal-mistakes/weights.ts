import { halvesOf, KNOT_KINDS, type KnotKind } from '../model/knot.js';
import type { DiagonalMistake, DiagonalMistakeKind } from './mistake.js';
import { HALF, type Piece } from './piece.js';

/**
 * How often a mistake of a kind is made, relative to the others. Common practice, no source: the
 * way of a knot is mixed up most, then neighbours, then knots and rows are left out.
 */
export const DIAGONAL_MISTAKE_WEIGHTS: Readonly<Record<DiagonalMistakeKind, number>> = {
  'wrong-kind': 10,
  'one-slot-off': 6,
  'missing-knot': 6,
  'half-knot': 4,
  'missing-row': 4,
  'swapped-strings': 4,
  'wrong-colour': 3,
  'extra-row': 3,
  'extra-knot': 2,
};

/** What a weight is divided by to stand for a likelihood, so that one mistake more is rarer. */
export const DIAGONAL_WEIGHT_OF_ALL = 1_000;

/** Share of a kind's weight that is left where a mistake asks for more than a slip. */
const RARER = 0.25;

/** The weight of one mistake in a piece, finer than that of its kind. */
export function diagonalWeightOf(mistake: DiagonalMistake, piece: Piece): number {
  const weight = DIAGONAL_MISTAKE_WEIGHTS[mistake.kind];
  switch (mistake.kind) {
    case 'wrong-kind': {
      const knot = piece.rows[mistake.row]?.knots[mistake.place] ?? 0;
      const written = KNOT_KINDS[knot % HALF];
      return written === undefined ? weight : weight * closeness(written, mistake.tied);
    }
    case 'one-slot-off':
      // Strings just knotted are not taken up again by an oversight.
      if (mistake.towards === 'left' && mistake.place > 0) return weight * RARER * RARER;
      return mistake.span === 'knot' ? weight * RARER : weight;
    case 'swapped-strings':
      return weight / Math.max(1, Math.abs(mistake.slot - mistake.other));
    default:
      return weight;
  }
}

/** Most like is the mirror image of a knot, then one that differs in its second half only. */
function closeness(written: KnotKind, tied: KnotKind): number {
  const [one, other] = [halvesOf(written), halvesOf(tied)];
  if (one[0] !== other[0] && one[1] !== other[1]) return 1;
  return one[0] === other[0] ? 0.6 : 0.4;
}
