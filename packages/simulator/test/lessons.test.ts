import { type Chart, InputError, planAlpha, verifyPlan } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Answer,
  LESSON_MESSAGES,
  LESSON_NAMES,
  type Lesson,
  lessonFor,
  lessonList,
  lessonNamed,
  type Question,
} from '../src/lessons.js';
import { placesOf } from '../src/messages/catalogue.js';
import { LESSONS_ENGLISH } from '../src/messages/lessons-english.js';
import { LESSONS_GERMAN } from '../src/messages/lessons-german.js';

const questionsOf = (lesson: Lesson): Question[] =>
  lesson.pages.flatMap(({ question }) => (question === null ? [] : [question]));
const answersOf = (lesson: Lesson): Answer[] =>
  questionsOf(lesson).flatMap(({ choices }) => choices.map(({ answer }) => answer()));

function chartOf(...lines: string[]): Chart {
  const keys = [...new Set(lines.join(''))].sort();
  return {
    name: '',
    rows: lines.length,
    columns: lines[0]?.length ?? 0,
    colours: keys.map((key, i) => ({ key, hex: `#${i}f6fb2`, name: `colour ${key}` })),
    cells: Uint8Array.from([...lines.join('')].map((key) => keys.indexOf(key))),
  };
}

describe('the messages of the lessons', () => {
  it('have the same keys and places in both languages', () => {
    expect(Object.keys(LESSONS_GERMAN).sort()).toEqual(Object.keys(LESSONS_ENGLISH).sort());
    for (const key of LESSON_MESSAGES.keys) {
      const places = placesOf(LESSONS_ENGLISH[key]).sort();
      expect([key, placesOf(LESSONS_GERMAN[key]).sort()]).toEqual([key, places]);
    }
  });
});

describe.each(LESSON_NAMES)('the lesson %s', (name) => {
  it.each(['en', 'de'])('is whole in %s: every place in its words is filled', (lang) => {
    for (const hand of ['right', 'left'] as const) {
      const lesson = lessonNamed(name, { lang, hand });
      expect(lesson.language).toBe(lang);
      const words = [
        lesson.title,
        ...lesson.pages.flatMap(({ text }) => text),
        ...questionsOf(lesson).flatMap(({ prompt, choices }) => [
          prompt,
          ...choices.map(({ text }) => text),
        ]),
        ...answersOf(lesson).flatMap(({ text, findings }) => [...text, ...findings]),
      ];
      for (const text of words) {
        expect(text).not.toMatch(/[{}]|undefined|null/);
        expect(text.length).toBeGreaterThan(3);
      }
      expect(lesson.pages[0]?.shows.length).toBeGreaterThan(0);
      // Checking steps speaks English; here it must have been said in the learner's words.
      const [place] = LESSON_MESSAGES.in(lang)('finding.missing-knot').split(' ');
      for (const finding of answersOf(lesson).flatMap(({ findings }) => findings)) {
        expect(finding.split(' ')[0]).toBe(place);
      }
    }
  });

  it('is listed once, with the question that it answers', () => {
    for (const lang of ['en', 'de']) {
      const listed = lessonList({ lang }).flatMap(({ lessons }) => lessons);
      expect(listed.filter((one) => one.name === name)).toHaveLength(1);
      const { title, asks } = listed.find((one) => one.name === name) ?? {};
      expect(title).toBe(lessonNamed(name, { lang }).title);
      expect(asks).toMatch(/\?$/);
    }
  });

  it('asks at least once, with one right choice, and every choice shows what comes of it', () => {
    const questions = questionsOf(lessonNamed(name));
    expect(questions.length).toBeGreaterThan(0);
    for (const { choices } of questions) {
      expect(choices.filter(({ right }) => right)).toHaveLength(1);
      expect(new Set(choices.map(({ text }) => text)).size).toBe(choices.length);
      for (const choice of choices) {
        const answer = choice.answer();
        expect(answer.right).toBe(choice.right);
        expect(answer.shows.length).toBeGreaterThan(0);
        if (answer.right) expect(answer.findings).toEqual([]);
        else expect(answer.text.length + answer.findings.length).toBeGreaterThan(1);
      }
    }
  });
});

