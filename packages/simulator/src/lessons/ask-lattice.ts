import {
  changesPlaces,
  type DiagonalPattern,
  KNOT_KINDS,
  type KnotKind,
  NO_KNOT,
  simulateDiagonal,
} from '@halfhitch/core';
import { leadName } from '../row/row-words.js';
import { done, knotShow, rightAnswer } from './answers.js';
import {
  coloursOf,
  differing,
  type LatticeWork,
  latticeFabric,
  latticeKnot,
  latticeShow,
  otherwise,
} from './lattice-work.js';
import type { Answer, Choice, Question } from './lesson.js';
import type { Teaching } from './work.js';

/** Which knot goes on with the pattern? */
export function askLatticeKind(work: LatticeWork, row: number, order: number): Question {
  const { say, words, pattern } = work;
  const knot = latticeKnot(work, row, order);
  const tying = leadName(knot.tying, words);
  const held = leadName(knot.held, words);
  const tiesLeft = knot.kind === 'forward' || knot.kind === 'forward-backward';
  const [left, right] = tiesLeft ? [tying, held] : [held, tying];
  const values = { row: row + 1, knot: order + 1, left, right, tying, held };
  return {
    prompt: say('ask.latticeKind', values),
    choices: KNOT_KINDS.map(
      (kind): Choice => ({
        text: say(`choice.${kind}`),
        right: kind === knot.kind,
        answer: () => {
          if (kind === knot.kind) {
            const why = say(changesPlaces(kind) ? 'why.latticeThrough' : 'why.latticeBack', values);
            return rightAnswer(
              [say('lesson.right'), why],
              [latticeShow(work, row, order), latticeFabric(pattern, say('lesson.drawn'))],
            );
          }
          return otherKind(work, row, order, kind);
        },
      }),
    ),
  };
}

/** What comes of another knot, by knotting all that follows as it was planned. */
function otherKind(work: LatticeWork, row: number, order: number, kind: KnotKind): Answer {
  const { say, words, pattern } = work;
  const { place } = latticeKnot(work, row, order);
  const trial = otherwise(pattern, row, place, KNOT_KINDS.indexOf(kind));
  const places = differing(trial, pattern);
  const ties = kind === 'forward' || kind === 'forward-backward';
  const outcome = say('wrong.lattice', {
    kind: words(`kind.${kind}`),
    side: words(ties ? 'side.left' : 'side.right'),
    places: say(changesPlaces(kind) ? 'lattice.theyChange' : 'lattice.theyStay'),
  });
  const counted = places.length === 1 ? 'wrong.latticeOne' : 'wrong.latticeCount';
  return {
    right: false,
    text: [say('lesson.notThis'), outcome, say(counted, { count: places.length })],
    findings: [],
    shows: [
      done(latticeShow({ say, pattern: trial }, row, order, say('lesson.becomes'))),
      latticeFabric(pattern, say('lesson.drawn')),
      latticeFabric(trial, say('lesson.yours'), pattern),
    ],
  };
}

/** Two strings and nothing else: which knot shows this colour and leaves the strings so? */
export function askOutcome(teaching: Teaching, kind: KnotKind): Question {
  const { say, words } = teaching;
  const wanted = outcomeOf(teaching, kind);
  return {
    prompt: say('ask.outcome', {
      left: wanted.left,
      right: wanted.right,
      shows: wanted.shows,
      places: say(wanted.change ? 'lattice.theyChange' : 'lattice.theyStay'),
    }),
    choices: KNOT_KINDS.map((tried): Choice => {
      const outcome = outcomeOf(teaching, tried);
      const right = outcome.shows === wanted.shows && outcome.change === wanted.change;
      return {
        text: say(`choice.${tried}`),
        right,
        answer: () => {
          const values = {
            kind: words(`kind.${tried}`),
            shows: outcome.shows,
            places: say(outcome.change ? 'lattice.theyChange' : 'lattice.theyStay'),
          };
          const shows = [done(pairShow(teaching, tried))];
          return right
            ? rightAnswer([say('lesson.right'), say('why.outcome', values)], shows)
            : {
                right: false,
                text: [say('lesson.notThis'), say('why.outcome', values)],
                findings: [],
                shows,
              };
        },
      };
    }),
  };
}

