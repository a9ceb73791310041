import {
  type Chart,
  EDGE_TECHNIQUES,
  type EdgeTechnique,
  planAlpha,
  readTextChart,
  type StartSide,
  USUAL_PACE,
  verifyPlan,
  withCells,
} from '@halfhitch/core';
import { Lengths, threadOf, tightMeasures, usageOf } from '@halfhitch/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { USUAL_SETTINGS } from '../../src/cut/settings.js';
import { withinLimits } from '../../src/ease/makers-pace.js';
import { marksOf } from '../../src/ease/marks.js';
import type { EaseAnswer, EaseRequest } from '../../src/ease/messages.js';
import { paceFrom, readPace } from '../../src/ease/pace.js';
import { bestInWords, doneInWords, wayInWords } from '../../src/ease/way-words.js';
import { workOut } from '../../src/ease/work-out.js';

const HEAD = 'b #1f6fb2 lake blue\no #d9642a buoy orange\nw #f4f1e8 chalk\n\n';

function chartOf(...rows: string[]): Chart {
  return readTextChart(`${HEAD}${rows.join('\n')}\n`).chart;
}

function ask(chart: Chart, change: Partial<EaseRequest> = {}): EaseAnswer {
  const outcome = workOut({
    chart,
    choice: { edge: 'straight', start: 'left' },
    cut: USUAL_SETTINGS,
    pace: USUAL_PACE,
    mayMirror: false,
    ...change,
  });
  if ('problem' in outcome) throw new Error(outcome.problem);
  return outcome;
}

const lengthsOf = (edge: EdgeTechnique): Lengths =>
  new Lengths(tightMeasures(edge), threadOf().diameter);

const anyRows = fc
  .tuple(fc.integer({ min: 2, max: 9 }), fc.integer({ min: 2, max: 12 }))
  .chain(([columns, rows]) =>
    fc.array(
      fc
        .array(fc.constantFrom('b', 'b', 'b', 'b', 'o', 'w'), {
          minLength: columns,
          maxLength: columns,
        })
        .map((row) => row.join('')),
      { minLength: rows, maxLength: rows },
    ),
  );

