import { type Chart, drawFabric, type EdgeTechnique, planAlpha, verifyPlan } from '@halfhitch/core';
import { tightMeasures } from '@halfhitch/geometry/thread';
import type { KnotChoice } from '../work/messages.js';
import { MOST_KNOTS_DRAWN } from './limits.js';
import { SAMPLE } from './sample.js';

/**
 * The kind of each knot as the chart is tied, an index into KNOT_KINDS or 255 for none; null where
 * there are too many knots to be worked out while the maker waits.
 */
export function kindsOf(chart: Chart, choice: KnotChoice): Uint8Array | null {
  if (chart.rows * chart.columns > MOST_KNOTS_DRAWN) return null;
  return verifyPlan(planAlpha(chart, choice), chart).kinds;
}

/** A piece of one colour with every kind of knot in it, drawn as thread: an SVG. */
export function drawSample(hex: string): string {
  const { rows, columns } = SAMPLE;
  const chart: Chart = {
    name: '',
    rows,
    columns,
    colours: [{ key: 'a', hex, name: '' }],
    cells: new Uint8Array(rows * columns),
  };
  const plan = planAlpha(chart, { edge: 'straight', start: 'left' });
  return drawFabric({ plan, verification: verifyPlan(plan, chart) });
}

/** Width of a knot by its height, of tightened knots of one thread. */
export function knotAspect(edge: EdgeTechnique): number {
  const { pitch, rowHeight } = tightMeasures(edge);
  return pitch / rowHeight;
}
