import { InputError, readPlan, verifyPlan } from '@halfhitch/core';
import type { ExitCode } from '../exit-code.js';
import { inFile, inputName, readPlanText } from '../files/read-input.js';
import { report } from '../report.js';
import { readChartFile } from '../work.js';

export interface VerifyCommandOptions {
  readonly chart: string;
  readonly json?: boolean;
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
  const { chart, notices } = await readChartFile(options.chart);
  const text = await readPlanText(file);
  const verification = inFile(file, () => verifyPlan(readPlan(text), chart));
  return report(inputName(file), chart, notices, verification, options.json ?? false);
}
