import { type DiagonalPattern, InputError } from '@halfhitch/core';
import { diagonalCutList } from '@halfhitch/geometry';
import type { CutCommandOptions } from '../commands/cut.js';
import { ExitCode } from '../exit-code.js';
import { inFile, inputName } from '../files/read-input.js';
import { writeOutput } from '../files/write-output.js';
import { noAlphaOptions } from '../work.js';
import { diagonalCutListAsJson } from './cut-as-json.js';
import { diagonalCutListAsText } from './cut-as-text.js';

/** Says how much thread to cut for each string of a diagonal pattern. */
export async function cutDiagonal(
  file: string,
  pattern: DiagonalPattern,
  options: CutCommandOptions,
): Promise<ExitCode> {
  const { tex, diameter, strands, json, workable, swatch, edge, start, ...rest } = options;
  const list = inFile(file, () => {
    noAlphaOptions(options);
    if (workable !== undefined) {
      throw new InputError(
        'option-for-charts',
        '--workable is for charts: in a diagonal pattern every string goes through the whole piece, so none is joined.',
        {},
        'Leave out --workable.',
      );
    }
    const thread = {
      ...(tex === undefined ? {} : { tex }),
      ...(diameter === undefined ? {} : { diameter }),
      ...(strands === undefined ? {} : { strands }),
    };
    if (swatch === undefined) return diagonalCutList(pattern, { ...rest, thread });
    const { columns, ...measured } = swatch;
    return diagonalCutList(pattern, {
      ...rest,
      thread,
      swatch: { ...measured, strings: columns },
    });
  });
  await writeOutput(
    '-',
    json === true ? [diagonalCutListAsJson(list)] : diagonalCutListAsText(inputName(file), list),
  );
  return ExitCode.fine;
}
