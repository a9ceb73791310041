import { describe, expect, it } from 'vitest';
import { type Chart, type PlanOptions, planAlpha, verifyPlan } from '../../src/index.js';
import { half, halfOn, listed, splice, verified, withoutKnot } from '../support/alpha-slips.js';
import { drawn } from '../support/charts.js';

describe('rows that the steps never reach', () => {
  it('lack every knot, in the order in which it would be tied', () => {
    const result = verified(drawn('aaa', 'aaa', 'aaa'), (steps) =>
      steps.slice(0, halfOn(steps, 1, 'B2')),
    );
    expect(listed(result)).toEqual([
      'wrong missing-knot at 2,2',
      'wrong missing-knot at 2,1',
      'wrong missing-knot at 3,1',
      'wrong missing-knot at 3,2',
      'wrong missing-knot at 3,3',
    ]);
  });

  it('are none when there is a row too many', () => {
    const result = verified(drawn('aa', 'aa'), (steps) => [
      ...steps,
      { do: 'turn' },
      half('backward', 'L1', 'B1'),
      half('forward', 'L1', 'B1'),
    ]);
    expect(listed(result)).toEqual(['wrong row-too-many at 3,-']);
    expect(result.findings[0]?.message).toMatch(/^The plan goes on after row 2, the last/);
  });
});

describe('the two edge knots of a turn', () => {
  const plain = drawn('aaa', 'aaa', 'aaa');

  it.each([
    ['ends the row before', 0, 'B3', 'weak single-edge-knot at 1,3'],
    ['starts the row after', 1, 'B3', 'weak single-edge-knot at 2,3'],
    ['ends the row before, at the left', 1, 'B1', 'weak single-edge-knot at 2,1'],
    ['starts the row after, at the left', 2, 'B1', 'weak single-edge-knot at 3,1'],
  ])('are one too few when one is left out that %s', (_, row, held, expected) => {
    const result = verified(plain, withoutKnot(row, held));
    const column = Number(held.slice(1));
    expect(listed(result)).toEqual([`wrong missing-knot at ${row + 1},${column}`, expected]);
    expect(result.findings.at(-1)?.message).toMatch(
      new RegExp(`^Edge string ${held} has only one`),
    );
  });

  it('are not both asked for before the first row, after the last, and by a wrapped edge', () => {
    expect(listed(verified(plain, withoutKnot(0, 'B1')))).toEqual(['wrong missing-knot at 1,1']);
    expect(listed(verified(plain, withoutKnot(2, 'B3')))).toEqual(['wrong missing-knot at 3,3']);
    expect(listed(verified(plain, withoutKnot(0, 'B3'), { edge: 'wrapped' }))).toEqual([
      'wrong missing-knot at 1,3',
    ]);
  });

  it('are not one too few when both are left out', () => {
    const result = verified(plain, (steps) => withoutKnot(0, 'B3')(withoutKnot(1, 'B3')(steps)));
    expect(listed(result)).toEqual(['wrong missing-knot at 1,3', 'wrong missing-knot at 2,3']);
  });
});

describe('a repeat', () => {
  const open = (chart: Chart, options?: PlanOptions) =>
    verifyPlan(planAlpha(chart, options), chart).findings.filter(
      ({ code }) => code === 'repeat-does-not-close',
    );

  it.each([
    ['an even number of rows in one colour', drawn('aa', 'aa'), {}],
    ['colours between, but the same at both ends', drawn('abb', 'abb'), {}],
    ['the same from the right', drawn('bba', 'bba'), { start: 'right' as const }],
    ['the same with a wrapped edge', drawn('abb', 'abb'), { edge: 'wrapped' as const }],
  ])('closes after %s', (_, chart, options) => {
    expect(open(chart, options)).toEqual([]);
  });

  it.each([
    ['an odd number of rows', drawn('aa'), {}, /the sides differ/],
    ['another colour at the end', drawn('abb', 'bbb'), {}, /the colours differ/],
    ['the same from the right', drawn('bba', 'bbb'), { start: 'right' as const }, /colours differ/],
  ])('stays open after %s, which is said of the whole piece', (_, chart, options, reason) => {
    expect(open(chart, options)).toEqual([
      {
        grade: 'note',
        code: 'repeat-does-not-close',
        row: null,
        column: null,
        message: expect.stringMatching(reason),
      },
    ]);
  });

  it('is not spoken of where something is wrong', () => {
    const result = verified(drawn('aaa'), (steps) => splice(steps, halfOn(steps, 0, 'B2'), 2));
    expect(result.findings.map(({ code }) => code)).toEqual(['missing-knot']);
  });
});
