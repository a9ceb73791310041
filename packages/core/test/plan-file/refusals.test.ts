import { describe, expect, it } from 'vitest';
import { zigzagOf } from '../../../../testing/diagonals.js';
import {
  PLAN_LIMITS,
  planAlpha,
  planDiagonal,
  printDiagonalPlan,
  printPlan,
  readDiagonalPlan,
  readPlan,
} from '../../src/index.js';
import { drawn } from '../support/charts.js';
import { refusal } from '../support/refusal.js';

const good = [...printPlan(planAlpha(drawn('ab')))].join('');
const diagonal = [...printDiagonalPlan(planDiagonal(zigzagOf(4, 3)))].join('');

/** The document with one thing changed, which must be in it. */
function swap(old: string | RegExp, by: string, of = good): string {
  expect(of).toMatch(old);
  return of.replace(old, by);
}

/** A document whose only row has one step. */
const withStep = (step: string): string =>
  swap(/"rows": \[.*\]/s, `"rows": [{"steps": [${step}]}]`);

describe('what is wrong with a plan document, and what to do', () => {
  it.each([
    [
      'a property of a string that there is not',
      swap('"role": "lead"', '"roles": "lead"'),
      'There is no property "roles" here.',
      'Known are "id", "role", "colour" and "name"; correct the name or remove it.',
    ],
    [
      'a property of the size that there is not',
      swap('"columns": 2', '"width": 2'),
      'There is no property "width" here.',
      'Known are "rows" and "columns"; correct the name or remove it.',
    ],
    [
      'a property of a row that there is not',
      swap('"direction"', '"side"'),
      'There is no property "side" here.',
      'Known are "row", "direction" and "steps"; correct the name or remove it.',
    ],
    [
      'a property of a step that there is not',
      swap('"slot"', '"place"'),
      'There is no property "place" here.',
      'Known are "do", "string", "slot", "way", "kind", "tying", "held" and "route"; correct the name or remove it.',
    ],
    [
      'a size without rows',
      swap('"rows": 1, ', ''),
      'The size of the chart has no property "rows".',
      'Write it as {"rows": 24, "columns": 14}.',
    ],
    [
      'a size without columns',
      swap(', "columns": 2', ''),
      'The size of the chart has no property "columns".',
      'Write it as {"rows": 24, "columns": 14}.',
    ],
    [
      'a string without an id',
      swap('"id": "B1", ', ''),
      'The string has no property "id".',
      'Write it as {"id": "L1", "role": "lead", "colour": "#1f6fb2", "name": "lake blue"}.',
    ],
    [
      'a string without a role',
      swap('"role": "base", ', ''),
      'The string has no property "role".',
      'Write it as {"id": "L1", "role": "lead", "colour": "#1f6fb2", "name": "lake blue"}.',
    ],
    [
      'a string without a colour',
      swap(/"colour": "#e9e2d0", /, ''),
      'The string has no property "colour".',
      'Write it as {"id": "L1", "role": "lead", "colour": "#1f6fb2", "name": "lake blue"}.',
    ],
    [
      'two strings of one id',
      swap('"id": "B2"', '"id": "B1"'),
      'There are two strings "B1".',
      'Give each string an id of its own.',
    ],
    [
      'an id with a blank',
      swap('"id": "B2"', '"id": "B 2"'),
      '"B 2" is no id of a string.',
      'Use 1 to 32 visible characters without blanks, such as L1.',
    ],
    [
      'an id of 33 characters',
      swap('"id": "B2"', `"id": "${'\u{1f6a3}'.repeat(33)}"`),
      `"${'\u{1f6a3}'.repeat(24)}…" is no id of a string.`,
      'Use 1 to 32 visible characters without blanks, such as L1.',
    ],
    [
      'a row without steps',
      swap(/"rows": \[.*\]/s, '"rows": [\n{"row": 1}]'),
      'The row has no property "steps".',
      'Write "steps": [].',
    ],
    [
      'a step that does nothing',
      withStep('{"string": "L1"}'),
      'The step has no property "do".',
      'Write what to do: "add", "take-up", "half-hitch", "knot", "lay-through", "park", "end" or "turn".',
    ],
    [
      'a step that lacks what it needs',
      withStep('{"do": "add", "string": "L1"}'),
      'The step "add" has no property "slot".',
      'It asks for "string" and "slot".',
    ],
    [
      'a step that has more than it needs',
      withStep('{"do": "end", "string": "L1", "slot": 1}'),
      'The step "end" has a property "slot".',
      'It asks for "string".',
    ],
    [
      'a turn of something',
      withStep('{"do": "turn", "string": "L1"}'),
      'The step "turn" has a property "string".',
      'It asks for nothing besides "do".',
    ],
    [
      'a string that is not listed',
      withStep('{"do": "end", "string": "L9"}'),
      'The plan has no string "L9".',
      'It has B1, B2, L1, L2.',
    ],
    [
      'a string by its number',
      withStep('{"do": "end", "string": 1}'),
      'Here stands "1".',
      /the id of a string in double quotes/,
    ],
    [
      'no strings at all',
      swap(/"strings": \[.*?\]/s, '"strings": []'),
      'The plan has no string "L1".',
      'List it under "strings".',
    ],
  ])('%s', (_, text, message, remedy) => {
    const error = refusal(() => readPlan(text));
    expect(error.what).toMatch(message);
    expect(error.remedy).toMatch(remedy);
    expect(error.place.line).toBeGreaterThan(1);
    expect(error.code).toMatch(/^[a-z]+(-[a-z]+)+$/);
  });

  it('names a few of many strings', () => {
    const strings = Array.from(
      { length: 9 },
      (_, i) => `{"id": "S${i}", "role": "lead", "colour": "#000000"}`,
    );
    const of = (count: number) =>
      refusal(() =>
        readPlan(
          swap(
            /"strings": \[.*?\]/s,
            `"strings": [${strings.slice(0, count).join()}]`,
            withStep('{"do": "end", "string": "L9"}'),
          ),
        ),
      ).remedy;
    expect(of(8)).toBe('It has S0, S1, S2, S3, S4, S5, S6, S7.');
    expect(of(9)).toBe('It has S0, S1, S2, S3, …, S6, S7, S8.');
  });

  it('speaks of what a string of a diagonal plan has', () => {
    const read = (text: string) => refusal(() => readDiagonalPlan(text));
    const bare = read(swap(/"id": "S1", /, '', diagonal));
    expect(bare.what).toBe('The string has no property "id".');
    expect(bare.remedy).toBe('Write it as {"id": "S1", "colour": "#1f6fb2", "name": "lake blue"}.');
    expect(read(swap('"id": "S1"', '"id": "S1", "role": "base"', diagonal)).remedy).toBe(
      'Known are "id", "colour" and "name"; correct the name or remove it.',
    );
  });

  it('says how large each thing may be, and takes what is as large', () => {
    const limits = (change: object) => ({ ...PLAN_LIMITS, ...change });
    const read = (change: object, text = good) => readPlan(text, limits(change));
    expect(read({ size: good.length, strings: 4, steps: 7, id: 2 }).steps).toHaveLength(7);
    const said = (change: object, text = good) => {
      const { what, remedy } = refusal(() => read(change, text));
      return [what, remedy];
    };
    expect(said({ size: good.length - 1 })).toEqual([
      'The plan is too long.',
      expect.stringMatching(/^A plan can have at most .*; plan the chart in parts\.$/),
    ]);
    expect(said({ strings: 3 })).toEqual([
      'There are more than 3 strings.',
      'A plan can have at most 3.',
    ]);
    expect(said({ steps: 6 })).toEqual([
      'There are more than 6 steps.',
      'Plan the chart in parts.',
    ]);
    expect(said({ id: 1 })[0]).toBe('"B1" is no id of a string.');
    const rows = (count: number) =>
      swap(
        /"rows": \[.*\]/s,
        `"rows": [${Array.from({ length: count }, () => '{"steps": []}').join()}]`,
      );
    expect(readPlan(rows(10_000)).steps).toHaveLength(0);
    expect(said({}, rows(10_001))).toEqual([
      'There are more than 10000 rows.',
      'A plan can have at most 10000.',
    ]);
  });

  it('takes an id of 32 characters, however many units they are, and a plan without a name', () => {
    const id = '\u{1f6a3}'.repeat(32);
    const text = swap(/"B2"/, `"${id}"`).replaceAll('"held": "B2"', `"held": "${id}"`);
    expect(readPlan(text).hung).toEqual(['B1', id]);
    expect(readPlan(swap('"name": "",\n', '\n')).name).toBe('');
    expect(readPlan(swap(', "name": "colour a"', '')).strings[2]?.name).toBe('');
  });

  it('says what a file of another kind is', () => {
    expect(refusal(() => readPlan('{"format": "something"}')).message).toMatch(/plan/);
  });
});
