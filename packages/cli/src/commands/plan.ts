import {
  diagonalInstructionsHtml,
  diagonalInstructionsText,
  instructionsHtml,
  instructionsText,
  printDiagonalPlan,
  printPlan,
} from '@halfhitch/core';
import type { ExitCode } from '../exit-code.js';
import { inFile } from '../files/read-input.js';
import { keepInputs, type Piece, writeOutput } from '../files/write-output.js';
import { warnIfWrong } from '../warn-if-wrong.js';
import { type DiagonalWork, type PlanningOptions, planFile, type Work } from '../work.js';

export const PLAN_FORMATS = ['text', 'json', 'html'] as const;
export type PlanFormat = (typeof PLAN_FORMATS)[number];

export interface PlanCommandOptions extends PlanningOptions {
  readonly format: PlanFormat;
  readonly output: string;
}

export async function plan(file: string, options: PlanCommandOptions): Promise<ExitCode> {
  await keepInputs(options.output, [file]);
  const work = await planFile(file, options);
  const pieces = inFile(file, () =>
    started(
      work.kind === 'alpha'
        ? piecesOf(work, options.format)
        : diagonalPiecesOf(work, options.format),
    ),
  );
  await writeOutput(options.output, pieces);
  return warnIfWrong(file, work);
}

function* piecesOf({ plan, chart, verification }: Work, format: PlanFormat): Generator<Piece> {
  switch (format) {
    case 'json':
      yield* printPlan(plan);
      return;
    case 'html':
      yield* instructionsHtml(plan, chart, verification);
      return;
    case 'text':
      for (const line of instructionsText(plan, chart, verification)) yield `${line}\n`;
  }
}

function* diagonalPiecesOf(
  { plan, pattern, verification }: DiagonalWork,
  format: PlanFormat,
): Generator<Piece> {
  switch (format) {
    case 'json':
      yield* printDiagonalPlan(plan);
      return;
    case 'html':
      yield* diagonalInstructionsHtml(plan, pattern, verification);
      return;
    case 'text':
      for (const line of diagonalInstructionsText(plan, pattern, verification)) yield `${line}\n`;
  }
}

/** Makes the first piece at once, so that a refusal comes before anything is written. */
function started(pieces: Generator<Piece>): Iterable<Piece> {
  const first = pieces.next();
  return (function* () {
    if (first.done) return;
    yield first.value;
    yield* pieces;
  })();
}
