import { InputError } from '@halfhitch/core';
import { cutList, type Swatch, tightMeasures } from '@halfhitch/geometry';
import { cutListAsJson } from '../cut/as-json.js';
import { cutListAsText } from '../cut/as-text.js';
import { cutDiagonal } from '../diagonal/cut.js';
import { ExitCode } from '../exit-code.js';
import { inFile, inputName } from '../files/read-input.js';
import { writeOutput } from '../files/write-output.js';
import { type PlanningOptions, readPatternFile } from '../work.js';

export interface CutCommandOptions extends PlanningOptions {
  readonly tex?: number;
  readonly diameter?: number;
  readonly strands?: number;
  readonly length?: number;
  readonly wrist?: number;
  readonly tails?: number;
  readonly margin?: number;
  readonly workable?: number;
  readonly putUp?: number;
  readonly swatch?: Swatch;
  readonly json?: boolean;
}

export async function cut(file: string, options: CutCommandOptions): Promise<ExitCode> {
  const reading = await readPatternFile(file);
  if (reading.kind === 'diagonal') return cutDiagonal(file, reading.pattern, options);
  const { chart } = reading;
  const { tex, diameter, strands, json, ...rest } = options;
  const thread = {
    ...(tex === undefined ? {} : { tex }),
    ...(diameter === undefined ? {} : { diameter }),
    ...(strands === undefined ? {} : { strands }),
  };
  const measures = tightMeasures(options.edge ?? chart.edge ?? 'straight');
  const list = inFile(file, () => cutList(chart, measures, { ...rest, thread }));
  await writeOutput(
    '-',
    json === true ? [cutListAsJson(list)] : cutListAsText(inputName(file), list),
  );
  return ExitCode.fine;
}

/** Reads `rows,columns,width,length` as it is given on the command line. */
export function parseSwatch(text: string): Swatch {
  const figures = text.split(',').map(Number);
  const [rows, columns, width, length] = figures;
  if (
    figures.length !== 4 ||
    rows === undefined ||
    columns === undefined ||
    width === undefined ||
    length === undefined ||
    figures.some(Number.isNaN)
  ) {
    throw new InputError(
      'swatch',
      `"${text}" does not describe a swatch.`,
      {},
      'Give its rows, columns, width and length in mm, as in --swatch 20,12,24,42.',
    );
  }
  return { rows, columns, width, length };
}
