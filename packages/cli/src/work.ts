import {
  type ChartReading,
  type EdgeTechnique,
  type Plan,
  planAlpha,
  readChart,
  type StartSide,
  type Verification,
  verifyPlan,
} from '@halfhitch/core';
import { inFile, readChartBytes } from './files/read-input.js';

export interface PlanningOptions {
  readonly edge?: EdgeTechnique;
  readonly start?: StartSide;
}

/** A chart, the plan made for it, and what the plan's steps were found to knot. */
export interface Work extends ChartReading {
  readonly plan: Plan;
  readonly verification: Verification;
}

export async function readChartFile(file: string): Promise<ChartReading> {
  const bytes = await readChartBytes(file);
  return inFile(file, () => readChart(bytes, file === '-' ? '' : file));
}

export async function planChart(file: string, options: PlanningOptions): Promise<Work> {
  const reading = await readChartFile(file);
  return inFile(file, () => {
    const plan = planAlpha(reading.chart, options);
    return { ...reading, plan, verification: verifyPlan(plan, reading.chart) };
  });
}
