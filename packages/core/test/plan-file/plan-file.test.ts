import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakDocument } from '../../../../testing/break-document.js';
import {
  PLAN_LIMITS,
  type Plan,
  planAlpha,
  printPlan,
  readPlan,
  type Step,
  StepList,
  verifyPlan,
} from '../../src/index.js';
import { anyChart, anyEdge, anyStart, drawn } from '../support/charts.js';
import { readOrRefusal, refusal } from '../support/refusal.js';

const schema: object = JSON.parse(
  readFileSync(new URL('../../schema/plan-1.schema.json', import.meta.url), 'utf8'),
);
const fitsSchema = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(schema);

/** What the schema cannot say, and the reader checks. */
const BEYOND_SCHEMA = new Set(['string-twice', 'string-unknown']);

const printed = (plan: Plan) => [...printPlan(plan)].join('');

function expectSame(found: Plan, plan: Plan): void {
  expect({ ...found, steps: [...found.steps] }).toEqual({ ...plan, steps: [...plan.steps] });
}

const anyPlan = fc
  .record({
    chart: anyChart({ columns: 12, rows: 12, colours: 5 }),
    edge: anyEdge,
    start: anyStart,
    joins: fc.array(fc.record({ row: fc.nat(11), column: fc.nat(11) }), { maxLength: 4 }),
  })
  .map(({ chart, edge, start, joins }) => ({
    chart,
    plan: planAlpha(chart, {
      edge,
      start,
      joins: joins.filter(({ row, column }) => row < chart.rows && column < chart.columns),
    }),
  }));

/** Plans whose steps nobody could knot. */
const anyNonsense = fc
  .record({
    ids: fc.uniqueArray(fc.constantFrom('B1', 'B2', 'L1', '"', '\\', '\u{1f6a3}', '__proto__'), {
      minLength: 1,
    }),
    bases: fc.nat(7),
    picks: fc.array(fc.tuple(fc.nat(9), fc.nat(), fc.nat(), fc.nat(40)), { maxLength: 40 }),
  })
  .map(({ ids, bases, picks }): Plan => {
    const strings = ids.map((id, i) => ({
      id,
      role: i < bases ? ('base' as const) : ('lead' as const),
      colour: '#1f6fb2',
      name: 'lake blue',
    }));
    const steps = picks.map(([what, a, b, slot]): Step => {
      const string = ids[a % ids.length] as string;
      const held = ids[b % ids.length] as string;
      const kinds: Step[] = [
        { do: 'halfHitch', way: 'forward', tying: string, held },
        { do: 'halfHitch', way: 'backward', tying: string, held },
        { do: 'layThrough', string },
        { do: 'park', string, route: 'through' },
        { do: 'park', string, route: 'behind' },
        { do: 'park', string, route: 'down' },
        { do: 'takeUp', string, slot },
        { do: 'add', string, slot },
        { do: 'end', string },
        { do: 'turn' },
      ];
      return kinds[what] as Step;
    });
    return {
      name: 'Otter',
      rows: 3,
      columns: 2,
      edge: 'wrapped',
      start: 'right',
      strings,
      hung: strings.filter(({ role }) => role === 'base').map(({ id }) => id),
      steps: StepList.from(strings, steps),
    };
  });

