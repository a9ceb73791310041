import { InputError, printDiagonalTrace, printTrace } from '@halfhitch/core';
import { ExitCode } from '../exit-code.js';
import { keepInputs, writeOutput } from '../files/write-output.js';
import { say } from '../say.js';
import { warnIfWrong } from '../warn-if-wrong.js';
import { type PlanningOptions, planFile } from '../work.js';

export interface TraceOptions extends PlanningOptions {
  readonly output: string;
}

export async function trace(file: string, options: TraceOptions): Promise<ExitCode> {
  await keepInputs(options.output, [file]);
  const work = await planFile(file, options);
  // A chart with knots of its own may ask for one that cannot be tied: the trace ends before it.
  let stopped: InputError | null = null;
  await writeOutput(
    options.output,
    (function* () {
      try {
        if (work.kind === 'alpha') yield* printTrace(work.plan);
        else yield* printDiagonalTrace(work.plan);
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        stopped = error;
      }
    })(),
  );
  const code = warnIfWrong(file, work);
  if (stopped === null) return code;
  say(`The trace stops before its end. ${(stopped as InputError).message}`);
  return ExitCode.differs;
}
