import { type Chart, drawFabric, type EdgeTechnique, planAlpha, verifyPlan } from '@halfhitch/core';
import { tightMeasures } from '@halfhitch/geometry';
import type { KnotChoice } from '../work/messages.js';
import { MOST_KNOTS_DRAWN } from './limits.js';

/** The chart knotted, as an SVG; null where it has too many knots to be drawn at once. */
export function drawKnotted(chart: Chart, choice: KnotChoice): string | null {
  if (chart.rows * chart.columns > MOST_KNOTS_DRAWN) return null;
  const plan = planAlpha(chart, choice);
  return drawFabric({ plan, verification: verifyPlan(plan, chart) });
}

/** Width of a knot by its height, of tightened knots of one thread. */
export function knotAspect(edge: EdgeTechnique): number {
  const { pitch, rowHeight } = tightMeasures(edge);
  return pitch / rowHeight;
}
