import { describe, expect, it } from 'vitest';
import { KNOT_KINDS, planAlpha, type Step, StepList, verifyPlan } from '../../src/index.js';
import { half, halfOn, listed, splice, stepOf, verified } from '../support/alpha-slips.js';
import { drawn } from '../support/charts.js';
import { refusal } from '../support/refusal.js';

const turn: Step = { do: 'turn' };
const plain = drawn('aaa', 'aaa', 'aaa');

describe('a wrapped edge', () => {
  const wrapped = { edge: 'wrapped' as const };

  it('has no edge string to be displaced: an edge knot of another kind is only weak', () => {
    const result = verified(
      plain,
      (steps) => splice(steps, halfOn(steps, 2, 'B3', 1), 1, half('backward', 'L1', 'B3')),
      wrapped,
    );
    expect(listed(result)).toEqual(['weak wrong-kind at 3,3']);
    expect(result.findings[0]?.message).toMatch(/The lead ends on the wrong side of B3\.$/);
  });

  it('does so within the row wrongly', () => {
    const result = verified(
      plain,
      (steps) => splice(steps, halfOn(steps, 2, 'B2', 1), 1, half('backward', 'L1', 'B2')),
      wrapped,
    );
    expect(listed(result)).toEqual(['wrong wrong-kind at 3,2']);
  });
});

describe('a piece begun at the right', () => {
  const right = { start: 'right' as const };

  it.each([
    ['left out', (s: Step[]) => splice(s, halfOn(s, 0, 'B2'), 2), ['wrong missing-knot at 1,2']],
    [
      'tied onto the string before',
      (s: Step[]) =>
        splice(
          s,
          halfOn(s, 0, 'B2'),
          2,
          half('backward', 'L1', 'B3'),
          half('backward', 'L1', 'B3'),
        ),
      ['wrong wrong-string at 1,2'],
    ],
    [
      'of another kind',
      (s: Step[]) => splice(s, halfOn(s, 0, 'B2', 1), 1, half('forward', 'L1', 'B2')),
      ['wrong wrong-kind at 1,2'],
    ],
    [
      'begun the other way',
      (s: Step[]) => splice(s, halfOn(s, 0, 'B2'), 1, half('forward', 'L1', 'B2')),
      ['wrong wrong-kind at 1,2'],
    ],
  ])('has a knot %s', (_, change, found) => {
    expect(listed(verified(plain, change, right))).toEqual(found);
  });
});

describe('a piece one knot wide', () => {
  const narrow = drawn('a', 'a', 'b', 'b');

  it('may turn too soon', () => {
    const result = verified(narrow, (steps) => splice(steps, stepOf(steps, 'turn'), 0, turn));
    expect(listed(result)).toEqual(['wrong turn-too-soon at 2,1']);
  });

  it('may lack a turn, which looks like a knot too many', () => {
    const result = verified(narrow, (steps) => splice(steps, stepOf(steps, 'turn'), 1));
    expect(listed(result)[0]).toBe('wrong doubled-knot at 1,1');
  });

  it('may have a knot of the other kind, after which the lead hangs on the other side', () => {
    const result = verified(narrow, (steps) =>
      splice(steps, halfOn(steps, 0, 'B1', 1), 1, half('backward', 'L1', 'B1')),
    );
    expect(listed(result)).toEqual(['wrong wrong-kind at 1,1']);
  });
});

describe('what follows a slip', () => {
  it('is judged as if the strings hung right: a lead behind the work is not in hand', () => {
    // The lead goes to the back in the middle of the row and is never taken up.
    const result = verified(drawn('aaaa', 'aaaa'), (steps) =>
      splice(steps, halfOn(steps, 0, 'B3'), 0, { do: 'park', string: 'L1', route: 'behind' }),
    );
    expect(listed(result)).toEqual(['wrong lead-not-in-hand at 1,3']);
    expect(result.knots).toBe(8);
  });

  it('is not made worse by another lead that hangs in front: it can be taken up again', () => {
    const result = verified(drawn('aabb', 'aaaa', 'aabb'), (steps) =>
      splice(
        steps,
        halfOn(steps, 1, 'B2'),
        0,
        { do: 'park', string: 'L1', route: 'behind' },
        { do: 'takeUp', string: 'L2', slot: 0 },
      ),
    );
    expect(listed(result)).toEqual(['wrong lead-not-in-hand at 2,2']);
  });

  it('is judged as if a lead finished too soon had not been: it leaves and comes back', () => {
    const result = verified(drawn('aabb', 'aabb', 'aabb', 'aabb'), (given) => {
      const steps = splice(given, stepOf(given, 'park'), 1, { do: 'end', string: 'L1' });
      return splice(steps, stepOf(steps, 'layThrough'), 1);
    });
    expect(listed(result)).toEqual([
      'wrong step-cannot-be-done at 2,2',
      'wrong lead-not-in-hand at 2,2',
    ]);
  });

  it('may be a second slip in the next knot, found too', () => {
    const result = verified(drawn('aaaaa', 'aaaaa'), (steps) => {
      const first = splice(steps, halfOn(steps, 0, 'B2', 1), 1, half('backward', 'L1', 'B2'));
      return splice(first, halfOn(first, 0, 'B3', 1), 1, half('backward', 'L1', 'B3'));
    });
    expect(listed(result)).toEqual(['wrong wrong-kind at 1,2', 'wrong wrong-kind at 1,3']);
  });

  it('is not blamed twice: after a knot left out, the lead hangs on the wrong side', () => {
    const result = verified(drawn('aaaa', 'aaaa'), (steps) =>
      splice(steps, halfOn(steps, 1, 'B4'), 2),
    );
    expect(listed(result)).toEqual(['wrong missing-knot at 2,4', 'weak single-edge-knot at 2,4']);
  });

  it('is found in its own row when a row lacks two knots at its end', () => {
    const result = verified(drawn('aaaa', 'aaaa'), (steps) =>
      splice(steps, halfOn(steps, 0, 'B3'), 4),
    );
    expect(listed(result)).toEqual([
      'wrong missing-knot at 1,3',
      'wrong missing-knot at 1,4',
      'weak single-edge-knot at 1,4',
    ]);
    expect(result.findings[0]?.message).toMatch(/^The forward knot on base string B3 is missing/);
    expect(result.findings[1]?.message).toMatch(/^The forward-backward knot .* B4 .*edge pulls in/);
  });

  it('is found where it is when a stray lead comes after the last turn', () => {
    const result = verified(drawn('aab', 'aab'), (steps) => [
      ...steps,
      turn,
      { do: 'takeUp', string: 'L2', slot: 0 },
    ]);
    expect(listed(result)).toEqual(['wrong lead-left-in-front at 2,1']);
  });
});

