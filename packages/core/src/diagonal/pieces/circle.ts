import { modulo } from './build.js';

/**
 * Where every knot exchanges its two strings, a string goes a slot to the right in every row, waits
 * a row at the edge, and comes back: it goes round a circle of `2 x strings` steps, of which the
 * first half runs to the right and the other to the left. The strings stand on every other step.
 * Turning all knots of a row into ones that do not exchange has the circle turn the other way.
 */

/**
 * Step of the circle on which the string in a slot stands before the first row, from 0 up to
 * `2 x strings`.
 *
 * @param slot from 0
 * @param tying the side of the pairs of the first row on which the strings hang that tie
 */
export function stepOnCircle(
  slot: number,
  strings: number,
  first: 0 | 1,
  tying: 'left' | 'right',
): number {
  const isLeft = modulo(slot - first, 2) === 0;
  const pair = isLeft ? slot : slot - 1;
  const ties = isLeft === (tying === 'left');
  return modulo(ties ? pair : 2 * strings - 2 - pair, 2 * strings);
}
