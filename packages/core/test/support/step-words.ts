import type { Plan, Step } from '../../src/index.js';

/** The steps of a plan, one line each, with slots as steps count them. */
export function stepWords(plan: Plan): string[] {
  return [...plan.steps].map(inWords);
}

function inWords(step: Step): string {
  if (step.do === 'halfHitch') return `${step.tying} ${step.way} ${step.held}`;
  if (step.do === 'park') return `park ${step.string} ${step.route}`;
  if (step.do === 'turn') return 'turn';
  if (step.do === 'add' || step.do === 'takeUp') return `${step.do} ${step.string} at ${step.slot}`;
  return `${step.do} ${step.string}`;
}
