import {
  apply,
  type Chart,
  Cursor,
  InputError,
  type KnotReading,
  type Mistake,
  makeMistakes,
  type ParkRoute,
  type Plan,
  PlanReader,
  type RowReading,
  type State,
  type Step,
  StepList,
  type Verification,
  verifyPlan,
} from '@halfhitch/core';
import type { Work } from './work.js';

/** Of a verification: a cell without a knot. */
const NO_KNOT = 255;

/** What a piece becomes when something in it is done otherwise. */
export interface Trial {
  readonly plan: Plan;
  readonly chart: Chart;
  /** What running the changed steps shows, against the drawing. */
  readonly verification: Verification;
}

/** Lets a maker who does not notice go on after some mistakes; null where they do not fit. */
export function withMistakes(work: Work, mistakes: readonly Mistake[]): Trial | null {
  try {
    return trialOf(work, makeMistakes(work.plan, mistakes).plan);
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

/** The old lead leaves another way at the hand-over of a knot. */
export function withRoute(work: Work, knot: KnotReading, route: ParkRoute): Trial {
  const old = knot.change?.oldLead?.id ?? '';
  return changed(work, knot, (steps, before) => {
    const kept = steps.filter(
      (step) => !((step.do === 'layThrough' || step.do === 'park') && step.string === old),
    );
    const first = kept.findIndex((step) => step.do === 'halfHitch');
    const second = kept.findIndex((step, i) => i > first && step.do === 'halfHitch');
    const park: Step = { do: 'park', string: old, route };
    if (route !== 'through') return [...kept.slice(0, first), park, ...kept.slice(first)];
    return [
      ...enteringBeside(kept.slice(0, first + 1), before, knot),
      { do: 'layThrough', string: old },
      ...kept.slice(first + 1, second + 1),
      park,
      ...kept.slice(second + 1),
    ];
  });
}

/** The same steps with the new lead brought in where its first half can be tied. */
function enteringBeside(steps: readonly Step[], before: State, knot: KnotReading): Step[] {
  const entry = steps.findIndex(
    (step) => (step.do === 'add' || step.do === 'takeUp') && step.string === knot.tying.id,
  );
  const step = steps[entry];
  if (step === undefined || (step.do !== 'add' && step.do !== 'takeUp')) return [...steps];
  // The old lead is still in front, so the place may be another than in the plan.
  for (const slot of [step.slot, step.slot + 1, step.slot - 1]) {
    const tried = steps.map((other, i) => (i === entry ? { ...step, slot } : other));
    let state: State | null = before;
    for (const one of tried) {
      const after: ReturnType<typeof apply> | null = state === null ? null : apply(state, one);
      state = after?.ok ? after.state : null;
    }
    if (state !== null) return tried;
  }
  return [...steps];
}

/** A row of a trial, or null where rows before it are not whole or its steps cannot be read. */
export function trialRow(
  trial: Trial,
  row: number,
): { reading: RowReading; previous: RowReading | null } | null {
  const { verification } = trial;
  const upTo = (row + 1) * verification.columns;
  const columns = verification.columns;
  for (let cell = 0; cell < upTo - columns; cell++) {
    if (verification.kinds[cell] === NO_KNOT) return null;
  }
  const missing = verification.kinds.subarray(upTo - columns, upTo).filter((k) => k === NO_KNOT);
  try {
    const reader = new PlanReader(trial.plan);
    const previous = row > 0 ? reader.row(row - 1) : null;
    const whole = reader.row(row);
    // A reader counts on whole rows, and reads on into the next where a knot is missing.
    const end = endOfRow(trial.plan, row);
    const knots = whole.knots.filter((knot) => knot.steps.end <= end);
    return knots.length === columns - missing.length
      ? { reading: { ...whole, knots }, previous }
      : null;
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

/** Where the steps of a row end: at the turn after it, or with the plan. */
function endOfRow(plan: Plan, row: number): number {
  let turns = 0;
  for (let step = 0; step < plan.steps.length; step++) {
    if (plan.steps.at(step).do === 'turn' && turns++ === row) return step + 1;
  }
  return plan.steps.length;
}

function changed(
  work: Work,
  knot: KnotReading,
  edit: (steps: Step[], before: State) => Step[],
): Trial {
  const { plan } = work;
  const steps = [...plan.steps];
  const { first, end } = knot.steps;
  const cursor = new Cursor(plan.steps, plan.hung);
  cursor.seek(first);
  const within = edit(steps.slice(first, end), cursor.state);
  const edited = [...steps.slice(0, first), ...within, ...steps.slice(end)];
  return trialOf(work, { ...plan, steps: StepList.from(plan.strings, edited) });
}

function trialOf(work: Work, plan: Plan): Trial {
  return { plan, chart: work.chart, verification: verifyPlan(plan, work.chart) };
}
