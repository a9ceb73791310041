import { InputError, printDiagonalDocument, printDiagonalText } from '@halfhitch/core';
import {
  type DiagonalSolution,
  type SolveOptions,
  type SolvePreference,
  solveDiagonal,
} from '@halfhitch/core/solve';
import { ExitCode } from '../exit-code.js';
import { inputName } from '../files/read-input.js';
import { keepInputs, writeOutput } from '../files/write-output.js';
import { say } from '../say.js';
import { solutionAsJson } from '../solve/as-json.js';
import { solutionAsText } from '../solve/as-text.js';
import { showProgress } from '../solve/progress.js';
import { coloursOfKeys, readWanted } from '../solve/read-wanted.js';

export interface SolveCommandOptions {
  readonly strings?: number;
  readonly first?: '1' | '2';
  readonly repeat?: boolean;
  readonly start?: string;
  readonly most?: readonly (readonly [string, number])[];
  readonly fewest?: string;
  readonly atMostWrong?: number;
  readonly prefer?: SolvePreference;
  readonly time?: number;
  readonly output?: string;
  readonly json?: boolean;
}

const CODES = {
  solved: ExitCode.fine,
  impossible: ExitCode.differs,
  stopped: ExitCode.stopped,
} as const satisfies Record<DiagonalSolution['status'], ExitCode>;

export async function solve(file: string, options: SolveCommandOptions): Promise<ExitCode> {
  const { output: out, json = false } = options;
  if (out === '-' && json) {
    throw new InputError(
      'two-outputs',
      'The pattern and the answer as JSON cannot both go to standard output.',
      {},
      'The answer holds the pattern; or name a file with -o.',
    );
  }
  if (out !== undefined) await keepInputs(out, [file]);
  const { picture, notices } = await readWanted(file, options);
  const progress = showProgress();
  let solution: DiagonalSolution;
  try {
    solution = await solveDiagonal(picture, {
      ...solveOptions(picture.colours, options),
      onProgress: progress.tell,
    });
  } finally {
    progress.clear();
  }
  const { pattern } = solution;
  if (out !== undefined && pattern !== null) {
    await writeOutput(out, [
      /\.json$/iu.test(out) ? printDiagonalDocument(pattern) : printDiagonalText(pattern),
    ]);
  }
  const text = () => solutionAsText(inputName(file), picture, notices, solution, options);
  if (json) await writeOutput('-', [solutionAsJson(picture, notices, solution)]);
  else if (out !== '-') await writeOutput('-', text());
  else if (solution.status !== 'solved') for (const line of text()) say(line.trimEnd());
  return CODES[solution.status];
}

function solveOptions(
  colours: Parameters<typeof coloursOfKeys>[0],
  { repeat, start, most, fewest, atMostWrong, prefer, time }: SolveCommandOptions,
): SolveOptions {
  const one = (key: string, option: string): number =>
    coloursOfKeys(colours, [key], option)[0] ?? 0;
  const limits = colours.map((): number | null => null);
  for (const [key, limit] of most ?? []) limits[one(key, '--most')] = limit;
  return {
    ...(repeat === undefined ? {} : { repeat }),
    ...(start === undefined ? {} : { start: coloursOfKeys(colours, [...start], '--start') }),
    ...(most === undefined ? {} : { most: limits }),
    ...(fewest === undefined ? {} : { fewestOf: one(fewest, '--fewest') }),
    ...(atMostWrong === undefined ? {} : { atMostWrong }),
    ...(prefer === undefined ? {} : { prefer }),
    ...(time === undefined ? {} : { seconds: time }),
  };
}
