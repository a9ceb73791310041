import { LEFT_TIES, PLACES_CHANGE } from '../diagonal/simulate.js';

/** Every set of kinds, as bits in the order of KNOT_KINDS. */
export const ALL_KINDS = 0b1111;

/**
 * The kinds of a knot between wires of these colours that show `wanted`, as bits in the order of
 * KNOT_KINDS; `wanted` below 0 stands for any colour.
 */
export function kindsBetween(
  left: number,
  right: number,
  belowLeft: number,
  belowRight: number,
  wanted: number,
): number {
  let kinds = 0;
  for (let kind = 0; kind < 4; kind++) {
    if (wanted >= 0 && (LEFT_TIES[kind] ? left : right) !== wanted) continue;
    const [first, second] = PLACES_CHANGE[kind] ? [right, left] : [left, right];
    if (first === belowLeft && second === belowRight) kinds |= 1 << kind;
  }
  return kinds;
}
