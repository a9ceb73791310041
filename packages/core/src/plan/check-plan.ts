import { CHART_LIMITS } from '../chart/chart.js';
import { checkCount } from '../chart/check-chart.js';
import { InputError } from '../errors.js';
import { Fault, faultInWords } from '../model/fault.js';
import { Machine } from '../model/machine.js';
import { Op } from '../model/steplist.js';
import type { Plan } from './plan.js';

const SEE_VERIFIER = 'Verify the plan to see where it first goes wrong.';

/**
 * @throws InputError when a plan is for a piece outside the limits, or does not hang a base string for
 *   each column
 */
export function checkPlanSize({ rows, columns, hung }: Plan): void {
  checkCount('rows', rows, CHART_LIMITS.minRows, CHART_LIMITS.maxRows);
  checkCount('columns', columns, CHART_LIMITS.minColumns, CHART_LIMITS.maxColumns);
  if (hung.length === columns) return;
  throw new InputError(
    'base-strings',
    `The plan hangs ${hung.length} base strings for ${columns} columns.`,
    {},
    'A plan needs one base string for each column.',
  );
}

/**
 * Runs a plan's steps once, and says whether they tie a whole piece: whether it is the one that was
 * drawn is for the verifier to say.
 *
 * @throws InputError at the first step that cannot be done, the first knot on no base string, and the
 *   first row with too few or too many knots
 */
export function checkPlanSteps(plan: Plan): void {
  checkPlanSize(plan);
  const { op, a, b, length } = plan.steps;
  const machine = new Machine(plan.strings, plan.hung);
  let knots = 0;
  let half = false;
  const endRow = (): void => {
    if (knots === plan.columns) return;
    throw new InputError(
      'row-not-whole',
      `The row has ${knots} knots, but the piece is ${plan.columns} wide.`,
      { row: machine.row + 1 },
      SEE_VERIFIER,
    );
  };
  for (let i = 0; i < length; i++) {
    const code = op[i] as number;
    if (code === Op.turn) endRow();
    const fault = machine.run(code, a[i] as number, b[i] as number);
    if (fault !== Fault.none) {
      const place = { row: machine.row + 1, path: `step ${i + 1}` };
      const why = faultInWords(fault, plan.steps.at(i));
      throw new InputError('step-cannot-be-done', why, place, SEE_VERIFIER);
    }
    if (code === Op.turn) knots = 0;
    if (code !== Op.halfForward && code !== Op.halfBackward) continue;
    half = !half;
    if (half) continue;
    knots++;
    if ((machine.columnOf[b[i] as number] as number) < 0) {
      const place = { row: machine.row + 1, path: `step ${i + 1}` };
      throw new InputError('not-on-base', 'The knot is on no base string.', place, SEE_VERIFIER);
    }
  }
  // A turn after the last knot changes nothing.
  const rows = knots === 0 ? machine.row : machine.row + 1;
  if (knots > 0) endRow();
  if (rows === plan.rows && !half) return;
  throw new InputError(
    'rows-missing',
    `The steps tie ${rows} rows of ${plan.rows}${half ? ', and half a knot' : ''}.`,
    {},
    SEE_VERIFIER,
  );
}
