/** Where in a row a new lead takes over. A colour's first use is said beside this, not instead. */
export type ChangePlace = 'withinRow' | 'afterFirstKnot' | 'lastKnot' | 'turn';

/**
 * Where a hand-over falls, by the place in its row of the first knot of the new lead.
 *
 * In a chart two knots wide the second knot is both the one after the first and the last; how
 * the old lead must leave follows from the last, so that is what it counts as. In a chart one
 * knot wide every hand-over is at a turn.
 *
 * @param order place of the knot in its row in the order of knotting, from 0
 * @param columns knots in a row
 */
export function changePlace(order: number, columns: number): ChangePlace {
  if (order === 0) return 'turn';
  if (order === columns - 1) return 'lastKnot';
  return order === 1 ? 'afterFirstKnot' : 'withinRow';
}
