import { InputError } from '../errors.js';

/** Most knots that are drawn in one picture; a browser copes with no more. */
export const MAX_KNOTS_DRAWN = 300_000;

/** @throws InputError above 300,000 knots */
export function checkPictureSize(knots: number): void {
  if (knots <= MAX_KNOTS_DRAWN) return;
  throw new InputError(
    'picture-too-large',
    `A picture of ${knots} knots would be too large to show; the most is ${MAX_KNOTS_DRAWN}.`,
    {},
    'Draw fewer rows, for example one repeat of the pattern.',
  );
}
