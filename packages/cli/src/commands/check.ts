import type { ExitCode } from '../exit-code.js';
import { inputName } from '../files/read-input.js';
import { report } from '../report.js';
import { type PlanningOptions, planChart } from '../work.js';

export interface CheckOptions extends PlanningOptions {
  readonly json?: boolean;
}

export async function check(file: string, options: CheckOptions): Promise<ExitCode> {
  const { chart, notices, verification } = await planChart(file, options);
  return report(inputName(file), chart, notices, verification, options.json ?? false);
}
