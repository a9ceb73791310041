import {
  type Alternative,
  type Diagnosis,
  diagnose,
  diagnosisText,
  InputError,
  type Mistake,
  MistakeWords,
  type Plan,
  printable,
  readPlan,
  readSeen,
  type Undo,
} from '@halfhitch/core';
import { diagnoseDiagonalPiece } from '../diagonal/diagnose.js';
import { ExitCode } from '../exit-code.js';
import { saysDiagonal } from '../files/document-format.js';
import { inFile, inputName, readChartBytes, readPlanText } from '../files/read-input.js';
import { writeOutput } from '../files/write-output.js';

export interface DiagnoseCommandOptions {
  readonly seen: string;
  readonly json?: boolean;
}

/** Says what a maker did who follows a plan and sees something else. */
export async function diagnosePiece(
  file: string,
  options: DiagnoseCommandOptions,
): Promise<ExitCode> {
  if (file === '-' && options.seen === '-') {
    throw new InputError(
      'standard-input-twice',
      'The plan and what was seen cannot both come from standard input.',
      {},
      'Give one of them as a file.',
    );
  }
  const text = await readPlanText(file);
  if (saysDiagonal(text)) return diagnoseDiagonalPiece(file, text, options);
  const bytes = await readChartBytes(options.seen);
  const plan = inFile(file, () => readPlan(text));
  const seen = inFile(options.seen, () => readSeen(bytes, '', plan));
  const found = inFile(file, () => diagnose(plan, seen));
  await writeOutput(
    '-',
    options.json === true ? [asJson(plan, seen.rows, found)] : asText(file, plan, found),
  );
  return found.length === 0 ? ExitCode.fine : ExitCode.differs;
}

function* asText(file: string, plan: Plan, found: readonly Diagnosis[]): Generator<string> {
  yield `${printable(inputName(file))}\n`;
  for (const line of diagnosisText(plan, found)) yield `${line}\n`;
}

/** One object on one line; the order of its keys is part of the stable interface. */
function asJson(plan: Plan, rows: number, found: readonly Diagnosis[]): string {
  const words = new MistakeWords(plan);
  const answer = {
    ok: found.length === 0,
    rows,
    columns: plan.columns,
    explanations: found.map((diagnosis) => {
      const all = diagnosis.parts.flatMap(({ alternatives }) => alternatives[0]?.mistakes ?? []);
      return {
        mistakes: diagnosis.mistakes,
        unexplained: diagnosis.unexplained,
        likelihood: rounded(diagnosis.likelihood),
        undo:
          diagnosis.undo === null
            ? null
            : { ...place(diagnosis.undo), steps: words.undo(diagnosis.undo) },
        parts: diagnosis.parts.map(({ alternatives }) => ({
          alternatives: alternatives.map((one) => alternativeAsJson(words, one, all)),
        })),
      };
    }),
  };
  return `${JSON.stringify(answer)}\n`;
}

function alternativeAsJson(words: MistakeWords, one: Alternative, all: readonly Mistake[]): object {
  return {
    likelihood: rounded(one.likelihood),
    undo: place(one.undo),
    mistakes: one.mistakes.map((mistake) => ({
      kind: mistake.kind,
      row: mistake.row + 1,
      column: 'column' in mistake ? mistake.column + 1 : null,
      tied: mistake.kind === 'wrong-kind' ? mistake.tied : null,
      lead: mistake.kind === 'wrong-lead' ? mistake.lead : null,
      span: mistake.kind === 'wrong-lead' ? mistake.span : null,
      lacking: mistake.kind === 'single-edge-knot' ? mistake.lacking : null,
      message: words.what(mistake, all),
      goOn: words.goOn(mistake, all),
    })),
  };
}

function place({ row, column, knots }: Undo): { row: number; column: number; knots: number } {
  return { row: row + 1, column: column + 1, knots };
}

function rounded(share: number): number {
  return Math.round(share * 10_000) / 10_000;
}
