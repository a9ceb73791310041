import { describe, expect, it } from 'vitest';
import {
  type Chart,
  type Finding,
  planAlpha,
  type Step,
  StepList,
  type Verification,
  verifyPlan,
} from '../../src/index.js';
import { type Change, halfOn, verified as verifiedOf } from '../support/alpha-slips.js';
import { drawn } from '../support/charts.js';

const chart = drawn('aabbaa', 'aabbaa', 'aaaaaa', 'bbbbbb');

/** The chart's plan with its steps changed, verified. */
const verified = (change: Change, of: Chart = chart): Verification => verifiedOf(of, change);

function change(steps: Step[], at: number, news: Partial<Record<string, string>>): Step[] {
  return steps.map((step, i) => (i === at ? ({ ...step, ...news } as Step) : step));
}

const worst = (result: Verification): readonly Finding[] =>
  result.findings.filter((finding) => finding.grade === 'wrong');

describe('a sound plan', () => {
  it('has nothing wrong', () => {
    const result = verified((steps) => steps);
    expect(result.ok).toBe(true);
    expect(result.findings.filter(({ grade }) => grade !== 'note')).toEqual([]);
  });
});

describe('what is wrong is named with its place and its consequence', () => {
  it('an edge knot left out at a turn', () => {
    const result = verified((steps) => {
      const i = halfOn(steps, 1, 'B6');
      return [...steps.slice(0, i), ...steps.slice(i + 2)];
    });
    expect(result.ok).toBe(false);
    expect(worst(result)).toEqual([
      expect.objectContaining({ code: 'missing-knot', row: 2, column: 6 }),
    ]);
    expect(worst(result)[0]?.message).toMatch(/edge pulls in/);
    expect(result.findings).toContainEqual(
      expect.objectContaining({ grade: 'weak', code: 'single-edge-knot', row: 2, column: 6 }),
    );
  });

  it('the edge knot that ends a row left out', () => {
    const result = verified((steps) => {
      const i = halfOn(steps, 2, 'B6');
      return [...steps.slice(0, i), ...steps.slice(i + 2)];
    });
    expect(worst(result)).toEqual([
      expect.objectContaining({ code: 'missing-knot', row: 3, column: 6 }),
    ]);
    expect(result.findings).toContainEqual(
      expect.objectContaining({ code: 'single-edge-knot', row: 3, column: 6 }),
    );
  });

  it('a knot of the wrong kind within a row', () => {
    const result = verified((steps) =>
      change(steps, halfOn(steps, 2, 'B3', 1), { way: 'backward' }),
    );
    expect(worst(result)).toEqual([
      expect.objectContaining({ code: 'wrong-kind', row: 3, column: 3 }),
    ]);
    expect(worst(result)[0]?.message).toMatch(/cannot tie the next knot, on B4/);
  });

  it('a forward knot on the right edge string, after which the next row cannot start', () => {
    const result = verified((steps) =>
      change(steps, halfOn(steps, 0, 'B6', 1), { way: 'forward' }),
    );
    expect(worst(result)).toEqual([
      expect.objectContaining({ code: 'wrong-kind', row: 1, column: 6 }),
    ]);
    expect(worst(result)[0]?.message).toMatch(/edge steps/);
  });

  it('the same at the very end displaces the edge string, no more', () => {
    const result = verified((steps) =>
      change(steps, halfOn(steps, 3, 'B1', 1), { way: 'backward' }),
    );
    expect(result.ok).toBe(true);
    expect(result.findings).toContainEqual(
      expect.objectContaining({ grade: 'weak', code: 'edge-string-displaced', row: 4, column: 1 }),
    );
  });

  it('a knot tied by a lead that is not in hand', () => {
    const result = verified((steps) => {
      const i = halfOn(steps, 2, 'B4');
      return change(change(steps, i, { tying: 'L2' }), i + 1, { tying: 'L2' });
    });
    expect(worst(result)).toEqual([
      expect.objectContaining({ code: 'lead-not-in-hand', row: 3, column: 4 }),
    ]);
  });

  it('a string skipped', () => {
    const result = verified((steps) => {
      const i = halfOn(steps, 2, 'B4');
      return [...steps.slice(0, i), ...steps.slice(i + 2)];
    });
    expect(worst(result)).toEqual([
      expect.objectContaining({ code: 'missing-knot', row: 3, column: 4 }),
    ]);
    expect(worst(result)[0]?.message).toMatch(/skipped/);
  });

  it('a lead in the wrong colour shows in every cell it ties', () => {
    const plan = planAlpha(chart);
    const strings = plan.strings.map((string) =>
      string.id === 'L2' ? { ...string, colour: '#123456' } : string,
    );
    const result = verifyPlan({ ...plan, strings }, chart);
    const cells = worst(result).map(({ code, row, column }) => `${code} ${row},${column}`);
    expect(cells).toHaveLength(10);
    expect(cells.slice(0, 3)).toEqual([
      'colour-differs 1,3',
      'colour-differs 1,4',
      'colour-differs 2,4',
    ]);
  });

  it('a lead caught in the last knot of a row is weak', () => {
    const edgeChange = drawn('aab', 'bbb');
    const result = verified((steps) => {
      const park = steps.findIndex((step) => step.do === 'park');
      const old = steps[park] as Extract<Step, { do: 'park' }>;
      const rest = steps.filter((_, i) => i !== park);
      return [
        ...rest.slice(0, park + 1),
        { do: 'layThrough', string: old.string },
        ...rest.slice(park + 1, park + 2),
        { ...old, route: 'through' },
        ...rest.slice(park + 2),
      ];
    }, edgeChange);
    expect(result.ok).toBe(true);
    expect(result.findings).toContainEqual(
      expect.objectContaining({ grade: 'weak', code: 'lead-caught-at-edge', row: 1, column: 3 }),
    );
  });

  it('a long float is weak, and how long may be said', () => {
    const far = drawn('abbbbbbbbbbbba');
    const floats = (longFloat?: number): Finding[] =>
      verifyPlan(planAlpha(far), far, longFloat === undefined ? {} : { longFloat }).findings.filter(
        ({ code }) => code === 'long-float',
      );
    expect(floats()).toEqual([expect.objectContaining({ grade: 'weak', row: 1, column: 14 })]);
    expect(floats(20)).toEqual([]);
  });

  it('two mistakes in different rows are both found', () => {
    const result = verified((steps) => {
      const late = halfOn(steps, 2, 'B4');
      const without = [...steps.slice(0, late), ...steps.slice(late + 2)];
      return change(without, halfOn(steps, 0, 'B2', 1), { way: 'backward' });
    });
    expect(worst(result).map(({ code, row, column }) => [code, row, column])).toEqual([
      ['wrong-kind', 1, 2],
      ['missing-knot', 3, 4],
    ]);
  });

  it('a plan that stops early lacks the rest', () => {
    const result = verified((steps) => steps.slice(0, halfOn(steps, 3, 'B2')));
    expect(worst(result).map(({ row, column }) => [row, column])).toEqual([
      [4, 2],
      [4, 1],
    ]);
  });

  it('a repeat that does not close is noted', () => {
    const notes = (of: Chart): string[] =>
      verifyPlan(planAlpha(of), of)
        .findings.filter(({ code }) => code === 'repeat-does-not-close')
        .map(({ message }) => message);
    expect(notes(drawn('aa', 'aa'))).toEqual([]);
    expect(notes(drawn('aa'))[0]).toMatch(/sides differ/);
    expect(notes(drawn('aa', 'bb'))[0]).toMatch(/colours differ/);
  });

  it('a chart of another size cannot be compared', () => {
    expect(() => verifyPlan(planAlpha(chart), drawn('aa'))).toThrow(/4 rows of 6 knots.*1 rows/);
  });

  it('lists so many findings of a kind and counts the rest', () => {
    const large = { ...drawn('a'), rows: 100, columns: 30, cells: new Uint8Array(3000) };
    const plan = planAlpha(large);
    const result = verifyPlan({ ...plan, steps: StepList.from(plan.strings, []) }, large);
    expect(worst(result)).toHaveLength(200);
    expect(result.findings).toContainEqual(
      expect.objectContaining({ code: 'more-findings', message: expect.stringMatching(/3000/) }),
    );
  });
});
