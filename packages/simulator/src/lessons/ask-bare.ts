import {
  apply,
  halvesOf,
  KNOT_KINDS,
  type KnotKind,
  type State,
  type Step,
  startState,
} from '@halfhitch/core';
import { done, knotShow, rightAnswer } from './answers.js';
import type { Question } from './lesson.js';
import type { Teaching } from './work.js';

type Side = 'left' | 'right';

const STRINGS = [
  { id: 'L1', role: 'lead', colour: '#1f6fb2', name: '' },
  { id: 'B1', role: 'base', colour: '#e9e2d0', name: '' },
] as const;

/** Two strings and nothing else: which knot takes the lead from one side to another? */
export function askBare({ say, words }: Teaching, from: Side, to: Side): Question {
  const outcomes = new Map(KNOT_KINDS.map((kind) => [kind, endOf(from, kind)]));
  return {
    prompt: say('ask.bare', { from: words(`side.${from}`), to: words(`side.${to}`) }),
    choices: KNOT_KINDS.map((kind) => {
      const end = outcomes.get(kind) ?? null;
      const show = done(knotShow(kind, null));
      const named = words(`kind.${kind}`);
      const values = {
        kind: named,
        from: words(`side.${from}`),
        to: words(`side.${to}`),
        start: words(`side.${from === 'left' ? 'right' : 'left'}`),
        side: words(`side.${from}`),
      };
      return {
        text: say(`choice.${kind}`),
        right: end === to,
        answer: () =>
          end === to
            ? rightAnswer([say('lesson.right'), say('why.bare', values)], [show])
            : {
                right: false,
                text: [
                  say('lesson.notThis'),
                  end === null
                    ? say('wrong.bareSide', values)
                    : say('wrong.bareEnd', { ...values, end: words(`side.${end}`) }),
                ],
                findings: [],
                shows: [show],
              },
      };
    }),
  };
}

/** Side on which the state machine leaves the lead; null when it cannot begin the knot. */
function endOf(from: Side, kind: KnotKind): Side | null {
  const hung = from === 'left' ? ['L1', 'B1'] : ['B1', 'L1'];
  let state: State = startState(STRINGS, hung);
  for (const way of halvesOf(kind)) {
    const step: Step = { do: 'halfHitch', way, tying: 'L1', held: 'B1' };
    const done = apply(state, step);
    if (!done.ok) return null;
    state = done.state;
  }
  return state.front[0] === 'L1' ? 'left' : 'right';
}
