import { firstSlotOf, knotsAcross, knotsInRow } from './lattice.js';
import type { DiagonalPattern } from './pattern.js';
import { BARE, type DiagonalPicture } from './picture.js';

/** Entry where no string ties or is held, as no knot is there. */
export const NO_STRING_HERE = 0xffff;

/** What a diagonal pattern knots. Strings are named by the slot in which they hang at the start. */
export interface DiagonalReading {
  readonly pattern: DiagonalPattern;
  readonly picture: DiagonalPicture;
  /** String that ties each knot; `rows x knotsAcross`. */
  readonly tying: Uint16Array;
  /** String that each knot is tied onto. */
  readonly held: Uint16Array;
  /** String in each slot before each row, and after the last: `(rows + 1) x strings`. */
  readonly order: Uint16Array;
}

/** By kind, in the order of KNOT_KINDS: whether the left string ties. */
export const LEFT_TIES: readonly boolean[] = [true, false, true, false];

/** By kind, in the order of KNOT_KINDS: whether the two strings change places. */
export const PLACES_CHANGE: readonly boolean[] = [true, true, false, false];

/**
 * Knots a pattern on paper: which string ties where, the colour each knot shows, and the order of
 * the strings after every row.
 */
export function simulateDiagonal(pattern: DiagonalPattern): DiagonalReading {
  const { strings, rows, knots, start } = pattern;
  const across = knotsAcross(pattern);
  const cells = new Uint8Array(rows * across).fill(BARE);
  const tying = new Uint16Array(rows * across).fill(NO_STRING_HERE);
  const held = new Uint16Array(rows * across).fill(NO_STRING_HERE);
  const order = new Uint16Array((rows + 1) * strings);
  for (let slot = 0; slot < strings; slot++) order[slot] = slot;
  for (let row = 0; row < rows; row++) {
    const before = row * strings;
    const after = before + strings;
    order.copyWithin(after, before, after);
    const first = firstSlotOf(pattern, row);
    const count = knotsInRow(pattern, row);
    for (let place = 0; place < count; place++) {
      const cell = row * across + place;
      const kind = knots[cell] as number;
      if (kind > 3) continue;
      const slot = after + first + 2 * place;
      const left = order[slot] as number;
      const right = order[slot + 1] as number;
      const ties = LEFT_TIES[kind] ? left : right;
      tying[cell] = ties;
      held[cell] = left + right - ties;
      cells[cell] = start[ties] as number;
      if (PLACES_CHANGE[kind]) {
        order[slot] = right;
        order[slot + 1] = left;
      }
    }
  }
  const { name, colours, first } = pattern;
  return { pattern, picture: { name, strings, rows, first, colours, cells }, tying, held, order };
}
