import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakDocument } from '../../../../../testing/break-document.js';
import { anyDiagonal, zigzagOf } from '../../../../../testing/diagonals.js';
import {
  DIAGONAL_PLAN_LIMITS,
  type DiagonalPlan,
  planDiagonal,
  printDiagonalPlan,
  readDiagonalPlan,
  readPlan,
} from '../../../src/index.js';
import { readOrRefusal, refusal } from '../../support/refusal.js';

const schema: object = JSON.parse(
  readFileSync(new URL('../../../schema/diagonal-plan-1.schema.json', import.meta.url), 'utf8'),
);
const fitsSchema = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(schema);
const BEYOND_SCHEMA = new Set(['string-twice', 'string-unknown']);

const printed = (plan: DiagonalPlan) => [...printDiagonalPlan(plan)].join('');
const plain = (plan: DiagonalPlan) => ({ ...plan, steps: [...plan.steps] });

describe('the document of a diagonal plan', () => {
  it('is the same plan after printing and reading, fits its schema, and numbers its rows', () => {
    fc.assert(
      fc.property(anyDiagonal(), (pattern) => {
        const plan = planDiagonal({ ...pattern, name: 'Heron "1"' });
        const document = printed(plan);
        expect(plain(readDiagonalPlan(document))).toEqual(plain(plan));
        expect(fitsSchema(JSON.parse(document))).toBe(true);
        const { rows } = JSON.parse(document) as {
          rows: { row: number; steps: { do: string }[] }[];
        };
        expect(rows).toHaveLength(pattern.rows);
        rows.forEach(({ row, steps }, i) => {
          expect(row).toBe(i + 1);
          expect(steps.map((step) => step.do).indexOf('turn')).toBe(i === 0 ? -1 : 0);
        });
      }),
    );
  });

  it('is taken by the reader just when it fits the schema, but for what a schema cannot say', () => {
    const broken = anyDiagonal({ maxStrings: 4, maxRows: 4 })
      .map((pattern) => printed(planDiagonal(pattern)))
      .chain(breakDocument);
    fc.assert(
      fc.property(broken, (document) => {
        const outcome = readOrRefusal(() => readDiagonalPlan(JSON.stringify(document)));
        const fits = fitsSchema(document);
        if (!(outcome instanceof Error)) expect(fits).toBe(true);
        else if (fits) expect(BEYOND_SCHEMA).toContain(outcome.code);
      }),
      { numRuns: 300 },
    );
  });

  it('is refused with its place beyond its limits and where it is faulty', () => {
    const good = printed(planDiagonal(zigzagOf(4, 3)));
    const code = (text: string) => refusal(() => readDiagonalPlan(text)).code;
    expect(code(good.replace('-diagonal-plan', '-plan'))).toBe('format-unknown');
    expect(code(good.replace('"first": 1', '"first": 3'))).toBe('json-value');
    expect(code(good.replace('"rows": 3, ', ''))).toBe('property-missing');
    expect(code(good.replace('"id": "S1"', '"id": "S1", "role": "base"'))).toBe('property-unknown');
    expect(code(good.replace(/"strings": \[.*?\]/s, '"strings": []'))).toBe('too-few-strings');
    const few = { ...DIAGONAL_PLAN_LIMITS, strings: 3 };
    expect(refusal(() => readDiagonalPlan(good, few)).code).toBe('too-many-strings');
    expect(refusal(() => readPlan(good)).message).toContain('plan of a diagonal pattern');
  });
});
