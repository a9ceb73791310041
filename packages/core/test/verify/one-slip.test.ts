import { describe, expect, it } from 'vitest';
import { planAlpha, type Step, StepList, verifyPlan } from '../../src/index.js';
import {
  type Change,
  half,
  halfOn,
  listed,
  splice,
  stepOf,
  verified,
} from '../support/alpha-slips.js';
import { drawn } from '../support/charts.js';

// L1 ties the left half of rows 1 and 2, and row 3; L2 ties the right half of rows 1 and 2.
const chart = drawn('aabb', 'aabb', 'aaaa');
const columns = 4;

type Way = 'forward' | 'backward';

/** Puts steps before, or in place of, the n-th half hitch on a string of a row, from 0. */
const at =
  (row: number, held: string, put: readonly Step[], instead = 0, nth = 0): Change =>
  (steps) =>
    splice(steps, halfOn(steps, row, held, nth), instead, ...put);

/** The same at the n-th step of a sort. */
const atStep =
  (sort: Step['do'], nth: number, put: readonly Step[], instead = 0): Change =>
  (steps) =>
    splice(steps, stepOf(steps, sort, nth), instead, ...put);

const knot = (first: Way, second: Way, tying: string, held: string): Step[] => [
  half(first, tying, held),
  half(second, tying, held),
];
const fwd = (tying: string, held: string) => knot('forward', 'forward', tying, held);
const turn: Step = { do: 'turn' };

interface Found {
  /** Grade, code, row and column of each finding. */
  readonly found: readonly string[];
  /** What the first of them says. */
  readonly says?: RegExp;
  /** Whole knots tied, of 12, and half hitches, of 24. */
  readonly tied?: readonly [number, number];
}