describe('advice', () => {
  it('saves the thread that following both whole plans gives', () => {
    fc.assert(
      fc.property(
        anyRows,
        fc.constantFrom(...EDGE_TECHNIQUES),
        fc.constantFrom<StartSide>('left', 'right'),
        (rows, edge, start) => {
          const chart = chartOf(...rows);
          const choice = { edge, start };
          const lengths = lengthsOf(edge);
          const inLeads = (plan: ReturnType<typeof planAlpha>): number =>
            usageOf(plan, lengths).reduce(
              (sum, { knots, travel, floats }) => sum + knots + travel + floats,
              2 * Number(USUAL_SETTINGS.tails) * (plan.strings.length - plan.columns),
            );
          const before = inLeads(planAlpha(chart, choice));
          for (const { suggestion, thread } of ask(chart, { choice }).advice) {
            const after = inLeads(planAlpha(withCells(chart, suggestion.cells), suggestion.choice));
            expect(thread).toBeCloseTo(before - after, 4);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('goes by the thread and the tails of the cut list, and by the usual ones while they are wrong', () => {
    const chart = chartOf('bbbbbb', 'bbobbb', 'bbbbbb');
    const saved = (cut: Partial<typeof USUAL_SETTINGS>): number =>
      ask(chart, { cut: { ...USUAL_SETTINGS, ...cut } }).advice[0]?.thread ?? Number.NaN;
    const thin = { thread: 'diameter', diameter: '0.5', tails: '0' } as const;
    expect(saved({ ...thin, diameter: '1' })).toBeCloseTo(2 * saved(thin), 6);
    expect(saved({ ...thin, tails: '100' })).toBeCloseTo(saved(thin) + 200, 6);
    expect(saved({ diameter: 'x', thread: 'diameter' })).toBeGreaterThan(0);
  });

  it('saves time by the pace it is given', () => {
    const chart = chartOf('bbbbbb', 'bbobbb', 'bbbbbb');
    const { advice, before } = ask(chart, { pace: { halfHitch: 1, change: 7 } });
    expect(advice[0]?.suggestion.gain.seconds).toBe(14);
    expect(before.seconds).toBe(36 + 14);
  });

  it('is none for a chart whose own knots do not make it', () => {
    const chart = { ...chartOf('bob', 'bbb'), knots: new Uint8Array(6) };
    expect(ask(chart)).toMatchObject({ ok: false, advice: [] });
  });
});

describe('the best way in words', () => {
  it('says what is done and what it saves', () => {
    const { way } = ask(chartOf('bbo', 'bbb', 'bbb'));
    expect(wayInWords(way.best)).toBe('From the right');
    expect(doneInWords(way)).toBe('Start from the right');
    expect(bestInWords(way)).toMatch(/^Saves 1 colour change/);
    const { way: plain } = ask(chartOf('bbb', 'bbb'), { mayMirror: true });
    expect(bestInWords(plain)).toBeNull();
    const best = { ...plain.current, mirroring: 'left-right' } as const;
    expect(wayInWords(best)).toBe('From the left, the drawing mirrored left to right');
    expect(doneInWords({ ...plain, best })).toBe('Mirror the drawing');
    const turned = { ...best, mirroring: 'half-turn' } as const;
    expect(doneInWords({ ...plain, best: turned })).toBe('Turn the drawing');
    expect(doneInWords({ ...plain, best: { ...best, start: 'right' } })).toBe(
      'Mirror the drawing and start from the right',
    );
  });
});

describe('a pace', () => {
  it('is the usual one wherever something else was kept', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (kept) => {
        expect(paceFrom(kept)).toEqual(USUAL_PACE);
      }),
    );
    expect(paceFrom({ halfHitch: 5, change: -1 })).toEqual({ ...USUAL_PACE, halfHitch: 5 });
  });

  it('that was timed is what a field can hold', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1_000, noNaN: true }),
        fc.double({ min: 0, max: 1_000, noNaN: true }),
        (halfHitch, change) => {
          const pace = withinLimits({ halfHitch, change });
          expect(readPace('halfHitch', String(pace.halfHitch))).toBe(pace.halfHitch);
          expect(readPace('change', String(pace.change))).toBe(pace.change);
          if (halfHitch > 1 && halfHitch < 59) expect(pace.halfHitch).toBeCloseTo(halfHitch, 0);
        },
      ),
    );
  });

  it.each([
    ['2.5', 2.5],
    [' 4 ', 4],
    ['0', null],
    ['61', null],
    ['', null],
    ['1e1', null],
    ['three', null],
  ])('written "%s" is %s', (text, value) => expect(readPace('halfHitch', text)).toBe(value));
});

describe('marks on the chart', () => {
  it('are one for each place, with the gravest grade and all that was found', () => {
    const chart = chartOf('bob', 'bbb', 'obo');
    const plan = planAlpha(chart);
    const { findings } = verifyPlan(plan, chart, { longFloat: 0 });
    const marks = marksOf({ findings, rows: 3, columns: 3 });
    expect(marks.length).toBeGreaterThan(0);
    const placed = findings.filter(({ row, column }) => row !== null && column !== null);
    expect(marks.flatMap(({ messages }) => messages)).toHaveLength(placed.length);
    for (const { row, column } of placed) {
      expect(
        marks.filter((mark) => mark.row + 1 === row && mark.column + 1 === column),
      ).toHaveLength(1);
    }
    const both = marksOf({
      rows: 2,
      columns: 2,
      findings: [
        { grade: 'note', code: 'long-float', row: 1, column: 2, message: 'later' },
        { grade: 'wrong', code: 'missing-knot', row: 1, column: 2, message: 'first' },
        { grade: 'wrong', code: 'missing-knot', row: 3, column: 1, message: 'outside' },
        { grade: 'note', code: 'repeat-does-not-close', row: null, column: null, message: 'none' },
      ],
    });
    expect(both).toEqual([{ row: 0, column: 1, grade: 'wrong', messages: ['first', 'later'] }]);
  });
});
