import {
  type Chart,
  halvesOf,
  InputError,
  type KnotReading,
  type Mistake,
  makeMistakes,
  mirrorKnot,
  type ParkRoute,
  type Plan,
  PlanReader,
  type RowReading,
  type Step,
  StepList,
  type Verification,
  verifyPlan,
} from '@halfhitch/core';
import type { Work } from './work.js';

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
  return changed(work, knot, (steps) => {
    const kept = steps.filter(
      (step) => !((step.do === 'layThrough' || step.do === 'park') && step.string === old),
    );
    const first = kept.findIndex((step) => step.do === 'halfHitch');
    const second = kept.findIndex((step, i) => i > first && step.do === 'halfHitch');
    const park: Step = { do: 'park', string: old, route };
    if (route !== 'through') return [...kept.slice(0, first), park, ...kept.slice(first)];
    return [
      ...kept.slice(0, first + 1),
      { do: 'layThrough', string: old },
      ...kept.slice(first + 1, second + 1),
      park,
      ...kept.slice(second + 1),
    ];
  });
}

/** The base string ties and the lead is held: the mirror image, since it hangs on the other side. */
export function withStringsSwapped(work: Work, knot: KnotReading): Trial {
  const halves = halvesOf(mirrorKnot(knot.kind));
  let half = 0;
  return changed(work, knot, (steps) =>
    steps.map((step): Step => {
      if (step.do !== 'halfHitch') return step;
      const way = halves[half++ === 0 ? 0 : 1];
      return { do: 'halfHitch', way, tying: step.held, held: step.tying };
    }),
  );
}

/** A row of a trial, or null where its steps no longer make whole rows. */
export function trialRow(
  trial: Trial,
  row: number,
): { reading: RowReading; previous: RowReading | null } | null {
  const { verification } = trial;
  const upTo = (row + 1) * verification.columns;
  for (let cell = 0; cell < upTo; cell++) if (verification.kinds[cell] === 255) return null;
  try {
    const reader = new PlanReader(trial.plan);
    const previous = row > 0 ? reader.row(row - 1) : null;
    const reading = reader.row(row);
    return reading.knots.length === trial.plan.columns ? { reading, previous } : null;
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

function changed(work: Work, knot: KnotReading, edit: (steps: Step[]) => Step[]): Trial {
  const { plan } = work;
  const steps = [...plan.steps];
  const { first, end } = knot.steps;
  const edited = [...steps.slice(0, first), ...edit(steps.slice(first, end)), ...steps.slice(end)];
  return trialOf(work, { ...plan, steps: StepList.from(plan.strings, edited) });
}

function trialOf(work: Work, plan: Plan): Trial {
  return { plan, chart: work.chart, verification: verifyPlan(plan, work.chart) };
}
