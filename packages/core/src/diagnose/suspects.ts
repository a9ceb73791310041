import { type Mistake, movesRows } from '../mistakes/mistake.js';
import { possibleMistakes } from '../mistakes/possible.js';
import { rowsTied, sourceOf } from '../mistakes/sequence.js';
import type { Written } from '../mistakes/written.js';

/**
 * Mistakes that could be why a piece first differs where it does: those of that row up to there,
 * of the last knot and the turn before it, and of the first knot after it.
 *
 * @param row,order where it first differs; order is the row's length when only the row as a whole
 * differs
 */
export function* suspects(
  written: Written,
  made: readonly Mistake[],
  row: number,
  order: number,
): Generator<Mistake> {
  const { columns } = written;
  const rows = rowsTied(written.rows, made);
  const whole = order >= columns;
  const from = (at: number, first: number, last: number): Generator<Mistake> =>
    possibleMistakes(written, at, sourceOf(at, made), rows, { first, last });
  if (row >= rows) return;
  if (row > 0 && (whole || order <= 1)) yield* from(row - 1, columns - 1, columns - 1);
  // A mistake shows at its own knot or after it, but for one that makes a change early.
  // The nearest come first, so that in a very wide piece they are tried at all.
  for (let at = Math.min(columns - 1, order + 1); at >= 0; at--) yield* from(row, at, at);
  if (!whole && order + 1 < columns - 1) yield* turnOf(from(row, columns - 1, columns - 1));
  if (row + 1 < rows && (whole || order >= columns - 2)) yield* from(row + 1, 0, 0);
}

function* turnOf(mistakes: Generator<Mistake>): Generator<Mistake> {
  for (const mistake of mistakes) if (!('column' in mistake)) yield mistake;
}

/** Rows left out or tied twice, from the nearest row above upwards. */
export function* movedRows(
  written: Written,
  made: readonly Mistake[],
  kind: 'extra-row' | 'missing-row',
  row: number,
): Generator<Mistake> {
  const rows = rowsTied(written.rows, made);
  // A row that moves the rows above another that does would be told in other words.
  const floor = made.reduce((low, slip) => (movesRows(slip) ? Math.max(low, slip.row) : low), 0);
  const first = kind === 'extra-row' ? Math.max(1, floor) : floor;
  if (kind === 'missing-row' && rows < 2) return;
  for (let at = Math.min(row, rows); at >= first; at--) yield { kind, row: at };
}
