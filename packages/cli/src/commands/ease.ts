import { bestWay, easier } from '@halfhitch/core';
import { easeAsJson } from '../ease/as-json.js';
import { easeAsText } from '../ease/as-text.js';
import { ExitCode } from '../exit-code.js';
import { inFile, inputName } from '../files/read-input.js';
import { writeOutput } from '../files/write-output.js';
import { type PlanningOptions, readChartFile } from '../work.js';

export interface EaseCommandOptions extends PlanningOptions {
  readonly most?: number;
  readonly mayMirror?: boolean;
  readonly json?: boolean;
}

export async function ease(file: string, options: EaseCommandOptions): Promise<ExitCode> {
  const { chart } = await readChartFile(file, 'ease');
  const edge = options.edge ?? chart.edge ?? 'straight';
  const start = options.start ?? chart.start ?? 'left';
  const { most, mayMirror = false } = options;
  const [reading, way] = inFile(file, () => [
    easier(chart, { edge, start }, most === undefined ? {} : { most }),
    bestWay(chart, { edge, start, mayMirror }),
  ]);
  await writeOutput(
    '-',
    options.json === true
      ? [easeAsJson(chart, reading, way)]
      : easeAsText(inputName(file), chart, reading, way),
  );
  return reading.ok ? ExitCode.fine : ExitCode.differs;
}
