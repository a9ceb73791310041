import { type KnotKind, kindOf } from '../model/knot.js';
import { Op } from '../model/steplist.js';
import type { Plan } from '../plan/plan.js';

/** What the steps just before and just after a knot say of the knots beside it. */

export interface KnotBefore {
  readonly kind: KnotKind;
  /** Places in the plan's strings. */
  readonly tying: number;
  readonly held: number;
}

const isHalf = (op: number | undefined): boolean => op === Op.halfForward || op === Op.halfBackward;

/** The knot tied last before a step; null before the first knot. */
export function knotBefore(plan: Plan, step: number): KnotBefore | null {
  const { op, a, b } = plan.steps;
  let second = -1;
  for (let i = step - 1; i >= 0; i--) {
    if (!isHalf(op[i])) continue;
    if (second < 0) {
      second = i;
      continue;
    }
    const way = (at: number) => (op[at] === Op.halfForward ? 'forward' : 'backward');
    return {
      kind: kindOf(way(i), way(second)),
      tying: a[second] as number,
      held: b[second] as number,
    };
  }
  return null;
}

/** Whether another lead comes in before the next half hitch after a step. */
export function changeFollows(plan: Plan, step: number): boolean {
  const { op, length } = plan.steps;
  for (let i = step; i < length && !isHalf(op[i]); i++) {
    if (op[i] === Op.takeUp || op[i] === Op.add) return true;
  }
  return false;
}
