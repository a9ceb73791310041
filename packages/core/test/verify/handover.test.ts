import { describe, expect, it } from 'vitest';
import { type Chart, planAlpha, type Step, type StepList, verifyPlan } from '../../src/index.js';
import { type Change, listed, splice, stepOf, verified } from '../support/alpha-slips.js';
import { drawn } from '../support/charts.js';

/** How the old lead leaves in the first hand-over of a plan: laid through the knot, and its route. */
const leaving =
  (laid: boolean, route: 'through' | 'behind' | 'down' | 'end' | 'stays'): Change =>
  (given) => {
    const park = given.find((step) => step.do === 'park') as Extract<Step, { do: 'park' }>;
    const { string } = park;
    const lay = given.find((step) => step.do === 'layThrough');
    const others = given.filter((step) => step !== park && step !== lay);
    // An old lead that is still in front at the turn leaves no room for the new one in its place.
    const steps = others.map((step) =>
      park.route === 'down' && step.do === 'add' && step.slot === 3 ? { ...step, slot: 4 } : step,
    );
    const second = secondHalfBy(steps, string);
    const leaves: Step[] =
      route === 'stays'
        ? []
        : route === 'end'
          ? [{ do: 'end', string }]
          : [{ do: 'park', string, route }];
    const after = splice(steps, second + 1, 0, ...leaves);
    return laid ? splice(after, second, 0, { do: 'layThrough', string }) : after;
  };

/** The second half hitch by another lead than the one that has left. */
function secondHalfBy(steps: readonly Step[], old: string): number {
  const halves = [...steps.keys()].filter((i) => {
    const step = steps[i];
    return step?.do === 'halfHitch' && step.tying !== old;
  });
  return halves[1] as number;
}

const within = drawn('aabb', 'bbbb');
const afterFirst = drawn('abbb', 'bbbb');
const atLast = drawn('aaab', 'bbbb');
const atTurn = drawn('aaaa', 'bbbb');

describe('how the old lead leaves', () => {
  it.each<[string, Chart, Change, readonly string[], RegExp | null]>([
    ['within the row, through the knot', within, leaving(true, 'through'), [], null],
    ['within the row, finished', within, leaving(false, 'end'), [], null],
    [
      'within the row, past the knot',
      within,
      leaving(false, 'behind'),
      ['weak lead-not-caught at 1,3'],
      /^The old lead L1 is not laid through .* within the row, so/,
    ],
    [
      'within the row, straight down',
      within,
      leaving(false, 'down'),
      ['weak lead-not-caught at 1,3'],
      /within the row/,
    ],
    [
      'within the row, not at all',
      within,
      leaving(false, 'stays'),
      ['wrong lead-left-in-front at 1,3'],
      /^The old lead L1 still hangs in front .* within the row\. /,
    ],
    ['after the first knot, through the knot', afterFirst, leaving(true, 'through'), [], null],
    [
      'after the first knot, past the knot',
      afterFirst,
      leaving(false, 'behind'),
      ['weak lead-not-caught at 1,2'],
      /after the first knot/,
    ],
    ['at the last knot, behind it', atLast, leaving(false, 'behind'), [], null],
    [
      'at the last knot, caught in it',
      atLast,
      leaving(true, 'through'),
      ['weak lead-caught-at-edge at 1,4'],
      /^The old lead L1 is caught .* at the last knot, .* behind and under that knot instead/,
    ],
    [
      'at the last knot, straight down',
      atLast,
      leaving(false, 'down'),
      ['weak lead-path at 1,4'],
      /^The old lead L1 goes straight down at the last knot/,
    ],
    [
      'at the last knot, not at all',
      atLast,
      leaving(false, 'stays'),
      ['wrong lead-left-in-front at 1,4'],
      /at the last knot\. /,
    ],
    ['at the turn, straight down', atTurn, (steps) => steps, [], null],
    [
      'at the turn, behind a knot',
      atTurn,
      leaving(false, 'behind'),
      ['weak lead-path at 2,4'],
      /^The old lead L1 is passed behind a knot at the turn/,
    ],
    [
      'at the turn, caught in the first knot',
      atTurn,
      leaving(true, 'through'),
      ['weak lead-caught-at-edge at 2,4'],
      /^The old lead L1 is caught .* at the turn, .* Pass it down and behind instead/,
    ],
    [
      'at the turn, not at all',
      atTurn,
      leaving(false, 'stays'),
      ['wrong lead-left-in-front at 2,4'],
      /at the turn\. /,
    ],
  ])('%s', (_, chart, change, found, says) => {
    const result = verified(chart, change);
    expect(listed(result)).toEqual(found);
    if (says !== null) expect(result.findings[0]?.message).toMatch(says);
    // Whatever the old lead did, what follows is knotted as drawn.
    expect(result.knots).toBe(8);
  });

  it('is not asked of it a second time when it could not leave as the plan says', () => {
    const result = verified(within, (steps) => splice(steps, stepOf(steps, 'layThrough'), 1));
    expect(listed(result)).toEqual(['wrong lead-not-caught at 1,3']);
    expect(result.findings[0]?.message).toMatch(/^The old lead L1 .* L1 does not lie through/);
  });

  it('is asked of it once: put to the back, it can be taken up again', () => {
    const result = verified(drawn('aabbaa', 'aaaaaa'), leaving(false, 'stays'));
    expect(listed(result)).toEqual(['wrong lead-left-in-front at 1,3']);
  });

  it('may leave room for the next, which is taken up before the turn', () => {
    const chart = drawn('aaaa', 'bbbb', 'aaaa');
    const result = verified(chart, (steps) => {
      const turn = stepOf(steps, 'turn', 1);
      const [park, , takeUp] = steps.slice(turn - 1, turn + 2) as [Step, Step, Step];
      return splice(steps, turn - 1, 3, park, takeUp, { do: 'turn' });
    });
    expect(listed(result)).toEqual([]);
  });

  it('is asked anew of each hand-over', () => {
    // Through the knot at the first, which is right, then not at the second, which is weak.
    const chart = drawn('aabbaa', 'aaaaaa');
    const result = verified(chart, (steps) => {
      const park = stepOf(steps, 'park', 1);
      const { string } = steps[park] as Extract<Step, { do: 'park' }>;
      const weak = splice(steps, park, 1, { do: 'park', string, route: 'behind' });
      return splice(weak, stepOf(weak, 'layThrough', 1), 1);
    });
    expect(listed(result)).toEqual(['weak lead-not-caught at 1,5']);
  });

  it('in one colour is no colour change, but is looked at all the same', () => {
    const chart = drawn('aaaa', 'aaaa');
    const options = { joins: [{ row: 0, column: 2 }] };
    const sound = verified(chart, (steps) => steps, options);
    expect(sound.changes).toEqual({
      withinRow: 0,
      afterFirstKnot: 0,
      lastKnot: 0,
      turn: 0,
      start: 1,
    });
    const kept = verified(
      chart,
      (steps) => steps.filter(({ do: what }) => what !== 'end' && what !== 'park'),
      options,
    );
    expect(listed(kept)).toEqual(['wrong lead-left-in-front at 1,3']);
  });
});

