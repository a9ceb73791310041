import type { Mistake, RowReading } from '@halfhitch/core';
import type { Values } from '../messages/catalogue.js';
import { done, knotShow, rightAnswer, rowShow, situation } from './answers.js';
import { askBare } from './ask-bare.js';
import { askKind } from './ask-kind.js';
import { askEntry, askRoute, askString } from './ask-strings.js';
import { drawnFabric, trialFabric } from './fabric-picture.js';
import { LATTICE_LESSONS } from './lattice-lessons.js';
import type { LessonPage, Question, Show } from './lesson.js';
import { page, question } from './pages.js';
import { trialRow, withMistakes, withRoute } from './trial.js';
import { knotOf, type Teaching, type Work, workOf } from './work.js';

const PLAIN = ['aaaaaa', 'aaaaaa', 'aaaaaa', 'aaaaaa'];

type Build = (teaching: Teaching) => readonly LessonPage[];

/** The lessons, in the order in which a beginner needs them. */
export const LESSONS = {
  'four-knots': (t) => [
    page(t, 'four-knots.1', [knotShow('forward', null)]),
    page(t, 'four-knots.2', [knotShow('forward', null), knotShow('backward', null)]),
    page(t, 'four-knots.3', [
      knotShow('forward-backward', null),
      knotShow('backward-forward', null),
    ]),
    question(askBare(t, 'left', 'left')),
    question(askBare(t, 'right', 'left')),
  ],
  strings: (t) => {
    const work = workOf(t, ['aaaa', 'abba', 'aaaa']);
    return [
      page(t, 'strings.1', [rowShow(work, 0, 1), drawnFabric(work, { row: 1, column: 1 })]),
      ask(askString(work, 1, 2), work, 1, 2),
    ];
  },
  'edge-right': (t) => edge(t, 'edge-right', 0),
  'edge-left': (t) => edge(t, 'edge-left', 1),
  turn: (t) => {
    const work = workOf(t, PLAIN);
    const lacking = work.plan.rows - 1;
    const single = withMistakes(
      work,
      Array.from(
        { length: lacking },
        (_, row): Mistake => ({ kind: 'single-edge-knot', row, lacking: 'start' }),
      ),
    );
    const at = { row: 1, column: 3 };
    const missing =
      single === null ? 0 : work.plan.rows * work.plan.columns - single.verification.knots;
    const turned = single === null ? null : trialRow(single, 1);
    const both: Show[] = [
      { ...done(rowShow(work, 1, 1)), caption: t.say('lesson.two') },
      ...(turned === null ? [] : [result(turned, 0, t.say('lesson.one'))]),
      drawnFabric(work, at, t.say('lesson.two')),
      ...(single === null ? [] : [trialFabric(single, at, t.say('lesson.one'))]),
    ];
    return [
      page(t, 'turn.1', [rowShow(work, 1, 0)]),
      page(t, 'turn.2', both, { missing }),
      ask(askKind(work, 1, 0), work, 1, 0),
    ];
  },
  wrapped: (t) => {
    const straight = workOf(t, PLAIN);
    const wrapped = workOf(t, PLAIN, { edge: 'wrapped' });
    const at = { row: 1, column: 3 };
    return [
      page(t, 'wrapped.1', [rowShow(wrapped, 1, 0)]),
      page(t, 'wrapped.2', [
        drawnFabric(straight, at, t.say('lesson.straight')),
        drawnFabric(wrapped, at, t.say('lesson.wrapped')),
      ]),
      ask(askKind(wrapped, 0, 5), wrapped, 0, 5),
    ];
  },
  'change-within': (t) => change(t, 'change-within', ['aaabbb', 'bbbbbb'], 0, 3),
  'change-after-first': (t) => change(t, 'change-after-first', ['abbbbb', 'bbbbbb'], 0, 1),
  'change-last': (t) => {
    const work = workOf(t, ['aaaaab', 'bbbbbb']);
    const knot = knotOf(work, 0, 5);
    const caught = withRoute(work, knot, 'through');
    const row = trialRow(caught, 0);
    const shows: Show[] = [{ ...done(rowShow(work, 0, 5)), caption: t.say('lesson.behind') }];
    if (row !== null) shows.push(result(row, 5, t.say('lesson.caught')));
    return [
      page(t, 'change-last.1', [rowShow(work, 0, 5)]),
      page(t, 'change-last.2', shows),
      ask(askRoute(work, 0, 5), work, 0, 5),
    ];
  },
  'change-turn': (t) => change(t, 'change-turn', ['aaaaaa', 'bbbbbb', 'bbbbbb'], 1, 0),
  'first-use': (t) => {
    const work = workOf(t, ['aabbbb', 'bbbbbb']);
    return [page(t, 'first-use.1', [rowShow(work, 0, 2)]), ask(askEntry(work, 0, 2), work, 0, 2)];
  },
  float: (t) => {
    const work = workOf(t, ['aabbbaaa', 'aaaaaaaa']);
    const columns = knotOf(work, 0, 5).change?.float?.columns ?? 0;
    return [
      page(t, 'float.1', [rowShow(work, 0, 5)], { columns }),
      ask(askEntry(work, 0, 5), work, 0, 5),
    ];
  },
  'every-knot': (t) => {
    const work = workOf(t, ['ababab', 'bababa']);
    return [
      page(t, 'every-knot.1', [rowShow(work, 0, 1), drawnFabric(work, { row: 0, column: 2 })]),
      ask(askRoute(work, 0, 2), work, 0, 2),
      ask(askRoute(work, 0, 5), work, 0, 5),
    ];
  },
  'run-out': (t) => {
    const work = workOf(t, PLAIN, { joins: [{ row: 0, column: 3 }] });
    return [
      page(t, 'run-out.1', [rowShow(work, 0, 3), drawnFabric(work, { row: 0, column: 3 })]),
      ask(askRoute(work, 0, 3), work, 0, 3),
    ];
  },
  undo: (t) => [
    page(t, 'undo.1', [knotShow('forward', null, undefined, true)]),
    question(askUndo(t)),
  ],
  ...LATTICE_LESSONS,
} as const satisfies Record<string, Build>;

