import {
  ANY_COLOUR,
  BARE,
  type DiagonalPicture,
  firstSlotOf,
  knotsAcross,
  knotsInRow,
} from '../../src/index.js';

export interface Conditions {
  readonly start?: ArrayLike<number>;
  readonly repeat?: boolean;
  readonly most?: readonly (number | null)[];
}

/**
 * The fewest wrong knots with which a picture can be knotted, by going through every order of
 * colours that the strings can hang in, row after row. Written apart from the solver, to hold its
 * answers against; exact, and only for few strings: there are colours^strings orders.
 */
export function fewestWrong(picture: DiagonalPicture, conditions: Conditions = {}): number {
  const { strings, colours } = picture;
  const starts: number[][] = [[]];
  for (let slot = 0; slot < strings; slot++) {
    const fixed = conditions.start?.[slot] ?? ANY_COLOUR;
    const choices = fixed === ANY_COLOUR ? colours.map((_, colour) => colour) : [fixed];
    starts.splice(
      0,
      starts.length,
      ...starts.flatMap((start) => choices.map((colour) => [...start, colour])),
    );
  }
  const allowed = starts.filter((start) =>
    colours.every((_, colour) => {
      const limit = conditions.most?.[colour] ?? null;
      return limit === null || start.filter((one) => one === colour).length <= limit;
    }),
  );
  if (conditions.repeat !== true) {
    return Math.min(...ends(picture, new Map(allowed.map((start) => [start.join(), 0]))).values());
  }
  return Math.min(
    ...allowed.map((start) => {
      const end = ends(picture, new Map([[start.join(), 0]]));
      return end.get(start.join()) ?? Number.POSITIVE_INFINITY;
    }),
  );
}

/** From orders with the wrong knots so far to the orders after the last row with theirs. */
function ends(picture: DiagonalPicture, starts: Map<string, number>): Map<string, number> {
  let states = starts;
  for (let row = 0; row < picture.rows; row++) {
    const first = firstSlotOf(picture, row);
    for (let place = 0; place < knotsInRow(picture, row); place++) {
      const wanted = picture.cells[row * knotsAcross(picture) + place] as number;
      if (wanted === BARE) continue;
      const next = new Map<string, number>();
      for (const [key, wrong] of states) {
        const order = key.split(',').map(Number);
        const slot = first + 2 * place;
        const [left, right] = [order[slot] as number, order[slot + 1] as number];
        const shows = wanted === ANY_COLOUR || wanted === left || wanted === right;
        for (const pair of [
          [left, right],
          [right, left],
        ]) {
          const after = [...order.slice(0, slot), ...pair, ...order.slice(slot + 2)].join();
          const cost = wrong + (shows ? 0 : 1);
          if (cost < (next.get(after) ?? Number.POSITIVE_INFINITY)) next.set(after, cost);
        }
      }
      states = next;
    }
  }
  return states;
}
