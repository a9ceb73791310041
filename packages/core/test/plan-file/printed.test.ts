import { describe, expect, it } from 'vitest';
import { type Plan, planAlpha, printPlan, readPlan, type Step, StepList } from '../../src/index.js';
import { half, splice, stepOf, withSteps } from '../support/alpha-slips.js';
import { drawn } from '../support/charts.js';

const printed = (plan: Plan): string => [...printPlan(plan)].join('');

/** The steps of each row as they stand in the document, one line each. */
function rowsOf(plan: Plan): string[][] {
  return printed(plan)
    .split('"steps": [')
    .slice(1)
    .map((row) =>
      row
        .split('\n')
        .filter((line) => line.includes('"do"'))
        .map((line) => line.trim().replace(/,$/, '')),
    );
}

const small = planAlpha(drawn('ab', 'bb'));
const withRow = (...steps: Step[]): Plan => ({
  ...small,
  steps: StepList.from(small.strings, steps),
});

describe('a printed plan', () => {
  it('is laid out for reading: a step a line, the halves of a knot together', () => {
    expect(printed({ ...small, name: 'Heron' })).toBe(`{
  "format": "halfhitch-plan",
  "version": 1,
  "name": "Heron",
  "edge": "straight",
  "start": "left",
  "chart": {"rows": 2, "columns": 2},
  "strings": [
    {"id": "B1", "role": "base", "colour": "#e9e2d0", "name": ""},
    {"id": "B2", "role": "base", "colour": "#e9e2d0", "name": ""},
    {"id": "L1", "role": "lead", "colour": "#0a0b0d", "name": "colour a"},
    {"id": "L2", "role": "lead", "colour": "#14161a", "name": "colour b"}
  ],
  "rows": [
    {"row": 1, "direction": "right", "steps": [
      {"do": "add", "string": "L1", "slot": 2},
      {"do": "knot", "kind": "backward-forward", "tying": "L1", "held": "B1"},
      {"do": "add", "string": "L2", "slot": 3},
      {"do": "park", "string": "L1", "route": "behind"},
      {"do": "knot", "kind": "forward-backward", "tying": "L2", "held": "B2"}
    ]},
    {"row": 2, "direction": "left", "steps": [
      {"do": "turn"},
      {"do": "knot", "kind": "forward-backward", "tying": "L2", "held": "B2"},
      {"do": "knot", "kind": "backward-forward", "tying": "L2", "held": "B1"}
    ]}
  ]
}
`);
  });

  it('gives the leads that go down for a turn to the row that follows', () => {
    const rows = rowsOf(planAlpha(drawn('aa', 'bb')));
    expect(rows[0]?.at(-1)).toMatch(/"knot".*"B2"/);
    expect(rows[1]?.slice(0, 3)).toEqual([
      '{"do": "park", "string": "L1", "route": "down"}',
      '{"do": "turn"}',
      '{"do": "add", "string": "L2", "slot": 2}',
    ]);
  });

  it('keeps them where they are when no turn follows, or nothing comes before', () => {
    const down: Step = { do: 'park', string: 'L1', route: 'down' };
    expect(rowsOf(withRow({ do: 'add', string: 'L1', slot: 0 }, down))).toHaveLength(1);
    expect(rowsOf(withRow(down, { do: 'turn' }, down, down, { do: 'turn' }))).toEqual([
      ['{"do": "park", "string": "L1", "route": "down"}', '{"do": "turn"}'],
      [
        '{"do": "park", "string": "L1", "route": "down"}',
        '{"do": "park", "string": "L1", "route": "down"}',
        '{"do": "turn"}',
      ],
    ]);
  });

  it('without steps has one row without any', () => {
    expect(printed(withRow())).toContain('{"row": 1, "direction": "right", "steps": []}\n');
  });

  it.each<[string, Step[], string[]]>([
    [
      'half a knot before another',
      [half('forward', 'L1', 'B1'), half('forward', 'L1', 'B2'), half('backward', 'L1', 'B2')],
      ['half-hitch', 'knot'],
    ],
    [
      'by two strings',
      [half('forward', 'L1', 'B1'), half('forward', 'L2', 'B1')],
      ['half-hitch', 'half-hitch'],
    ],
    [
      'three halves',
      Array.from({ length: 3 }, () => half('backward', 'L1', 'B1')),
      ['knot', 'half-hitch'],
    ],
    [
      'halves with something between',
      [
        half('forward', 'L1', 'B1'),
        { do: 'layThrough', string: 'L2' },
        half('forward', 'L1', 'B1'),
      ],
      ['half-hitch', 'lay-through', 'half-hitch'],
    ],
    [
      'the two ends of a pair of parks',
      [
        { do: 'park', string: 'L1', route: 'behind' },
        { do: 'park', string: 'L1', route: 'through' },
      ],
      ['park', 'park'],
    ],
  ])('joins halves into knots only where they are one: %s', (_, steps, words) => {
    const [row] = rowsOf(withRow(...steps));
    expect(row?.map((line) => /"do": "([a-z-]+)"/.exec(line)?.[1])).toEqual(words);
  });

  it('does not join the last half of a row with the first of the next', () => {
    const rows = rowsOf(
      withRow(half('forward', 'L1', 'B1'), { do: 'turn' }, half('forward', 'L1', 'B1')),
    );
    expect(rows).toEqual([
      ['{"do": "half-hitch", "way": "forward", "tying": "L1", "held": "B1"}'],
      ['{"do": "turn"}', '{"do": "half-hitch", "way": "forward", "tying": "L1", "held": "B1"}'],
    ]);
  });

  it('names every route and both ways', () => {
    const steps = [...small.steps];
    const park = stepOf(steps, 'park');
    for (const route of ['through', 'behind', 'down'] as const) {
      const plan = withSteps(small, splice(steps, park, 1, { do: 'park', string: 'L1', route }));
      expect(printed(plan)).toContain(`"route": "${route}"`);
      expect([...readPlan(printed(plan)).steps]).toEqual([...plan.steps]);
    }
    expect(rowsOf(withRow(half('backward', 'L2', 'B1')))[0]).toEqual([
      '{"do": "half-hitch", "way": "backward", "tying": "L2", "held": "B1"}',
    ]);
    expect(rowsOf(withRow({ do: 'end', string: 'L2' }))[0]).toEqual([
      '{"do": "end", "string": "L2"}',
    ]);
    expect(rowsOf(withRow({ do: 'takeUp', string: 'L2', slot: 0 }))[0]).toEqual([
      '{"do": "take-up", "string": "L2", "slot": 1}',
    ]);
  });
});
