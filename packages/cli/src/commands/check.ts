import { diagonalReport } from '../diagonal/report.js';
import type { ExitCode } from '../exit-code.js';
import { inputName } from '../files/read-input.js';
import { report } from '../report.js';
import { noDiagonalOptions, type PlanningOptions, planFile } from '../work.js';

export interface CheckOptions extends PlanningOptions {
  readonly json?: boolean;
  readonly order?: boolean;
}

export async function check(file: string, options: CheckOptions): Promise<ExitCode> {
  const work = await planFile(file, options);
  const json = options.json ?? false;
  if (work.kind === 'diagonal') {
    return diagonalReport(inputName(file), work, { json, order: options.order ?? false });
  }
  noDiagonalOptions(options);
  const { chart, notices, verification } = work;
  return report(inputName(file), chart, notices, verification, json);
}
