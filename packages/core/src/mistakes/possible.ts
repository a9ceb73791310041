import { KNOT_KINDS } from '../model/knot.js';
import { Op } from '../model/steplist.js';
import { directionOf } from '../plan/plan.js';
import type { Mistake } from './mistake.js';
import { kindAt } from './script.js';
import { NO_ROUTE, type Written } from './written.js';

/** Which knots of a row, by their place in the order of knotting. */
export interface OrderRange {
  readonly first: number;
  readonly last: number;
}

/**
 * Every mistake that can be made in a row of the piece, and at the turn after it; those that
 * move rows are not among them. What two names would stand for is listed once: another lead at a
 * single knot beside its own run is an early or a late change.
 *
 * @param row row of the piece
 * @param source the row of the instructions that it follows
 * @param rows rows of the piece
 */
export function* possibleMistakes(
  written: Written,
  row: number,
  source: number,
  rows: number,
  range: OrderRange = { first: 0, last: written.columns - 1 },
): Generator<Mistake> {
  const { columns } = written;
  const right = directionOf(written.plan.start, row) === 'right';
  const columnAt = (order: number) => (right ? order : columns - 1 - order);
  const leadAt = (order: number) => written.lead[source * columns + columnAt(order)];
  const flipped = (row - source) % 2 !== 0;
  for (let order = range.first; order <= range.last; order++) {
    const column = columnAt(order);
    const at = { row, column };
    const planned = written.kind[source * columns + column] as number;
    const kind = kindAt(flipped && planned < 2 ? 1 - planned : planned);
    for (const tied of KNOT_KINDS) if (tied !== kind) yield { kind: 'wrong-kind', ...at, tied };
    if (order < columns - 1) yield { kind: 'skipped-string', ...at };
    const turns =
      columns > 1 && ((order === 0 && row > 0) || (order === columns - 1 && row < rows - 1));
    if (!turns) yield { kind: 'missing-knot', ...at };
    yield { kind: 'doubled-knot', ...at };
    yield { kind: 'half-knot', ...at };
    const lead = leadAt(order);
    const before = order > 0 ? leadAt(order - 1) : lead;
    const after = order < columns - 1 ? leadAt(order + 1) : lead;
    if (before !== lead) {
      yield { kind: 'late-change', ...at };
      // Of the last knot alone, a long run is a late change.
      if (order < columns - 1) yield { kind: 'long-run', ...at };
    }
    if (after !== lead) {
      yield { kind: 'early-change', ...at };
      if (order < columns - 2) yield { kind: 'short-run', ...at };
    }
    yield* otherLeads(written, at, lead, before, after, order);
    const edge = order === 0 || order === columns - 1;
    if (columns === 1) continue;
    if (edge) {
      if (changesAt(written, row, source, order, before, lead))
        yield { kind: 'caught-at-edge', ...at };
    } else if (before !== lead) yield { kind: 'not-caught', ...at };
  }
  if (columns > 1 && row < rows - 1 && range.last === columns - 1) {
    yield { kind: 'single-edge-knot', row, lacking: 'end' };
    yield { kind: 'single-edge-knot', row, lacking: 'start' };
    yield { kind: 'other-edge', row };
  }
}

function* otherLeads(
  written: Written,
  at: { row: number; column: number },
  lead: number | undefined,
  before: number | undefined,
  after: number | undefined,
  order: number,
): Generator<Mistake> {
  const colour = written.colourOf[lead ?? 0];
  for (const other of written.leadOfColour) {
    const its = written.colourOf[other];
    if (its === colour) continue;
    const id = written.plan.strings[other]?.id ?? '';
    const neighbour = [before, after].some(
      (beside) => beside !== lead && written.colourOf[beside ?? 0] === its,
    );
    if (!neighbour) yield { kind: 'wrong-lead', ...at, lead: id, span: 'knot' };
    const begins = order === 0 || before !== lead;
    if (begins && after === lead && order < written.columns - 1) {
      yield { kind: 'wrong-lead', ...at, lead: id, span: 'run' };
    }
  }
}

/** Whether the lead changes at an edge knot, as far as the instructions say. */
function changesAt(
  written: Written,
  row: number,
  source: number,
  order: number,
  before: number | undefined,
  lead: number | undefined,
): boolean {
  if (order > 0) return before !== lead;
  if (row === 0 || source === 0) return false;
  const { columns } = written;
  const right = directionOf(written.plan.start, row) === 'right';
  const cell = source * columns + (right ? 0 : columns - 1);
  const route = written.route[cell] as number;
  if ((row - source) % 2 === 0) return route !== NO_ROUTE && route !== Op.parkThrough;
  return written.lead[(source - 1) * columns + (right ? 0 : columns - 1)] !== lead;
}