/** The four knots between a blue string on the left and an orange one on the right. */
export function pairShow(teaching: Teaching, kind: KnotKind) {
  const { pattern, tying } = pairOf(teaching, kind);
  const strings = [0, 1].map((slot) => {
    const colour = pattern.colours[pattern.start[slot] as number];
    return {
      id: `S${slot + 1}`,
      role: 'base' as const,
      colour: colour?.hex ?? '',
      name: colour?.name ?? '',
    };
  });
  const [ties, holds] = tying === 0 ? strings : [...strings].reverse();
  if (ties === undefined || holds === undefined)
    throw new RangeError('The pair of a lesson has fewer than two strings.');
  const name = (string: typeof ties) => leadName(string, teaching.words);
  return knotShow(kind, { tying: ties, held: holds }, { tying: name(ties), held: name(holds) });
}

function pairOf(teaching: Teaching, kind: KnotKind) {
  const pattern: DiagonalPattern = {
    name: '',
    strings: 2,
    rows: 1,
    first: 0,
    colours: coloursOf(teaching).slice(0, 2),
    start: Uint8Array.of(0, 1),
    knots: Uint8Array.of(KNOT_KINDS.indexOf(kind)),
  };
  const reading = simulateDiagonal(pattern);
  return { pattern, reading, tying: reading.tying[0] as number };
}

/** What a knot shows between the two, and whether they change places: by knotting it. */
function outcomeOf(teaching: Teaching, kind: KnotKind) {
  const { pattern, reading } = pairOf(teaching, kind);
  const nameOf = (colour: number | undefined) => pattern.colours[colour ?? 0]?.name ?? '';
  return {
    left: nameOf(pattern.start[0]),
    right: nameOf(pattern.start[1]),
    shows: nameOf(reading.picture.cells[0]),
    change: reading.order[2] !== 0,
  };
}

/** Which strings does the first knot of the second row tie together? */
export function askPair(work: LatticeWork): Question {
  const { say, pattern } = work;
  const row = 1;
  const knot = latticeKnot(work, row, 0);
  const first = knot.slot + 1;
  const pairs: readonly (readonly [number, number])[] = [
    [first - 1, first],
    [first, first + 1],
    [first, first + 2],
  ];
  // A row that began at the second slot is followed by one that begins at the first.
  const asked = pairs.map(([a, b]) => (first === 1 ? [a + 1, b + 1] : [a, b]) as [number, number]);
  return {
    prompt: say('ask.pair', { row: row + 1 }),
    choices: asked.map(([left, right]): Choice => {
      const isRight = left === first && right === first + 1;
      const text = say('choice.pair', { left, right });
      if (isRight) {
        return {
          text,
          right: true,
          answer: () =>
            rightAnswer(
              [say('lesson.right'), say('why.pair')],
              [latticeShow(work, row, 0), latticeFabric(pattern, say('lesson.drawn'))],
            ),
        };
      }
      const apart = right - left > 1;
      return {
        text,
        right: false,
        answer: () => ({
          right: false,
          text: [say('lesson.notThis'), say(apart ? 'wrong.pairApart' : 'wrong.pairAgain')],
          findings: [],
          shows: [
            apart
              ? latticeShow(work, row, 0)
              : latticeFabric(everyOtherRow(pattern), say('lesson.becomes')),
          ],
        }),
      };
    }),
  };
}

/** The same pairs tied again and again: every other row of the lattice stays bare. */
function everyOtherRow(pattern: DiagonalPattern): DiagonalPattern {
  const across = pattern.knots.length / pattern.rows;
  const knots = pattern.knots.map((kind, cell) =>
    Math.floor(cell / across) % 2 === 1 ? NO_KNOT : kind,
  );
  return { ...pattern, knots };
}

/** Which strings idle in a row? */
export function askIdle(work: LatticeWork, row: number): Question {
  const { say, words, order } = work;
  const { left, right } = order.idling(row);
  const edges = [left, right].map((string) => (string === null ? '' : leadName(string, words)));
  const choices = [
    { text: say('choice.idleBoth', { left: edges[0] ?? '', right: edges[1] ?? '' }), right: true },
    { text: say('choice.idleLeft', { left: edges[0] ?? '' }), right: false },
    { text: say('choice.idleNone'), right: false },
  ];
  return {
    prompt: say('ask.idle', { row: row + 1, strings: work.pattern.strings }),
    choices: choices.map((choice) => ({
      ...choice,
      answer: () => {
        const shows = [done(latticeShow(work, row, order.knotsOf(row) - 1))];
        const why = say('why.idle', { left: edges[0] ?? '', right: edges[1] ?? '' });
        return choice.right
          ? rightAnswer([say('lesson.right'), why], shows)
          : { right: false, text: [say('lesson.notThis'), why], findings: [], shows };
      },
    })),
  };
}
