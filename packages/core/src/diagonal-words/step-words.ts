import type { DiagonalPlan } from '../diagonal/plan.js';
import { halfHitchInWords } from '../instructions/half-hitch-words.js';
import { halfPlaceOf } from '../instructions/step-words.js';
import { leadInWords } from '../instructions/wording.js';
import { stringIndex } from '../model/steplist.js';
import { printable } from '../printable.js';

/** The step of a diagonal plan at an index from 0, complete enough to do it with thread in hand. */
export function diagonalStepInWords(plan: DiagonalPlan, index: number): string {
  const step = plan.steps.at(index);
  switch (step.do) {
    case 'halfHitch':
      return halfHitchInWords(
        step.way,
        named(plan, step.tying),
        named(plan, step.held),
        halfPlaceOf(plan, index),
      );
    case 'turn':
      return 'The row is done. The next one begins one slot to the side; the work is not turned over.';
    default:
      return 'In a diagonal pattern every string stays in front: there is no such step.';
  }
}

function named({ strings }: DiagonalPlan, id: string): string {
  const string = strings[stringIndex(strings).get(id) ?? -1];
  return string === undefined ? `string ${printable(id)}` : leadInWords(string);
}
