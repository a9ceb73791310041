import { Op, type StepList } from '../../model/steplist.js';
import { StepPrinter } from '../../plan/print.js';
import type { DiagonalPlan } from '../plan.js';

export const DIAGONAL_PLAN_FORMAT = 'halfhitch-diagonal-plan';
export const DIAGONAL_PLAN_VERSION = 1;

/**
 * Prints the plan of a diagonal pattern as a document, in pieces: the head, then a row at a time, one
 * step a line. Joined, a long plan may be more than one string can hold.
 */
export function* printDiagonalPlan(plan: DiagonalPlan): Generator<string> {
  yield head(plan);
  const printer = new StepPrinter(plan);
  let row = 0;
  let first = 0;
  do {
    const end = endOfRow(plan.steps, row, first);
    const lines = printer.lines(first, end);
    const body = lines.length === 0 ? '' : `\n${lines.join(',\n')}\n    `;
    yield `${row === 0 ? '' : ',\n'}    {"row": ${row + 1}, "steps": [${body}]}`;
    first = end;
    row++;
  } while (first < plan.steps.length);
  yield '\n  ]\n}\n';
}

/** A row begins with the turn before it, but for the first. */
function endOfRow({ op, length }: StepList, row: number, first: number): number {
  let i = row === 0 ? first : first + 1;
  while (i < length && op[i] !== Op.turn) i++;
  return i;
}

function head({ name, lattice, strings }: DiagonalPlan): string {
  const lines = strings.map(
    (string) =>
      `    {"id": ${JSON.stringify(string.id)}, "colour": "${string.colour}", "name": ${JSON.stringify(string.name)}}`,
  );
  return `{
  "format": "${DIAGONAL_PLAN_FORMAT}",
  "version": ${DIAGONAL_PLAN_VERSION},
  "name": ${JSON.stringify(name)},
  "lattice": {"rows": ${lattice.rows}, "first": ${lattice.first + 1}},
  "strings": [
${lines.join(',\n')}
  ],
  "rows": [
`;
}