describe('questions', () => {
  it('about a knot of a row begin with a picture of how things are, which tells nothing more', () => {
    const pages = LESSON_NAMES.flatMap((name) => lessonNamed(name).pages).filter(
      ({ question }) => question !== null,
    );
    const pictured = pages.filter(({ shows }) => shows.length > 0);
    expect(pages.length - pictured.length).toBe(6);
    for (const { shows } of pictured) {
      expect(shows).toMatchObject([
        { what: expect.stringMatching(/^(row|lattice)$/), still: true, done: false },
      ]);
    }
  });

  it('do not give the answer away in the words of the choices', () => {
    for (const { choices } of questionsOf(lessonNamed('four-knots'))) {
      for (const { text } of choices) expect(text).not.toMatch(/left|right|begins|ends/);
    }
  });
});

describe('answers', () => {
  const found = (name: (typeof LESSON_NAMES)[number], text: RegExp): Answer => {
    for (const { choices } of questionsOf(lessonNamed(name))) {
      const choice = choices.find((one) => text.test(one.text));
      if (choice !== undefined) return choice.answer();
    }
    throw new Error(`No choice of ${name} is like ${text}.`);
  };

  it('to the turn: leaving the second edge knot out pulls the edge in', () => {
    const none = found('turn', /^None/);
    expect(none.findings.join(' ')).toContain('only one of the two edge knots');
    expect(none.shows.filter(({ what }) => what === 'fabric')).toHaveLength(2);
    const row = none.shows.find(({ what }) => what === 'row');
    expect(row?.what === 'row' ? row.reading.knots.map(({ column }) => column) : []).toEqual([
      4, 3, 2, 1, 0,
    ]);
    expect(found('turn', /^Forward-backward/).right).toBe(true);
  });

  it('to the turn: a lead caught there is seen in its row', () => {
    const caught = found('change-turn', /through the middle/);
    expect(caught.shows.map(({ what }) => what)).toEqual(['row', 'fabric', 'fabric']);
    expect(caught.findings).toHaveLength(1);
  });

  it('to a thread that runs out: what is not locked can slip out, though nothing shows', () => {
    const loose = found('run-out', /^Pass it behind/);
    expect(loose.findings).toEqual([]);
    expect(loose.text.join(' ')).toContain('can slip out');
  });

  it('show the turn with two edge knots and with one, in 3D and as the finished piece', () => {
    const shows = lessonNamed('turn').pages[1]?.shows ?? [];
    expect(shows.map(({ what }) => what)).toEqual(['row', 'row', 'fabric', 'fabric']);
    const knots = shows.map((show) => (show.what === 'row' ? show.reading.knots.length : 0));
    expect(knots).toEqual([6, 5, 0, 0]);
  });

  it('to the last knot: a caught lead sticks out, in a row that can be watched', () => {
    const caught = found('change-last', /through the middle/);
    expect(caught.findings[0]).toContain('sticks out at the side');
    const row = caught.shows.find(({ what }) => what === 'row');
    const knot = row?.what === 'row' ? row.reading.knots[row.knot] : undefined;
    expect(knot?.change?.oldLeadRoute).toBe('through');
  });

  it('within a row: a lead that is not locked works loose', () => {
    expect(found('change-within', /^Pass it behind/).findings[0]).toContain(
      'loop shows at the back',
    );
  });

  it('to a straight edge: a forward knot leaves the lead outside', () => {
    expect(found('edge-right', /^Forward:/).findings[0]).toContain('outside the edge string');
    expect(found('edge-right', /^Backward:/).text.join(' ')).toContain('begins on the right');
    expect(found('edge-left', /^Backward-forward/).right).toBe(true);
  });

  it('to which string ties: the base string would show its own colour', () => {
    const base = found('strings', /^Base string/);
    expect(base.text.join(' ')).toContain('undyed');
    const knot = base.shows.find(({ what }) => what === 'knot');
    expect(knot?.what === 'knot' ? knot.tyingColour : '').toBe('#e9e2d0');
  });

  it('to a float and a first use: the state machine refuses what cannot be', () => {
    expect(found('float', /^Add/).text[1]).toContain('already');
    expect(found('float', /^Take/).text[1]).toContain('3 across');
    expect(found('first-use', /^Take/).text[1]).toContain('not been used yet');
    expect(found('first-use', /far edge/).text[1]).toContain('do not hang side by side');
  });

  it('mirror for the left hand', () => {
    const right = questionsOf(lessonNamed('edge-right', { hand: 'right' }))[0];
    const left = questionsOf(lessonNamed('edge-right', { hand: 'left' }))[0];
    const kind = (question: Question | undefined) =>
      question?.choices.find(({ right: yes }) => yes)?.text.split(':')[0];
    expect(kind(right)).toBe('Forward-backward');
    expect(kind(left)).toBe('Backward-forward');
    expect(lessonNamed('edge-right', { hand: 'left' }).title).toContain('left');
  });
});