describe('a plan document', () => {
  it('is the same plan after printing and reading, and fits its schema', () => {
    fc.assert(
      fc.property(anyPlan, ({ plan }) => {
        const document = printed(plan);
        expectSame(readPlan(document), plan);
        expect(fitsSchema(JSON.parse(document))).toBe(true);
      }),
    );
  });

  it('is the same plan even when its steps cannot be knotted', () => {
    fc.assert(
      fc.property(anyNonsense, (plan) => {
        const document = printed(plan);
        expectSame(readPlan(document), plan);
        expect(fitsSchema(JSON.parse(document))).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('is proven by the verifier as the plan was', () => {
    fc.assert(
      fc.property(anyPlan, ({ chart, plan }) => {
        expect(verifyPlan(readPlan(printed(plan)), chart).ok).toBe(true);
      }),
      { numRuns: 30 },
    );
  });

  it('has a row of steps for each row of the chart, with its direction', () => {
    fc.assert(
      fc.property(anyPlan, ({ plan }) => {
        const { rows } = JSON.parse(printed(plan)) as {
          rows: { row: number; direction: string; steps: { do: string }[] }[];
        };
        expect(rows).toHaveLength(plan.rows);
        rows.forEach(({ row, direction, steps }, i) => {
          expect(row).toBe(i + 1);
          expect(direction === 'right').toBe((plan.start === 'left') === (i % 2 === 0));
          expect(steps.filter((step) => step.do === 'turn')).toHaveLength(i === 0 ? 0 : 1);
        });
      }),
    );
  });

  it('does not depend on its labels, the order of its properties, or its layout', () => {
    const plan = planAlpha(drawn('ab', 'ba'));
    const document = JSON.parse(printed(plan)) as Record<string, unknown> & {
      rows: Record<string, unknown>[];
    };
    const rows = document.rows.map((row) => ({ ...row, row: 99, direction: 'left' }));
    const reversed = Object.fromEntries(Object.entries({ ...document, rows }).reverse());
    expectSame(readPlan(JSON.stringify(reversed)), plan);
  });

  it('is taken by the reader just when it fits the schema, but for what a schema cannot say', () => {
    const broken = anyPlan.map(({ plan }) => printed(plan)).chain(breakDocument);
    let tried = 0;
    let refused = 0;
    fc.assert(
      fc.property(broken, (document) => {
        tried++;
        const outcome = readOrRefusal(() => readPlan(JSON.stringify(document)));
        const fits = fitsSchema(document);
        if (!(outcome instanceof Error)) expect(fits).toBe(true);
        else if (fits) expect(BEYOND_SCHEMA).toContain(outcome.code);
        if (!fits) refused++;
      }),
      { numRuns: 500 },
    );
    expect(refused).toBeGreaterThan(tried / 10);
  });
});

describe('a faulty plan document', () => {
  const good = printed(planAlpha(drawn('ab')));
  const swap = (old: string | RegExp, by: string) => {
    expect(good).toMatch(old);
    return good.replace(old, by);
  };

  it.each([
    [swap('halfhitch-plan', 'halfhitch-chart'), 'format-unknown', { path: 'format' }],
    [swap('"version": 1', '"version": 7'), 'version-newer', { line: 3, path: 'version' }],
    [swap('"columns": 2', '"columns": 301'), 'json-value', { path: 'chart.columns' }],
    [swap('"columns": 2', '"columns": 2.5'), 'json-value', { path: 'chart.columns' }],
    [swap('"id": "B2"', '"id": "B1"'), 'string-twice', { path: 'strings[1]' }],
    [swap('"id": "B2"', '"id": ""'), 'bad-id', { path: 'strings[1].id' }],
    [
      swap('"tying": "L1"', '"tying": "L9"'),
      'string-unknown',
      { path: /rows\[0\]\.steps\[\d\]\.tying/ },
    ],
    [swap('"slot": 2', '"slot": 0'), 'json-value', { path: 'rows[0].steps[0].slot' }],
    [swap('"do": "add"', '"do": "glue"'), 'json-value', { path: 'rows[0].steps[0].do' }],
    [swap(', "slot": 2', ''), 'property-missing', { path: 'rows[0].steps[0]' }],
    [
      swap('"slot": 2', '"slot": 2, "held": "B1"'),
      'property-unknown',
      { path: 'rows[0].steps[0]' },
    ],
    [swap('"do": "add", ', ''), 'property-missing', { path: 'rows[0].steps[0]' }],
    [swap('"steps"', '"stages"'), 'property-unknown', { path: 'rows[0].stages' }],
    [swap('"edge": "straight",', ''), 'property-missing', { line: 1 }],
    [good.slice(0, -8), 'json-syntax', {}],
  ])(
    'is refused: %#',
    (text, code, { path, ...place }: { path?: string | RegExp; line?: number }) => {
      const error = refusal(() => readPlan(text));
      expect(error).toMatchObject({ code, place });
      expect(error.place.path ?? '').toMatch(path ?? '');
      expect(error.remedy).not.toBe('');
    },
  );

  it('names the strings there are when one is unknown', () => {
    const error = refusal(() => readPlan(swap('"tying": "L1"', '"tying": "L9"')));
    expect(error.message).toMatch(/no string "L9".*B1, B2, L1, L2/);
  });

  it('is refused beyond the stated limits', () => {
    const limits = (change: object) => ({ ...PLAN_LIMITS, ...change });
    const code = (change: object) => refusal(() => readPlan(good, limits(change))).code;
    expect(code({ size: good.length - 1 })).toBe('file-too-large');
    expect(code({ strings: 3 })).toBe('too-many-strings');
    expect(code({ steps: 4 })).toBe('too-many-steps');
    const rows = `${'{"steps": []},'.repeat(10_000)}{"steps": []}`;
    const long = good.replace(/"rows": \[.*\]\n\}/s, `"rows": [${rows}]}`);
    expect(refusal(() => readPlan(long)).code).toBe('too-many-rows');
  });
});
