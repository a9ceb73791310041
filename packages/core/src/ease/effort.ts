import type { Chart, EdgeTechnique, StartSide } from '../chart/chart.js';
import { Op } from '../model/steplist.js';
import type { Plan } from '../plan/plan.js';
import { planAlpha } from '../plan/planner.js';
import { LONG_FLOAT, verifyPlan } from '../verify/verify.js';

/** How a chart is to be knotted. */
export interface KnottingChoice {
  readonly edge: EdgeTechnique;
  readonly start: StartSide;
}

/** Seconds that hands take; estimates, since every maker's are others. */
export interface Pace {
  readonly halfHitch: number;
  /** For a colour change, over and above its half hitches. */
  readonly change: number;
}

/** A practised hand's (common practice, no source); the maker's own are better. */
export const USUAL_PACE: Pace = { halfHitch: 3, change: 20 };

/** What a piece asks of the hands. Lengths of floats are in knots, across and down alike. */
export interface Effort {
  readonly knots: number;
  /** Colour changes, as the verifier counts them. */
  readonly changes: number;
  /** Those of them that leave an edge knot alone in its colour within its row. */
  readonly edgeChanges: number;
  /** Leading strings. */
  readonly leads: number;
  readonly floats: number;
  /** Length of all floats together. */
  readonly floatKnots: number;
  /** Floats longer than what is long. */
  readonly longFloats: number;
  /** Estimated time at the given pace. */
  readonly seconds: number;
}

/** What planning a chart and running the plan's steps showed. */
export interface ProvenEffort {
  /** Whether the verifier found nothing wrong. */
  readonly ok: boolean;
  /** Weak findings besides long floats, which the effort counts. */
  readonly weak: number;
  readonly effort: Effort;
}

export interface EffortOptions {
  /** Longest float that is not long, in knots. Default: the verifier's. */
  readonly longFloat?: number;
  readonly pace?: Pace;
}

/** Plans a chart, has the plan verified, and counts what its steps ask of the hands. */
export function effortOf(
  chart: Chart,
  { edge, start }: KnottingChoice,
  options: EffortOptions = {},
): ProvenEffort {
  const longFloat = options.longFloat ?? LONG_FLOAT;
  const pace = options.pace ?? USUAL_PACE;
  const plan = planAlpha(chart, { edge, start });
  const { ok, changes, knots, halfHitches, findings } = verifyPlan(plan, chart, { longFloat });
  const total = changes.withinRow + changes.afterFirstKnot + changes.lastKnot + changes.turn;
  return {
    ok,
    weak: findings.filter(({ grade, code }) => grade === 'weak' && code !== 'long-float').length,
    effort: {
      knots,
      changes: total,
      edgeChanges: changes.afterFirstKnot + changes.lastKnot,
      leads: plan.strings.length - plan.hung.length,
      ...floatsOf(plan, longFloat),
      seconds: halfHitches * pace.halfHitch + total * pace.change,
    },
  };
}

/**
 * The floats of a plan, from where its steps park each lead to where they tie with it again. An
 * old lead rests at the knot tied last; passed behind a knot, it rests at that one.
 */
function floatsOf(
  { steps, strings, hung }: Plan,
  longFloat: number,
): Pick<Effort, 'floats' | 'floatKnots' | 'longFloats'> {
  const { op, a, b, length } = steps;
  const restRow = new Int32Array(strings.length);
  const restColumn = new Int32Array(strings.length);
  // A plan made from a chart hangs its base strings in the order of its table of strings.
  const bases = hung.length;
  let floats = 0;
  let floatKnots = 0;
  let longFloats = 0;
  let row = 0;
  let column = -1;
  let taken = -1;
  let passed = -1;
  for (let i = 0; i < length; i++) {
    const code = op[i] as number;
    const string = a[i] as number;
    if (code === Op.turn) row++;
    else if (code === Op.takeUp) taken = string;
    else if (code === Op.parkBehind) passed = string;
    else if (code === Op.parkThrough || code === Op.parkDown) {
      restRow[string] = row;
      restColumn[string] = column;
    } else if (code === Op.halfForward || code === Op.halfBackward) {
      column = Math.min(b[i] as number, bases - 1);
      if (passed >= 0) {
        restRow[passed] = row;
        restColumn[passed] = column;
        passed = -1;
      }
      if (taken !== string) continue;
      taken = -1;
      const float = Math.hypot(
        row - (restRow[string] as number),
        column - (restColumn[string] as number),
      );
      floats++;
      floatKnots += float;
      if (float > longFloat) longFloats++;
    }
  }
  return { floats, floatKnots, longFloats };
}
