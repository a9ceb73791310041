import {
  type Chart,
  type Finding,
  type Plan,
  type PlanOptions,
  planAlpha,
  type Step,
  StepList,
  type Verification,
  type VerifyOptions,
  verifyPlan,
} from '../../src/index.js';

export type Change = (steps: Step[]) => Step[];

/** A chart's plan with its steps changed, verified. */
export function verified(
  chart: Chart,
  change: Change,
  options: PlanOptions & VerifyOptions = {},
): Verification {
  const plan = planAlpha(chart, options);
  return verifyPlan(withSteps(plan, change([...plan.steps])), chart, options);
}

export function withSteps(plan: Plan, steps: readonly Step[]): Plan {
  return { ...plan, steps: StepList.from(plan.strings, steps) };
}

/** Index of the n-th half hitch on a string in a row, both from 0. */
export function halfOn(steps: readonly Step[], row: number, held: string, nth = 0): number {
  let turns = 0;
  let seen = 0;
  for (const [i, step] of steps.entries()) {
    if (step.do === 'turn') turns++;
    if (turns === row && step.do === 'halfHitch' && step.held === held && seen++ === nth) return i;
  }
  throw new Error(`No half hitch ${nth} on ${held} in row ${row}`);
}

/** Index of the n-th step of a sort, from 0. */
export function stepOf(steps: readonly Step[], sort: Step['do'], nth = 0): number {
  const places = [...steps.keys()].filter((i) => steps[i]?.do === sort);
  const at = places[nth];
  if (at === undefined) throw new Error(`No step ${sort} number ${nth}`);
  return at;
}

/** Takes so many steps out from one on, and puts others in their place. */
export function splice(steps: readonly Step[], at: number, count: number, ...more: Step[]): Step[] {
  return [...steps.slice(0, at), ...more, ...steps.slice(at + count)];
}

/** Leaves out a whole knot, of two half hitches side by side. */
export function withoutKnot(row: number, held: string): Change {
  return (steps) => splice(steps, halfOn(steps, row, held), 2);
}

export function half(way: 'forward' | 'backward', tying: string, held: string): Step {
  return { do: 'halfHitch', way, tying, held };
}

/** Findings without their notes: grade, code, row and column, as one line each. */
export function listed(result: { readonly findings: readonly Finding[] }): string[] {
  return result.findings
    .filter(({ code }) => code !== 'repeat-does-not-close')
    .map(({ grade, code, row, column }) => `${grade} ${code} at ${row ?? '-'},${column ?? '-'}`);
}
