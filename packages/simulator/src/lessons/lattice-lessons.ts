import { KNOT_KINDS, type KnotKind } from '@halfhitch/core';
import { leadName } from '../row/row-words.js';
import { askIdle, askLatticeKind, askOutcome, askPair, pairShow } from './ask-lattice.js';
import {
  differing,
  type LatticeWork,
  latticeFabric,
  latticeKnot,
  latticeOf,
  latticeShow,
  latticeSituation,
  otherwise,
} from './lattice-work.js';
import type { LessonPage, Question } from './lesson.js';
import { page, question } from './pages.js';
import type { Teaching } from './work.js';

/** Lessons of diagonal work. */
export const LATTICE_LESSONS = {
  'brick-row': (t: Teaching): readonly LessonPage[] => {
    const work = latticeOf(t, 'stripes', 6, 8);
    return [
      page(t, 'brick-row.1', [
        latticeShow(work, 0, 0),
        latticeFabric(work.pattern, t.say('lesson.drawn')),
      ]),
      page(t, 'brick-row.2', [latticeShow(work, 1, 0)]),
      asked(askPair(work), work, 1, 0),
    ];
  },
  'working-pair': (t: Teaching): readonly LessonPage[] => [
    page(t, 'working-pair.1', [pairShow(t, 'forward'), pairShow(t, 'backward')]),
    page(t, 'working-pair.2', [pairShow(t, 'forward-backward'), pairShow(t, 'backward-forward')]),
    ...KNOT_KINDS.slice(1).map((kind) => question(askOutcome(t, kind))),
  ],
  'idle-string': (t: Teaching): readonly LessonPage[] => {
    const work = latticeOf(t, 'chevrons', 8, 16);
    const row = rowWithIdlers(work);
    return [
      page(t, 'idle-string.1', [
        latticeShow(work, row, 0),
        latticeFabric(work.pattern, t.say('lesson.drawn')),
      ]),
      asked(askIdle(work, row), work, row, 0),
    ];
  },
  stripe: (t: Teaching): readonly LessonPage[] => {
    const work = latticeOf(t, 'stripes', 6, 12);
    const order = t.hand === 'left' ? work.order.knotsOf(0) - 1 : 0;
    const { tying } = latticeKnot(work, 0, order);
    const string = leadName(tying, t.words);
    const ask = tellingKnot(work, t.hand === 'left' ? 'backward' : 'forward');
    return [
      page(t, 'stripe.1', [latticeShow(work, 0, order)], { string }),
      page(
        t,
        'stripe.2',
        [
          {
            what: 'piece',
            pattern: work.pattern,
            trailOf: tying.id,
            caption: t.say('lesson.wayOf', { string }),
          },
        ],
        { string },
      ),
      asked(askLatticeKind(work, ask.row, ask.order), work, ask.row, ask.order),
    ];
  },
  chevron: (t: Teaching): readonly LessonPage[] => {
    const work = latticeOf(t, 'chevrons', 8, 16);
    const row = rowWithIdlers(work) + 1;
    const ask = tellingKnot(work, t.hand === 'left' ? 'forward' : 'backward');
    return [
      page(t, 'chevron.1', [
        latticeShow(work, row, 0),
        latticeFabric(work.pattern, t.say('lesson.drawn')),
      ]),
      page(t, 'chevron.2', [latticeShow(work, row - 1, 1)]),
      asked(askLatticeKind(work, ask.row, ask.order), work, ask.row, ask.order),
    ];
  },
} as const;

/** The first row in which the outermost strings have no neighbours. */
function rowWithIdlers({ order }: LatticeWork): number {
  return order.idling(0).left === null ? 1 : 0;
}

/** The first knot of a kind below the first rows that would spoil the pattern if it were any other. */
function tellingKnot(
  { order, pattern }: LatticeWork,
  kind: KnotKind,
): { row: number; order: number } {
  for (let number = order.before(2, 0); number < order.length; number++) {
    const knot = order.knot(number);
    if (knot?.kind !== kind || knot.tying.colour === knot.held.colour) continue;
    const spoils = (code: number) =>
      KNOT_KINDS[code] === knot.kind ||
      differing(otherwise(pattern, knot.row, knot.place, code), pattern).length > 0;
    if (KNOT_KINDS.every((_, code) => spoils(code))) return knot;
  }
  throw new RangeError('No knot of the pattern tells one kind from another.');
}

/** A question about a knot, with a picture of how things are before it. */
function asked(of: Question, work: LatticeWork, row: number, order: number): LessonPage {
  return { text: [], shows: [latticeSituation(work, row, order)], question: of };
}