export type LessonName = keyof typeof LESSONS;

export const LESSON_NAMES = Object.keys(LESSONS) as readonly LessonName[];

function edge(t: Teaching, name: 'edge-right' | 'edge-left', row: 0 | 1): LessonPage[] {
  const work = workOf(t, PLAIN);
  const last = work.plan.columns - 1;
  const inner = knotOf(work, row, 1);
  return [
    page(t, `${name}.1`, [rowShow(work, row, last)], {
      side: t.words(`side.${inner.direction}`),
      inner: t.words(`kind.${inner.kind}`),
    }),
    ask(askKind(work, row, last), work, row, last),
  ];
}

type ChangeLesson = 'change-within' | 'change-after-first' | 'change-turn';

function change(
  t: Teaching,
  name: ChangeLesson,
  lines: readonly string[],
  row: number,
  knot: number,
): LessonPage[] {
  const work = workOf(t, lines);
  return [
    page(t, `${name}.1`, [rowShow(work, row, knot), drawnFabric(work, knotOf(work, row, knot))]),
    ask(askRoute(work, row, knot), work, row, knot),
  ];
}

/** The side that a lesson of an edge is about; the title names it. */
export function titleValues({ words, hand }: Teaching, name: LessonName): Values {
  const right = (name === 'edge-right') === (hand === 'right');
  return { side: words(right ? 'side.right' : 'side.left') };
}

function askUndo({ say }: Teaching): Question {
  const undone = knotShow('forward', null, undefined, true);
  const wrong = (key: 'wrong.firstHalf' | 'wrong.pull') => ({
    right: false,
    text: [say('lesson.notThis'), say(key)],
    findings: [],
    shows: [undone],
  });
  return {
    prompt: say('ask.undo'),
    choices: [
      { text: say('choice.firstHalf'), right: false, answer: () => wrong('wrong.firstHalf') },
      {
        text: say('choice.lastHalf'),
        right: true,
        answer: () => rightAnswer([say('lesson.right'), say('why.undo')], [undone]),
      },
      { text: say('choice.pull'), right: false, answer: () => wrong('wrong.pull') },
    ],
  };
}

/** A question about a knot, with a picture of how things are before it. */
export function ask(asked: Question, work: Work, row: number, order: number): LessonPage {
  return { text: [], shows: [situation(work, row, order)], question: asked };
}

/** A row of a trial, with one of its knots finished. */
function result(
  row: { readonly reading: RowReading; readonly previous: RowReading | null },
  knot: number,
  caption: string,
): Show {
  return { what: 'row', ...row, knot, done: true, still: false, caption };
}
