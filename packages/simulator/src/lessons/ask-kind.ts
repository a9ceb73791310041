import {
  apply,
  Cursor,
  changesPlaces,
  halvesOf,
  KNOT_KINDS,
  type KnotKind,
  type KnotReading,
  type State,
  startSide,
} from '@halfhitch/core';
import { answerOfTrial, namesOf, rightAnswer, rowShow } from './answers.js';
import { drawnFabric } from './fabric-picture.js';
import type { Choice, Question } from './lesson.js';
import { withMistakes } from './trial.js';
import { knotOf, type Work } from './work.js';

/** Which knot comes next? At the start of a row, none at all can be chosen too. */
export function askKind(work: Work, row: number, order: number): Question {
  const knot = knotOf(work, row, order);
  const { say, words } = work;
  const choices: Choice[] = KNOT_KINDS.map((kind) => ({
    text: say(`choice.${kind}`),
    right: kind === knot.kind,
    answer: () =>
      kind === knot.kind
        ? rightAnswer(
            [say('lesson.right'), whyThisKind(work, knot)],
            [rowShow(work, row, order), drawnFabric(work, knot)],
          )
        : answerOfTrial(
            work,
            knot,
            withMistakes(work, [{ kind: 'wrong-kind', row, column: knot.column, tied: kind }]),
            [say('lesson.notThis'), ...whyNotThisKind(work, knot, kind)],
          ),
  }));
  if (row > 0 && order === 0 && knot.change === null && !changesPlaces(knot.kind)) {
    choices.push({
      text: say('choice.none'),
      right: false,
      answer: () =>
        answerOfTrial(
          work,
          knot,
          withMistakes(work, [{ kind: 'single-edge-knot', row: row - 1, lacking: 'start' }]),
          [say('lesson.notThis')],
        ),
    });
  }
  const side = words(`side.${hangsAt(work, knot)}`);
  return { prompt: say('ask.kind', { ...namesOf(work, knot), side }), choices };
}

function whyThisKind(work: Work, knot: KnotReading): string {
  const { say, words } = work;
  const values = { ...namesOf(work, knot), kind: words(`kind.${knot.kind}`) };
  if (knot.place === 'inner') return say('why.inner', values);
  if (changesPlaces(knot.kind))
    return say(knot.place === 'last' ? 'why.wrapped' : 'why.inner', values);
  if (knot.place === 'last') return say('why.edgeLast', values);
  return say(knot.row > 0 && knot.change === null ? 'why.edgeSecond' : 'why.edgeFirst', values);
}

/** The state machine says when a knot cannot even be begun where the lead hangs. */
function whyNotThisKind(work: Work, knot: KnotReading, kind: KnotKind): string[] {
  const [way] = halvesOf(kind);
  const tried = apply(stateBefore(work, knot), {
    do: 'halfHitch',
    way,
    tying: knot.tying.id,
    held: knot.held.id,
  });
  if (tried.ok) return [];
  const { say, words } = work;
  return [
    say('wrong.side', {
      ...namesOf(work, knot),
      kind: words(`kind.${kind}`),
      start: words(`side.${startSide(kind)}`),
      side: words(`side.${hangsAt(work, knot)}`),
    }),
  ];
}

/** Where everything is just before the first half of a knot. */
function stateBefore({ plan }: Work, knot: KnotReading): State {
  const cursor = new Cursor(plan.steps, plan.hung);
  let step = knot.steps.first;
  while (step < knot.steps.end && plan.steps.at(step).do !== 'halfHitch') step++;
  cursor.seek(step);
  return cursor.state;
}

function hangsAt(work: Work, knot: KnotReading): 'left' | 'right' {
  const { front } = stateBefore(work, knot);
  return front.indexOf(knot.tying.id) < front.indexOf(knot.held.id) ? 'left' : 'right';
}
