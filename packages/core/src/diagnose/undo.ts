import type { Mistake } from '../mistakes/mistake.js';
import type { TiedRow } from '../mistakes/watch.js';
import type { Written } from '../mistakes/written.js';
import { directionOf } from '../plan/plan.js';
import type { Undo } from './diagnosis.js';

/** Where a mistake is put right, in a piece as far as it is knotted. */
export function undoOf(written: Written, tied: readonly TiedRow[], mistake: Mistake): Undo {
  const { columns } = written;
  const [row, order] = placeOf(written, mistake);
  const right = directionOf(written.plan.start, row) === 'right';
  let knots = 0;
  for (let at = row; at < tied.length; at++) {
    const { counts } = tied[at] as TiedRow;
    for (let column = 0; column < columns; column++) {
      const its = right ? column : columns - 1 - column;
      if (at > row || its >= order) knots += counts[column] as number;
    }
  }
  // The first of two knots on one string is right.
  if (mistake.kind === 'doubled-knot' && knots > 0) knots--;
  return { row, column: right ? order : columns - 1 - order, knots };
}

/** The row and the place in the order of knotting at which a piece first goes wrong. */
function placeOf(written: Written, mistake: Mistake): [row: number, order: number] {
  const { columns } = written;
  switch (mistake.kind) {
    case 'single-edge-knot':
      return mistake.lacking === 'end' ? [mistake.row, columns - 1] : [mistake.row + 1, 0];
    case 'other-edge':
      return [mistake.row, columns - 1];
    case 'extra-row':
    case 'missing-row':
      return [mistake.row, 0];
    default: {
      const right = directionOf(written.plan.start, mistake.row) === 'right';
      return [mistake.row, right ? mistake.column : columns - 1 - mistake.column];
    }
  }
}

/** The earlier of two places in the order of knotting is the one with more knots since. */
export function earlier(written: Written, one: Undo, other: Undo): Undo {
  if (one.row !== other.row) return one.row < other.row ? one : other;
  const right = directionOf(written.plan.start, one.row) === 'right';
  const before = right ? one.column <= other.column : one.column >= other.column;
  if (one.column === other.column) return one.knots >= other.knots ? one : other;
  return before ? one : other;
}