const slips: readonly [string, Change, Found][] = [
  [
    'a base string ties, before any lead',
    at(0, 'B1', knot('backward', 'forward', 'B2', 'B1'), 2),
    {
      found: ['wrong wrong-lead at 1,1', 'wrong missing-knot at 1,1'],
      says: /^String B2 is a base string/,
      tied: [11, 22],
    },
  ],
  [
    'a base string ties',
    at(0, 'B2', fwd('B1', 'B2'), 2),
    { found: ['wrong wrong-lead at 1,2'], says: /^String B1 is a base string/ },
  ],
  [
    'a string ties that is not in the table',
    at(2, 'B2', fwd('nobody', 'B2'), 2),
    { found: ['wrong wrong-lead at 3,2'], says: /the plan does not list/ },
  ],
  [
    'a base string ties onto a lead',
    at(2, 'B2', fwd('B1', 'L1'), 2),
    { found: ['wrong wrong-lead at 3,2', 'wrong wrong-string at 3,2'] },
  ],
  [
    'a base string ties onto one that is not in the table',
    at(2, 'B3', fwd('B1', 'nobody'), 2),
    { found: ['wrong wrong-lead at 3,3', 'wrong wrong-string at 3,3'] },
  ],
  [
    'half a knot by one string, and half by another on the next',
    (steps) => {
      const i = halfOn(steps, 2, 'B2', 1);
      return splice(steps, i, 2, half('forward', 'L2', 'B3'));
    },
    {
      found: ['wrong half-knot at 3,2', 'wrong lead-not-in-hand at 3,3'],
      tied: [11, 23],
    },
  ],
  [
    'the only half of a knot made the other way',
    (steps) => splice(steps, halfOn(steps, 0, 'B4'), 2, half('backward', 'L2', 'B4')),
    { found: ['wrong wrong-kind at 1,4', 'wrong half-knot at 1,4'], tied: [11, 23] },
  ],
  [
    'a lead is tied onto',
    at(2, 'B2', fwd('L1', 'L2'), 2),
    { found: ['wrong wrong-string at 3,2'], says: /onto L2, which is no base string; .* B2\. B2/ },
  ],
  [
    'what is tied onto is not in the table',
    at(2, 'B2', fwd('L1', 'nobody'), 2),
    { found: ['wrong wrong-string at 3,2'], says: /not in the table, which is no base string/ },
  ],
  [
    'the turn is left out',
    atStep('turn', 0, [], 1),
    { found: ['wrong turn-missing at 1,4'], says: /^Row 1 is full/ },
  ],
  [
    'a second turn',
    atStep('turn', 0, [turn]),
    { found: ['wrong turn-too-soon at 2,4'], says: /^The plan turns after 0 knots/ },
  ],
  [
    'a turn in the middle of a row',
    at(2, 'B3', [turn]),
    { found: ['wrong turn-too-soon at 3,3'], says: /^The plan turns after 2 knots/ },
  ],
  [
    'a turn after the first knot of a row',
    at(1, 'B3', [turn]),
    { found: ['wrong turn-too-soon at 2,3'], says: /^The plan turns after 1 knot of/ },
  ],
  [
    'a turn in the middle of a knot',
    at(2, 'B3', [turn], 0, 1),
    { found: ['wrong turn-too-soon at 3,3'], says: /in the middle of the knot on B3/ },
  ],
  [
    'a turn in the middle of the last knot of a row',
    at(0, 'B4', [turn], 0, 1),
    { found: ['wrong turn-too-soon at 1,4'], says: /in the middle of the knot on B4/ },
  ],
  ['a turn after the last row', (steps) => [...steps, turn], { found: [] }],
  [
    'the last knot of a row twice',
    at(0, 'B4', knot('forward', 'backward', 'L2', 'B4')),
    { found: ['wrong doubled-knot at 1,4'], says: /^Edge string B4 has its knot/ },
  ],
  [
    'half a knot more at the end of a row',
    (steps) => splice(steps, halfOn(steps, 0, 'B4', 1) + 1, 0, half('forward', 'L2', 'B4')),
    { found: ['wrong doubled-knot at 1,4'] },
  ],
  [
    'a knot within the row twice',
    at(2, 'B2', fwd('L1', 'B2')),
    { found: ['wrong doubled-knot at 3,2'], says: /^Base string B2 has its knot/ },
  ],
  [
    'a knot on a string that has been passed',
    at(2, 'B4', fwd('L1', 'B2')),
    { found: ['wrong doubled-knot at 3,2'] },
  ],
  [
    'a knot tied onto the string before',
    at(2, 'B3', fwd('L1', 'B2'), 2),
    { found: ['wrong wrong-string at 3,3'], says: /onto B2, .* is B3: B2 would have two knots/ },
  ],
  [
    'the last knot of all tied onto the string before',
    at(2, 'B4', knot('forward', 'backward', 'L1', 'B3'), 2),
    { found: ['wrong wrong-string at 3,4'], says: /onto B3, .* is B4/ },
  ],
  [
    'two neighbours in the wrong order',
    (steps) => {
      const i = halfOn(steps, 2, 'B2');
      return splice(steps, i, 4, ...fwd('L1', 'B3'), ...fwd('L1', 'B2'));
    },
    {
      found: ['wrong wrong-string at 3,2', 'wrong wrong-string at 3,3'],
      says: /onto B3, .* is B2: B2 would be skipped/,
    },
  ],
  [
    'two strings skipped',
    at(2, 'B2', [], 4),
    {
      found: ['wrong missing-knot at 3,2', 'wrong missing-knot at 3,3'],
      says: /^Base string B2 is skipped: .* lead L1 would lie loose across B2 on its way to B4/,
      tied: [10, 20],
    },
  ],
  [
    'a skipped string, tied too late',
    (steps) => {
      const i = halfOn(steps, 2, 'B2');
      const without = splice(steps, i, 2);
      return splice(without, halfOn(without, 2, 'B4') + 2, 0, ...fwd('L1', 'B2'));
    },
    {
      found: ['wrong missing-knot at 3,2', 'wrong wrong-string at 3,2'],
      says: /^Base string B2 is skipped/,
      tied: [11, 22],
    },
  ],
  [
    'two knots more after the last',
    (steps) => [...steps, ...fwd('L1', 'B3'), ...fwd('L1', 'B2')],
    { found: ['wrong doubled-knot at 3,3', 'wrong doubled-knot at 3,2'] },
  ],
  [
    'a turn after half of the last knot',
    (steps) => [...steps.slice(0, -1), turn],
    { found: ['wrong half-knot at 3,4'], tied: [11, 23] },
  ],
  [
    'a knot of the wrong kind, after which the plan ends',
    (steps) => [...steps.slice(0, halfOn(steps, 2, 'B2') + 1), half('backward', 'L1', 'B2')],
    {
      found: ['wrong wrong-kind at 3,2', 'wrong missing-knot at 3,3', 'wrong missing-knot at 3,4'],
      says: /The lead ends on the wrong side of B2\.$/,
      tied: [10, 20],
    },
  ],
  [
    'a lead laid through the knot that goes past it',
    atStep('park', 0, [{ do: 'park', string: 'L1', route: 'behind' }], 1),
    { found: ['wrong step-cannot-be-done at 1,3'], says: /L1 lies through the knot just tied/ },
  ],
  [
    'a base string taken up',
    at(2, 'B3', [{ do: 'takeUp', string: 'B2', slot: 0 }]),
    { found: ['wrong step-cannot-be-done at 3,3'], says: /B2 is in front already/ },
  ],
  [
    'a base string added',
    at(2, 'B3', [{ do: 'add', string: 'B2', slot: 0 }]),
    { found: ['wrong step-cannot-be-done at 3,3'], says: /B2 is in front already/ },
  ],
  [
    'a lead taken up that is not in the table',
    at(2, 'B3', [{ do: 'takeUp', string: 'nobody', slot: 0 }]),
    { found: ['wrong step-cannot-be-done at 3,3'] },
  ],
  [
    'the first half made the other way',
    at(2, 'B2', [half('backward', 'L1', 'B2')], 1),
    { found: ['wrong wrong-kind at 3,2'], says: /a backward half hitch, .* L1 .* on the right/ },
  ],
  [
    'the second half made the other way',
    at(2, 'B2', [half('backward', 'L1', 'B2')], 1, 1),
    {
      found: ['wrong wrong-kind at 3,2'],
      says: /^A forward-backward knot .* on B2 where a forward .* L1 .*, on B3 in row 3, column 3/,
    },
  ],
  [
    'the same just before another lead takes over',
    at(0, 'B2', [half('backward', 'L1', 'B2')], 1, 1),
    { found: ['wrong wrong-kind at 1,2'], says: /lead L1 cannot tie .* B3 in row 1, column 3/ },
  ],
  [
    'the same just before another lead takes over, the other way',
    at(1, 'B3', [half('forward', 'L2', 'B3')], 1, 1),
    { found: ['wrong wrong-kind at 2,3'], says: /lead L2 cannot tie .* B2 in row 2, column 2/ },
  ],
  [
    'an edge knot of the wrong kind before a turn',
    at(0, 'B4', [half('forward', 'L2', 'B4')], 1, 1),
    { found: ['wrong wrong-kind at 1,4'], says: /edge string B4, .* L2 .* B4 in row 2, column 4/ },
  ],
  [
    'an edge knot of the wrong kind at the end',
    at(2, 'B4', [half('forward', 'L1', 'B4')], 1, 1),
    { found: ['weak edge-string-displaced at 3,4'], says: /edge string B4, which moves in/ },
  ],
  [
    'one half left out',
    at(2, 'B2', [], 1),
    { found: ['wrong half-knot at 3,2'], says: /of the forward knot .* B2: .* L1/, tied: [11, 23] },
  ],
  [
    'one half left out before a turn',
    at(0, 'B4', [], 1, 1),
    { found: ['wrong half-knot at 1,4'], says: /of the forward-backward knot/, tied: [11, 23] },
  ],
  [
    'one half left out at the end',
    at(2, 'B4', [], 1, 1),
    { found: ['wrong half-knot at 3,4'], tied: [11, 23] },
  ],
  [
    'the halves tied by two strings',
    at(2, 'B2', [half('forward', 'L2', 'B2')], 1, 1),
    { found: ['wrong wrong-lead at 3,2'], says: /tied by L1, but the second by L2/ },
  ],
  [
    'the halves tied onto two strings',
    at(2, 'B2', [half('forward', 'L1', 'B4')], 1, 1),
    { found: ['wrong wrong-string at 3,2'], says: /onto B2, but the second onto B4/ },
  ],
  [
    'a lead ties that rests at the back',
    at(2, 'B2', fwd('L2', 'B2'), 2),
    { found: ['wrong lead-not-in-hand at 3,2'], says: /on B2 is to be tied by L2/ },
  ],
  [
    'a lead is not taken up before it ties on',
    atStep('takeUp', 0, [], 1),
    { found: ['wrong lead-not-in-hand at 2,2'], says: /on B2 is to be tied by L1/ },
  ],
  [
    'the lead in hand is put to the back',
    at(2, 'B2', [{ do: 'park', string: 'L1', route: 'behind' }]),
    { found: ['wrong lead-not-in-hand at 3,2'] },
  ],
  [
    'a lead taken up in the wrong place',
    atStep('takeUp', 0, [{ do: 'takeUp', string: 'L1', slot: 0 }], 1),
    {
      found: ['wrong lead-out-of-place at 2,2'],
      says: /^Lead L1 .* on B2 .* L1 and B2 do not hang/,
    },
  ],
  [
    'a lead taken up in a place there is not',
    atStep('takeUp', 0, [{ do: 'takeUp', string: 'L1', slot: 9 }], 1),
    { found: ['wrong step-cannot-be-done at 2,2'], says: /no place 10 in front for L1/ },
  ],
  [
    'the first lead added in a place there is not',
    atStep('add', 0, [{ do: 'add', string: 'L1', slot: 9 }], 1),
    { found: ['wrong step-cannot-be-done at 1,1'] },
  ],
  [
    'a lead added a second time',
    atStep('takeUp', 0, [{ do: 'add', string: 'L1', slot: 2 }], 1),
    { found: ['wrong step-cannot-be-done at 2,2'], says: /L1 was added before/ },
  ],
  [
    'a lead taken up that was never added',
    atStep('add', 0, [{ do: 'takeUp', string: 'L1', slot: 1 }], 1),
    { found: ['wrong step-cannot-be-done at 1,1'], says: /L1 .* has not been added/ },
  ],
  [
    'a lead taken up that is in front',
    at(2, 'B2', [{ do: 'takeUp', string: 'L1', slot: 0 }]),
    { found: ['wrong step-cannot-be-done at 3,2'], says: /L1 is in front already/ },
  ],
  [
    'a lead taken up that does not tie',
    at(2, 'B2', [{ do: 'takeUp', string: 'L2', slot: 0 }]),
    { found: ['wrong lead-left-in-front at 3,2'], says: /^Lead L2 hangs in front/ },
  ],
  [
    'the same after the last knot',
    (steps) => [...steps, { do: 'takeUp', string: 'L2', slot: 0 }],
    { found: ['wrong lead-left-in-front at 3,4'] },
  ],
  [
    'the same before a turn',
    atStep('turn', 1, [{ do: 'takeUp', string: 'L2', slot: 4 }]),
    { found: ['wrong lead-left-in-front at 2,1'], says: /^Lead L2 hangs in front/ },
  ],
  [
    'a string laid through the knot that is not in front',
    at(2, 'B2', [{ do: 'layThrough', string: 'L2' }], 0, 1),
    { found: ['wrong step-cannot-be-done at 3,2'], says: /L2 is not in front/ },
  ],
  [
    'a base string put to the back',
    at(2, 'B3', [{ do: 'park', string: 'B2', route: 'behind' }]),
    { found: ['wrong wrong-string at 3,2'], says: /^Base string B2 is taken from the front/ },
  ],
  [
    'a base string finished',
    at(2, 'B3', [{ do: 'end', string: 'B2' }]),
    { found: ['wrong wrong-string at 3,2'] },
  ],
  [
    'a string put to the back that is not in the table',
    at(2, 'B2', [{ do: 'park', string: 'nobody', route: 'behind' }]),
    { found: ['wrong step-cannot-be-done at 3,1'], says: /a string that the piece does not have/ },
  ],
  [
    'a lead finished that is needed once more',
    (steps) =>
      atStep('park', 0, [{ do: 'end', string: 'L1' }], 1)(atStep('layThrough', 0, [], 1)(steps)),
    {
      found: ['wrong step-cannot-be-done at 2,2', 'wrong lead-not-in-hand at 2,2'],
      says: /L1 was finished before/,
    },
  ],
];