describe('a sound plan', () => {
  it('is said to be what it knots, cell by cell', () => {
    const chart = drawn('abb', 'bba');
    const { tying, kinds } = verifyPlan(planAlpha(chart), chart);
    expect([...tying]).toEqual([3, 4, 4, 4, 4, 3]);
    expect([...kinds].map((kind) => KNOT_KINDS[kind])).toEqual([
      'backward-forward',
      'forward',
      'forward-backward',
      'backward-forward',
      'backward',
      'forward-backward',
    ]);
  });

  it('whose lead has another colour shows that colour in each of its cells', () => {
    const chart = drawn('ab', 'ab');
    const plan = planAlpha(chart);
    const strings = plan.strings.map((string) =>
      string.id === 'L2' ? { ...string, colour: '#123456', name: 'slate' } : string,
    );
    const { findings } = verifyPlan({ ...plan, strings }, chart);
    expect(findings.map(({ code, row, column }) => [code, row, column])).toEqual([
      ['colour-differs', 1, 2],
      ['colour-differs', 2, 2],
    ]);
    expect(findings[0]?.message).toBe(
      `The knot shows slate (#123456), the colour of L2, but colour b (${chart.colours[1]?.hex}) is drawn.`,
    );
  });
});

describe('a string tied too late', () => {
  it.each([
    ['to the right', 0, 'B2', 'B5', ['wrong missing-knot at 1,2', 'wrong wrong-string at 1,2']],
    ['to the left', 1, 'B5', 'B2', ['wrong missing-knot at 2,5', 'wrong wrong-string at 2,5']],
  ])('is told from one tied twice, in a row %s', (_, row, late, before, found) => {
    const result = verified(drawn('aaaaaa', 'aaaaaa'), (steps) => {
      const at = halfOn(steps, row, late);
      const [knot, again] = steps.slice(at, at + 2) as [Step, Step];
      const without = splice(steps, at, 2);
      return splice(without, halfOn(without, row, before), 0, knot, again);
    });
    expect(listed(result)).toEqual(found);
    expect(result.findings[1]?.message).toContain(
      `onto ${late}, which the lead has passed already`,
    );
  });
});

describe('an edge knot of another kind', () => {
  it('displaces the edge string, no more, when another lead starts the next row', () => {
    const result = verified(drawn('aaa', 'bbb'), (steps) =>
      splice(steps, halfOn(steps, 0, 'B3', 1), 1, half('forward', 'L1', 'B3')),
    );
    expect(listed(result)).toEqual(['weak edge-string-displaced at 1,3']);
    expect(result.ok).toBe(true);
  });
});

describe('a plan for something else altogether', () => {
  it('is followed for 2,000 mistakes, and what comes after is taken as missing', () => {
    const plan = planAlpha({ ...drawn('a'), rows: 50, columns: 50, cells: new Uint8Array(2500) });
    const other = { ...drawn('b'), rows: 50, columns: 50, cells: new Uint8Array(2500) };
    const notes = verifyPlan(plan, other)
      .findings.filter(({ code }) => code === 'more-findings')
      .map(({ message }) => message);
    expect(notes).toEqual([
      'Only the first 200 of 2001 findings "colour-differs" are listed.',
      'Only the first 200 of 499 findings "missing-knot" are listed.',
    ]);
  });

  it('lists 200 findings of a kind without a word of more, and 201 with it', () => {
    const missing = (rows: number, columns: number) => {
      const chart = { ...drawn('a'), rows, columns, cells: new Uint8Array(rows * columns) };
      const plan = planAlpha(chart);
      return verifyPlan({ ...plan, steps: StepList.from(plan.strings, []) }, chart).findings;
    };
    expect(missing(10, 20)).toHaveLength(200);
    expect(missing(3, 67)).toHaveLength(201);
    expect(missing(3, 67).at(-1)).toEqual({
      grade: 'note',
      code: 'more-findings',
      row: null,
      column: null,
      message: 'Only the first 200 of 201 findings "missing-knot" are listed.',
    });
  });

  it('is refused when nothing can be compared', () => {
    const chart = drawn('aa', 'aa');
    const plan = planAlpha(chart);
    expect(refusal(() => verifyPlan(plan, drawn('aa')))).toMatchObject({
      code: 'other-chart',
      remedy: 'Give the chart that the plan was made from.',
    });
    expect(refusal(() => verifyPlan(plan, drawn('aaa', 'aaa'))).code).toBe('other-chart');
    const bare = refusal(() => verifyPlan({ ...plan, hung: ['B1'] }, chart));
    expect(bare.code).toBe('base-strings');
    expect(bare.message).toMatch(/hangs 1 base strings for 2 columns\..*one base string for each/);
  });
});
