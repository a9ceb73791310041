import { InputError, printTrace } from '@halfhitch/core';
import { ExitCode } from '../exit-code.js';
import { inputName } from '../files/read-input.js';
import { keepInputs, writeOutput } from '../files/write-output.js';
import { warnIfWrong } from '../report.js';
import { say } from '../say.js';
import { type PlanningOptions, planChart } from '../work.js';

export interface TraceOptions extends PlanningOptions {
  readonly output: string;
}

export async function trace(file: string, options: TraceOptions): Promise<ExitCode> {
  await keepInputs(options.output, [file]);
  const { plan, verification } = await planChart(file, options);
  // A chart with knots of its own may ask for one that cannot be tied: the trace ends before it.
  let stopped: InputError | null = null;
  await writeOutput(
    options.output,
    (function* () {
      try {
        yield* printTrace(plan);
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        stopped = error;
      }
    })(),
  );
  const code = warnIfWrong(inputName(file), verification);
  if (stopped === null) return code;
  say(`The trace stops before its end. ${(stopped as InputError).message}`);
  return ExitCode.differs;
}
