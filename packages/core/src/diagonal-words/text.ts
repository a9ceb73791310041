import type { DiagonalPattern } from '../diagonal/pattern.js';
import type { DiagonalPlan } from '../diagonal/plan.js';
import { DiagonalPlanReader } from '../diagonal/reading.js';
import type { InputError } from '../errors.js';
import { instructedRows } from '../instructions/instructed-rows.js';
import { rowsAndEndText, sectionText, titleOf } from '../instructions/text.js';
import { count } from '../instructions/wording.js';
import { instructDiagonalRow } from './instruct-row.js';
import { closingDiagonalSection, openingDiagonalSections } from './opening.js';
import type { DiagonalRowInstructions } from './parts.js';
import { type DiagonalVerdict, diagonalFindingInWords, diagonalSummaryInWords } from './summary.js';

/**
 * The instructions of a diagonal piece as lines of text, without line ends. Lines are made as
 * they are asked for, row by row. A plan whose steps cannot all be done is told up to where they
 * can.
 */
export function* diagonalInstructionsText(
  plan: DiagonalPlan,
  pattern: DiagonalPattern,
  verdict?: DiagonalVerdict,
): Generator<string, void, undefined> {
  const findings = verdict?.findings.map(diagonalFindingInWords) ?? [];
  yield titleOf(plan, pattern);
  yield '';
  yield sizeInWords(plan);
  if (verdict !== undefined) yield* diagonalSummaryInWords(verdict, pattern);
  for (const section of openingDiagonalSections(plan)) yield* sectionText(section);
  yield* rowsAndEndText(diagonalRowsOf(plan), rowText, closingDiagonalSection(plan), findings);
}

export function sizeInWords({ lattice }: DiagonalPlan): string {
  return `A diagonal pattern: ${count(lattice.rows, 'row')} with ${count(lattice.strings, 'string')}.`;
}

/** Instructions row by row; in place of a row that cannot be read, the error, as the last. */
export function diagonalRowsOf(
  plan: DiagonalPlan,
): Generator<DiagonalRowInstructions | InputError, void, undefined> {
  const reader = new DiagonalPlanReader(plan);
  return instructedRows(
    plan.lattice.rows,
    (row) => reader.row(row),
    (row) => instructDiagonalRow(row, plan),
  );
}

function* rowText(row: DiagonalRowInstructions): Generator<string, void, undefined> {
  yield row.heading;
  let number = 0;
  for (const part of row.parts) {
    if (part.kind === 'row' || part.kind === 'order') {
      yield `  ${part.text}`;
      continue;
    }
    number++;
    yield `  ${number}. ${part.text}`;
    for (const substep of part.substeps) yield `     - ${substep}`;
  }
}
