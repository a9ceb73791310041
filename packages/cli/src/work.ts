import {
  type ChartReading,
  type DiagonalPattern,
  type DiagonalPlan,
  type DiagonalVerification,
  type EdgeTechnique,
  InputError,
  type PatternReading,
  type Plan,
  planAlpha,
  planDiagonal,
  readPattern,
  type StartSide,
  simulateDiagonal,
  type Verification,
  verifyDiagonal,
  verifyPlan,
} from '@halfhitch/core';
import { inFile, readChartBytes } from './files/read-input.js';

export interface PlanningOptions {
  readonly edge?: EdgeTechnique;
  readonly start?: StartSide;
}

/** A chart, the plan made for it, and what the plan's steps were found to knot. */
export interface Work extends ChartReading {
  readonly kind: 'alpha';
  readonly plan: Plan;
  readonly verification: Verification;
}

/** A diagonal pattern, the plan made for it, and what the plan's steps were found to knot. */
export interface DiagonalWork {
  readonly kind: 'diagonal';
  readonly pattern: DiagonalPattern;
  readonly notices: ChartReading['notices'];
  readonly plan: DiagonalPlan;
  readonly verification: DiagonalVerification;
}

/** Reads a chart or a diagonal pattern, whichever the file holds. */
export async function readPatternFile(file: string): Promise<PatternReading> {
  const bytes = await readChartBytes(file);
  return inFile(file, () => readPattern(bytes, file === '-' ? '' : file));
}

/** @param command what only charts can be given to, for the message */
export async function readChartFile(file: string, command: string): Promise<ChartReading> {
  const reading = await readPatternFile(file);
  if (reading.kind === 'alpha') return reading;
  return inFile(file, () => {
    throw new InputError(
      'diagonal-not-chart',
      `This is a diagonal pattern, and ${command} is for charts.`,
      {},
      'Give a chart: a PNG picture, a text chart or a chart document.',
    );
  });
}

export async function planFile(
  file: string,
  options: PlanningOptions,
): Promise<Work | DiagonalWork> {
  const reading = await readPatternFile(file);
  return inFile(file, () => {
    if (reading.kind === 'alpha') {
      const plan = planAlpha(reading.chart, options);
      return { ...reading, plan, verification: verifyPlan(plan, reading.chart) };
    }
    noAlphaOptions(options);
    const { pattern } = reading;
    const plan = planDiagonal(pattern);
    const { picture } = simulateDiagonal(pattern);
    return { ...reading, plan, verification: verifyDiagonal(plan, picture, { pattern }) };
  });
}

/** @throws InputError when an option is given that only a diagonal pattern has a use for */
export function noDiagonalOptions(options: { readonly order?: boolean }): void {
  if (options.order !== true) return;
  throw new InputError(
    'option-for-diagonal',
    '--order is for diagonal patterns: of a chart, "halfhitch trace" says where every string is.',
    {},
    'Leave out --order.',
  );
}

/** @throws InputError when an option is given that only a chart has a use for */
export function noAlphaOptions(options: PlanningOptions): void {
  const given = options.edge !== undefined ? 'edge' : options.start !== undefined ? 'start' : null;
  if (given === null) return;
  throw new InputError(
    'option-for-charts',
    `--${given} is for charts: a diagonal pattern has no leading strings, so it has no ${given === 'edge' ? 'edge technique' : 'side to start from'}.`,
    {},
    `Leave out --${given}.`,
  );
}
