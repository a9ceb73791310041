import type { Chart } from '../chart/chart.js';
import { InputError } from '../errors.js';
import type { Plan } from '../plan/plan.js';
import { PlanReader } from '../plan/reading.js';
import { printable } from '../printable.js';
import type { Verification } from '../verify/verification.js';
import { instructRow } from './instruct-row.js';
import { instructedRows } from './instructed-rows.js';
import { closingSection, openingSections, type Section } from './opening.js';
import type { RowInstructions } from './parts.js';
import { findingInWords, summaryInWords } from './summary.js';
import { count } from './wording.js';

/**
 * The instructions of a whole piece as lines of text, without line ends. Lines are made as they
 * are asked for, row by row. A plan whose steps cannot all be done is told up to where they can.
 */
export function* instructionsText(
  plan: Plan,
  chart: Chart,
  verification?: Verification,
): Generator<string, void, undefined> {
  const findings = verification?.findings.map(findingInWords) ?? [];
  yield titleOf(plan, chart);
  yield '';
  yield `${count(plan.rows, 'row')} of ${count(plan.columns, 'knot')}, ${plan.edge} edges.`;
  if (verification !== undefined) yield* summaryInWords(verification);
  for (const section of openingSections(plan)) yield* sectionText(section);
  yield* rowsAndEndText(rowsOf(plan), rowText, closingSection(plan), findings);
}

/** The rows one by one, what is left to do when all are tied, and the findings. */
export function* rowsAndEndText<Row>(
  rows: Iterable<Row | InputError>,
  rowText: (row: Row) => Iterable<string>,
  closing: Section,
  findings: readonly string[],
): Generator<string, void, undefined> {
  let stopped = false;
  for (const row of rows) {
    stopped = row instanceof InputError;
    yield '';
    if (row instanceof InputError) yield `The instructions stop here. ${row.message}`;
    else yield* rowText(row);
  }
  if (!stopped) yield* sectionText(closing);
  yield* findingsText(findings);
}

/** The findings, in words, as a list of their own. */
function* findingsText(findings: readonly string[]): Generator<string, void, undefined> {
  if (findings.length === 0) return;
  yield '';
  yield 'Findings';
  for (const finding of findings) yield `  - ${finding}`;
}

/** Title of the instructions, by the first name that is not empty. */
export function titleOf(...named: readonly { readonly name: string }[]): string {
  const name = named.map((one) => printable(one.name)).find((one) => one !== '') ?? '';
  return name === '' ? 'Knotting instructions' : `Knotting instructions: ${name}`;
}

/** Instructions row by row; in place of a row that cannot be read, the error, as the last. */
export function rowsOf(plan: Plan): Generator<RowInstructions | InputError, void, undefined> {
  const reader = new PlanReader(plan);
  return instructedRows(
    plan.rows,
    (row) => reader.row(row),
    (row) => instructRow(row, plan),
  );
}

export function* sectionText(section: Section): Generator<string, void, undefined> {
  yield '';
  yield section.title;
  yield* section.paragraphs;
  for (const point of section.points) yield `  - ${point}`;
}

function* rowText(row: RowInstructions): Generator<string, void, undefined> {
  yield row.heading;
  let number = 0;
  for (const part of row.parts) {
    if (part.kind === 'direction') {
      yield part.text;
      continue;
    }
    number++;
    yield `  ${number}. ${part.text}`;
    for (const [index, substep] of part.substeps.entries()) {
      yield `     ${number}.${index + 1} ${substep}`;
    }
  }
}
