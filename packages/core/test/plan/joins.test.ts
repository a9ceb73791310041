import { describe, expect, it } from 'vitest';
import { type Chart, type Join, planAlpha, verifyPlan } from '../../src/index.js';
import { drawn } from '../support/charts.js';
import { refusal } from '../support/refusal.js';
import { stepWords } from '../support/step-words.js';

const at = (row: number, column: number): Join => ({ row, column });

describe('where a lead is used up', () => {
  it('within the row, the next is caught in and the old one finished after the knot', () => {
    const plan = planAlpha(drawn('aaaa'), { joins: [at(0, 2)] });
    expect(stepWords(plan).slice(5)).toEqual([
      'add L2 at 3',
      'L2 forward B3',
      'layThrough L1',
      'L2 forward B3',
      'park L1 through',
      'end L1',
      'L2 forward B4',
      'L2 backward B4',
    ]);
    const [, , , , first, second] = plan.strings;
    expect(second).toEqual({ ...first, id: 'L2' });
  });

  it('at the last knot, the old one is passed behind it', () => {
    expect(stepWords(planAlpha(drawn('aaa'), { joins: [at(0, 2)] })).slice(5)).toEqual([
      'add L2 at 3',
      'park L1 behind',
      'L2 forward B3',
      'L2 backward B3',
      'end L1',
    ]);
  });

  it('at the turn, it goes down', () => {
    expect(stepWords(planAlpha(drawn('aa', 'aa'), { joins: [at(1, 1)] })).slice(5)).toEqual([
      'park L1 down',
      'turn',
      'add L2 at 1',
      'L2 forward B2',
      'L2 backward B2',
      'end L1',
      'L2 backward B1',
      'L2 forward B1',
    ]);
  });

  it('while it rests, the next takes over where the colour comes back', () => {
    const chart = drawn('abab');
    const plan = planAlpha(chart, { joins: [at(0, 2)] });
    expect(plan.strings.slice(4).map(({ id, colour }) => [id, colour])).toEqual([
      ['L1', chart.colours[0]?.hex],
      ['L2', chart.colours[1]?.hex],
      ['L3', chart.colours[0]?.hex],
    ]);
    expect(stepWords(plan)).toContain('add L3 at 3');
    expect(stepWords(plan)).toContain('end L1');
  });

  it('is no place where the colour is only begun', () => {
    const chart = drawn('aabb', 'bbaa');
    const joins = [at(0, 0), at(0, 2)];
    expect(stepWords(planAlpha(chart, { joins }))).toEqual(stepWords(planAlpha(chart)));
    expect(planAlpha(chart, { joins }).strings).toEqual(planAlpha(chart).strings);
  });

  it('may be said twice and in any order', () => {
    const chart = drawn('aaaa', 'abba', 'aaaa');
    const joins = [at(0, 2), at(1, 1), at(1, 0), at(2, 3)];
    const plan = planAlpha(chart, { joins });
    expect(plan.strings.map(({ id }) => id)).toEqual([
      'B1',
      'B2',
      'B3',
      'B4',
      'L1',
      'L2',
      'L3',
      'L4',
      'L5',
      'L6',
    ]);
    const other = planAlpha(chart, { joins: [...joins, ...joins].reverse() });
    expect(stepWords(other)).toEqual(stepWords(plan));
    expect(verifyPlan(plan, chart).findings.filter(({ grade }) => grade !== 'note')).toEqual([]);
  });

  it.each([
    [at(-1, 0), 0, 1],
    [at(0, -1), 1, 0],
    [at(2, 0), 3, 1],
    [at(0, 3), 1, 4],
    [at(0.5, 0), 1.5, 1],
    [at(0, 0.5), 1, 1.5],
    [at(Number.NaN, 0), Number.NaN, 1],
  ])('is refused outside the chart: %o', (join, row, column) => {
    const error = refusal(() => planAlpha(drawn('aaa', 'aaa'), { joins: [at(1, 2), join] }));
    expect(error.code).toBe('join-outside');
    expect(error.message).toMatch(/to be joined outside the chart/);
    expect(error.place).toEqual({ row, column });
    expect(error.remedy).toBe('Choose a row from 1 to 2 and a column from 1 to 3.');
  });

  it('is refused when there would be more strings than a plan can have', () => {
    const rows = 220;
    const columns = 300;
    const chart: Chart = { ...drawn('a'), rows, columns, cells: new Uint8Array(rows * columns) };
    const joins = (count: number) =>
      Array.from({ length: count }, (_, i) => at(Math.floor((i + 1) / columns), (i + 1) % columns));
    // 300 base strings, the first lead, and one for each join.
    const most = 65_535 - 301;
    expect(planAlpha(chart, { joins: joins(most) }).strings).toHaveLength(65_535);
    const error = refusal(() => planAlpha(chart, { joins: joins(most + 1) }));
    expect(error).toMatchObject({ code: 'too-many-strings', remedy: 'Plan fewer joins.' });
    expect(error.message).toMatch(/more than 65535 strings/);
  });
});

describe('what a plan says of itself', () => {
  it('is its chart’s name, edge and start, unless others are asked for', () => {
    const chart: Chart = { ...drawn('ab', 'ba'), name: 'Heron', edge: 'wrapped', start: 'right' };
    expect(planAlpha(chart)).toMatchObject({
      name: 'Heron',
      rows: 2,
      columns: 2,
      edge: 'wrapped',
      start: 'right',
      hung: ['B1', 'B2'],
    });
    expect(planAlpha(chart, { edge: 'straight', start: 'left' })).toMatchObject({
      edge: 'straight',
      start: 'left',
    });
    expect(planAlpha(drawn('ab'))).toMatchObject({ edge: 'straight', start: 'left' });
  });

  it('lists base strings from the left, then leads in the order of their first knots', () => {
    const chart = drawn('cab', 'abc');
    const names = (start: 'left' | 'right') => planAlpha(chart, { start }).strings.slice(3);
    expect(names('left').map(({ name }) => name)).toEqual(['colour c', 'colour a', 'colour b']);
    expect(names('right').map(({ name }) => name)).toEqual(['colour b', 'colour a', 'colour c']);
    expect(planAlpha(chart, { baseColour: '#123456' }).strings.slice(0, 4)).toEqual([
      { id: 'B1', role: 'base', colour: '#123456', name: '' },
      { id: 'B2', role: 'base', colour: '#123456', name: '' },
      { id: 'B3', role: 'base', colour: '#123456', name: '' },
      { id: 'L1', role: 'lead', colour: chart.colours[2]?.hex, name: 'colour c' },
    ]);
    expect(planAlpha(chart).strings[0]?.colour).toBe('#e9e2d0');
  });
});