describe('floats', () => {
  const floats = (chart: Chart, longFloat: number, start: 'left' | 'right' = 'left') =>
    verifyPlan(planAlpha(chart, { start }), chart, { longFloat }).findings.filter(
      ({ code }) => code === 'long-float',
    );
  // L1 leaves at row 1, column 3, and is back at row 4, column 7: 3 rows and 4 knots, which is 5.
  const away = drawn('aabbbbbbb', 'bbbbbbbbb', 'bbbbbbbbb', 'bbbbbbaab');

  it('are measured across and down, from where the lead left', () => {
    expect(floats(away, 2).map(({ row, column }) => [row, column])).toEqual([[4, 8]]);
    expect(floats(away, 2)[0]?.message).toMatch(
      /^Lead L1 comes back over a float of 3 rows and 5 knots behind the work, more than 2 knots/,
    );
  });

  it('are reported when longer than what is asked, and not when as long', () => {
    // Row 1, column 3 to row 4, column 7.
    const five = drawn('aabbbbbbb', 'bbbbbbbbb', 'bbbbbbbbb', 'bbbbbbabb');
    const [found] = floats(five, 4.99);
    expect(found).toMatchObject({ row: 4, column: 7 });
    expect(found?.message).toMatch(/3 rows and 4 knots/);
    expect(floats(five, 5)).toEqual([]);
  });

  it('are counted in words that fit', () => {
    expect(floats(drawn('aab', 'bbb', 'baa'), 0).map(({ message }) => message)).toEqual([
      expect.stringMatching(/2 rows and 1 knot behind/),
    ]);
    expect(floats(drawn('aabb', 'aabb'), 0).map(({ message }) => message)).toEqual([
      expect.stringMatching(/1 row and 1 knot behind/),
    ]);
  });

  it('are measured the same from the right', () => {
    expect(
      floats(drawn('bbbbbbbaa', 'bbbbbbbbb', 'bbbbbbbbb', 'bbabbbbbb'), 4.99, 'right'),
    ).toEqual([expect.objectContaining({ row: 4, column: 3 })]);
  });

  it('are measured once each: a lead that is not taken up spans nothing', () => {
    const result = verified(
      drawn('aabbbbaabbbbaa'),
      (steps) => splice(steps, stepOf(steps, 'takeUp', 2), 1),
      { longFloat: 1.5 },
    );
    expect(listed(result)).toEqual([
      'weak long-float at 1,7',
      'weak long-float at 1,9',
      'wrong lead-not-in-hand at 1,13',
    ]);
  });

  it('end where they are reported: a lead that ties on has none', () => {
    const chart = drawn('aabbbbbb', 'bbbbbbbb', 'aaaaaaaa', 'aaaaaaaa');
    expect(floats(chart, 1)).toHaveLength(1);
    const lists: StepList = planAlpha(chart).steps;
    expect([...lists].filter(({ do: what }) => what === 'takeUp')).toHaveLength(1);
  });
});