describe('one slip', () => {
  it.each(slips)('%s: is found where it is made, and no more', (_, change, expected) => {
    const result = verified(chart, change);
    expect(listed(result)).toEqual(expected.found);
    for (const { message } of result.findings) expect(message).toMatch(/^[A-Z].*\.$/s);
    if (expected.says !== undefined) expect(result.findings[0]?.message).toMatch(expected.says);
    const [knots, halfHitches] = expected.tied ?? [12, 24];
    expect(result).toMatchObject({ knots, halfHitches, rows: 3, columns });
    expect(result.ok).toBe(!expected.found.some((line) => line.startsWith('wrong')));
    expect(result.changes).toEqual({
      withinRow: 2,
      afterFirstKnot: 0,
      lastKnot: 0,
      turn: 0,
      start: 2,
    });
  });

  it.each(slips)('%s: is found the same however the strings are listed', (_, change) => {
    const { findings, knots } = verified(chart, change);
    const plan = planAlpha(chart);
    const steps = change([...plan.steps]);
    const bases = plan.strings.filter(({ role }) => role === 'base');
    const leads = plan.strings.filter(({ role }) => role === 'lead');
    for (const strings of [
      [...leads, ...bases],
      [...leads.reverse(), ...bases],
      [...bases.reverse(), ...leads],
    ]) {
      const listing = { ...plan, strings, steps: StepList.from(strings, steps) };
      expect(verifyPlan(listing, chart)).toMatchObject({ findings, knots });
    }
  });
});