describe('a lesson for a place of any chart', () => {
  it('takes the case of the place', () => {
    const plan = planAlpha(chartOf('aaabbb', 'bbbbbb', 'abbbbb', 'bbbbba'));
    const nameAt = (row: number, column: number): string => lessonFor(plan, row, column).name;
    expect(nameAt(0, 0)).toBe('first-use');
    expect(nameAt(0, 3)).toBe('change-within');
    expect(nameAt(0, 5)).toBe('edge-right');
    expect(nameAt(1, 5)).toBe('turn');
    expect(nameAt(1, 3)).toBe('strings');
    expect(nameAt(2, 0)).toBe('change-turn');
    expect(nameAt(2, 1)).toBe('change-after-first');
    expect(lessonFor(planAlpha(chartOf('aa', 'aa'), { edge: 'wrapped' }), 1, 0).name).toBe(
      'wrapped',
    );
  });

  it('can be made of every knot of every small chart, and never calls a right answer wrong', () => {
    const line = (columns: number) => fc.stringMatching(new RegExp(`^[abc]{${columns}}$`));
    const charts = fc
      .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 4 }))
      .chain(([columns, rows]) => fc.array(line(columns), { minLength: rows, maxLength: rows }));
    fc.assert(
      fc.property(
        charts,
        fc.constantFrom('straight', 'wrapped'),
        fc.nat(),
        (lines, edge, place) => {
          const chart = chartOf(...lines);
          const plan = planAlpha(chart, { edge: edge as 'straight' | 'wrapped' });
          expect(verifyPlan(plan, chart).ok).toBe(true);
          const cell = place % (chart.rows * chart.columns);
          const row = Math.floor(cell / chart.columns);
          const lesson = lessonFor(plan, row, cell % chart.columns, { lang: 'de' });
          for (const { choices } of questionsOf(lesson)) {
            expect(choices.filter(({ right }) => right)).toHaveLength(1);
            for (const choice of choices) {
              const answer = choice.answer();
              if (choice.right) expect(answer.findings).toEqual([]);
              for (const text of [...answer.text, ...answer.findings])
                expect(text).not.toMatch(/[{}]/);
              for (const finding of answer.findings) expect(finding).toMatch(/^Reihe/);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('says clearly when there is no such place', () => {
    const plan = planAlpha(chartOf('ab', 'ba'));
    expect(() => lessonFor(plan, 0, 7)).toThrow(InputError);
    expect(() => lessonFor(plan, 9, 0)).toThrow(InputError);
  });
});
