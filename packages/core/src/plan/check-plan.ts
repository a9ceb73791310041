import { CHART_LIMITS } from '../chart/chart.js';
import { checkCount } from '../chart/check-chart.js';
import { InputError } from '../errors.js';
import type { Plan } from './plan.js';

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
