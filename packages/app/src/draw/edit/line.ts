import type { Place } from './place.js';

/**
 * The knots on a straight line, from one end to the other, both included: one for each step of the
 * longer direction, never more than half a knot off the line (Bresenham 1965). Drawn from either
 * end it takes the same knots.
 */
export function linePlaces(from: Place, to: Place): Place[] {
  // Where the line passes just between two knots, which is taken depends on the end begun at.
  const turned = from.row > to.row || (from.row === to.row && from.column > to.column);
  const places = turned ? downwards(to, from) : downwards(from, to);
  return turned ? places.reverse() : places;
}

function downwards(from: Place, to: Place): Place[] {
  const wide = Math.abs(to.column - from.column);
  const high = to.row - from.row;
  const aside = to.column < from.column ? -1 : 1;
  const places: Place[] = [];
  let { row, column } = from;
  let error = wide - high;
  for (;;) {
    places.push({ row, column });
    if (row === to.row && column === to.column) return places;
    const twice = 2 * error;
    if (twice > -high) {
      error -= high;
      column += aside;
    }
    if (twice < wide) {
      error += wide;
      row += 1;
    }
  }
}
