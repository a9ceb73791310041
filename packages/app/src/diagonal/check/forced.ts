import type { ForcedKnots } from '@halfhitch/core/solve';
import { figures } from '../../view/figures.js';
import { placeOf } from '../edit/places.js';
import type { LatticeMark } from '../lattice/look.js';
import { kindInWords } from '../lattice/words.js';
import type { DiagonalPiece } from '../work/messages.js';

/** Knots that are of one kind in every pattern that shows the picture. */
export function forcedMarks({ pattern }: DiagonalPiece, { kinds }: ForcedKnots): LatticeMark[] {
  return Array.from(kinds).flatMap((bits, at): LatticeMark[] => {
    if (bits === 0 || (bits & (bits - 1)) !== 0) return [];
    const message = `Only a ${kindInWords(Math.log2(bits))} shows this picture here.`;
    return [{ ...placeOf(pattern, at), what: 'found', message }];
  });
}

/** How much of a piece its picture alone decides. */
export function forcedInWords({ status, forced }: ForcedKnots, knots: number): string {
  const all = `${figures(forced)} of ${figures(knots)}`;
  const rest = 'They have a dotted frame; each of the others could be of another kind too.';
  if (status === 'stopped') {
    return `The time ran out. ${all} knots can be of one kind only, as far as was read. ${rest}`;
  }
  return forced === 0
    ? 'None: each knot could be of another kind in some pattern that shows the same picture.'
    : `${all} knots can be of one kind only. ${rest}`;
}
