import type { Chart } from '../chart/chart.js';
import { InputError } from '../errors.js';
import type { Plan } from '../plan/plan.js';
import { reportRepeat, reportSingleEdges, reportUnreached } from './closing.js';
import { Follower } from './follower.js';
import { FindingLog } from './log.js';
import { Technique } from './technique.js';
import type { Verification } from './verification.js';

/**
 * A float longer than this many knots is reported. Common practice, no source: knitters and
 * knotters alike catch or avoid floats longer than about an inch, some dozen knots of thin cord.
 */
export const LONG_FLOAT = 10;

export interface VerifyOptions {
  /** Longest float that is not reported, in knots. Default: 10. */
  readonly longFloat?: number;
}

/**
 * Says what a plan's steps knot, and whether that is the drawing. Knows no planner: it runs the
 * steps through the state machine and judges what comes of them.
 *
 * @throws InputError when the plan is for a chart of another size, so that nothing can be compared
 */
export function verifyPlan(plan: Plan, chart: Chart, options: VerifyOptions = {}): Verification {
  if (plan.rows !== chart.rows || plan.columns !== chart.columns) {
    throw new InputError(
      'other-chart',
      `The plan is for ${plan.rows} rows of ${plan.columns} knots, but the chart has ${chart.rows} rows of ${chart.columns}.`,
      {},
      'Give the chart that the plan was made from.',
    );
  }
  if (plan.hung.length !== plan.columns) {
    throw new InputError(
      'base-strings',
      `The plan hangs ${plan.hung.length} base strings for ${plan.columns} columns.`,
      {},
      'A plan needs one base string for each column.',
    );
  }
  const log = new FindingLog();
  const technique = new Technique(plan.edge, plan.start, plan.columns);
  const follower = new Follower(plan, chart, technique, log, options.longFloat ?? LONG_FLOAT);
  follower.run();
  reportUnreached(follower, chart.rows);
  reportSingleEdges(follower, technique, chart.rows, log);
  if (log.wrong === 0) reportRepeat(plan, follower, technique, log);
  return {
    ok: log.wrong === 0,
    rows: chart.rows,
    columns: chart.columns,
    knots: follower.knots,
    halfHitches: follower.halfHitches,
    changes: { ...follower.handOvers.counts },
    findings: log.finish(),
    tying: follower.tying,
    kinds: follower.kinds,
  };
}
