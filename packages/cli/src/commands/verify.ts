import { InputError, readPlan, verifyPlan } from '@halfhitch/core';
import { verifyDiagonalPlan } from '../diagonal/verify.js';
import type { ExitCode } from '../exit-code.js';
import { saysDiagonal } from '../files/document-format.js';
import { inFile, inputName, readPlanText } from '../files/read-input.js';
import { report } from '../report.js';
import { noDiagonalOptions, readPatternFile } from '../work.js';

export interface VerifyCommandOptions {
  readonly chart: string;
  readonly json?: boolean;
  readonly order?: boolean;
}

/** Judges a plan by its steps alone; no plan is made here. */
export async function verify(file: string, options: VerifyCommandOptions): Promise<ExitCode> {
  if (file === '-' && options.chart === '-') {
    throw new InputError(
      'standard-input-twice',
      'The plan and the chart cannot both come from standard input.',
      {},
      'Give one of them as a file.',
    );
  }
  const text = await readPlanText(file);
  if (saysDiagonal(text)) return verifyDiagonalPlan(file, text, options);
  const reading = await readPatternFile(options.chart);
  if (reading.kind === 'diagonal') {
    throw new InputError(
      'diagonal-not-chart',
      'This is a diagonal pattern, but the plan is of a chart.',
      { file: inputName(options.chart) },
      'Give the chart that the plan was made for.',
    );
  }
  noDiagonalOptions(options);
  const { chart, notices } = reading;
  const verification = inFile(file, () => verifyPlan(readPlan(text), chart));
  return report(inputName(file), chart, notices, verification, options.json ?? false);
}
