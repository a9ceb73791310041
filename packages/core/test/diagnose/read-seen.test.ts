import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  Back,
  diagnose,
  Edge,
  InputError,
  Look,
  planAlpha,
  printChartDocument,
  readSeen,
  Sight,
  Stick,
  UNCOUNTED,
} from '../../src/index.js';
import { drawn } from '../support/charts.js';
import { readOrRefusal, refusal } from '../support/refusal.js';

const chart = drawn('aabb', 'aabb', 'bbaa');
const plan = planAlpha(chart);
const [a, b] = chart.colours.map(({ hex }) => hex) as [string, string];
const encoder = new TextEncoder();
const read = (text: string) => readSeen(encoder.encode(text), '', plan);
const LEGEND = `x ${a} first\ny ${b}\n\n`;

describe('rows as they were seen', () => {
  it('are read with what was not looked at, bare strings and looks', () => {
    const seen = read(`${LEGEND}xx?y\nx.yy\n\n<\\?>\n<.=-\n`);
    expect([...seen.cells]).toEqual([0, 0, Sight.unknown, 1, 0, Sight.bare, 1, 1]);
    expect([...seen.looks]).toEqual([
      Look.backwardForward,
      Look.forward,
      Look.unknown,
      Look.forwardBackward,
      Look.backwardForward,
      Look.none,
      Look.two,
      Look.half,
    ]);
    expect(seen.rows).toBe(2);
  });

  it('come with notes, or notes come alone', () => {
    const seen = read(
      'row 2 right edge pulls in\nROW 2  left edge steps out\nrow 1 knots 5\nrow 3 lead sticks out left\nrow 3 column 2 loop\nrow 1 colours off left\nrow 1 colours off\n',
    );
    expect(seen.rows).toBe(3);
    expect([...seen.edges]).toEqual([0, 0, Edge.out, Edge.in, 0, 0]);
    expect([...seen.knots]).toEqual([5, UNCOUNTED, UNCOUNTED]);
    expect([...seen.sticks]).toEqual([0, 0, 0, 0, Stick.yes, 0]);
    expect(seen.backs[9]).toBe(Back.loop);
    expect(seen.off).toEqual([
      { row: 0, towards: 'left' },
      { row: 0, towards: null },
    ]);
    expect(read(`${LEGEND}xxyy\n\nrow 1 knots 4\n`).knots[0]).toBe(4);
  });

  it('match colours by name where the shade differs, and base strings by their colour', () => {
    const seen = read(`x #ff0000 colour a\ny ${b}\nz #e9e2d0\n\nxzyy\n`);
    expect([...seen.cells]).toEqual([0, Sight.bare, 1, 1]);
  });

  it('can be a chart', () => {
    const seen = readSeen(encoder.encode(printChartDocument(chart)), '', plan);
    expect(diagnose(plan, seen)).toEqual([]);
  });

  it('are documented by an example that is read', () => {
    const page = readFileSync(new URL('../../../../docs/formats.md', import.meta.url), 'utf8');
    const example = page.split('## Rows as they were seen')[1]?.match(/```text\n([^`]*)```/)?.[1];
    const colours = [
      { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
      { key: 'w', hex: '#f4f1e8', name: 'chalk' },
    ];
    const wide = planAlpha({ ...drawn('aabbaa', 'aabbaa', 'aabbaa'), colours });
    const seen = readSeen(encoder.encode(example), '', wide);
    expect(seen.rows).toBe(3);
    expect(seen.looks[15]).toBe(Look.two);
    expect(seen.knots[2]).toBe(5);
  });

  it.each([
    ['empty', ''],
    ['empty', '\n\n'],
    ['no-rows', `x ${a}\n`],
    ['other-width', `${LEGEND}xxyyx\n`],
    ['rows-uneven', `${LEGEND}xxyy\nxxy\n`],
    ['unknown-key', `${LEGEND}xxyz\n`],
    ['key-taken', `? ${a}\n\n????\n`],
    ['colour-not-in-plan', 'x #123456\n\nxxxx\n'],
    ['marks-uneven', `${LEGEND}xxyy\n\n????\n????\n`],
    ['unknown-mark', `${LEGEND}xxyy\n\n??x?\n`],
    ['bad-note', 'row 5 is odd\n'],
    ['bad-note', 'row 0 knots 3\n'],
    ['bad-note', 'row 99999 knots 3\n'],
    ['column-outside', 'row 1 column 9 loop\n'],
    ['notes-last', `row 1 knots 3\n\n${LEGEND}xxyy\n`],
    ['too-many-rows', `${LEGEND}xxyy\n\n????\n\nxxyy\n`],
  ])('are refused: %s', (code, text) => {
    expect(refusal(() => read(text)).code).toBe(code);
  });

  it('end in an answer or a refusal, whatever the file holds', () => {
    const piece = fc.constantFrom(
      `x ${a}`,
      `y ${b}`,
      'xxyy',
      'x.?y',
      '<\\\\>',
      '',
      'row 2 right edge pulls in',
      'row 1 knots 4',
      'row 2 colours off',
      '{ "format"',
      'row 3 ',
    );
    const text = fc.oneof(
      fc
        .array(fc.oneof(piece, fc.string({ maxLength: 8 })), { maxLength: 9 })
        .map((lines) => lines.join('\n')),
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc
        .array(fc.constantFrom(...'xy?.'), { minLength: 16, maxLength: 16 })
        .map((cells) => LEGEND + cells.join('').replace(/(.{4})/g, '$1\n')),
    );
    fc.assert(
      fc.property(text, (any) => {
        const seen = readOrRefusal(() => read(any));
        if (seen instanceof InputError) return;
        for (const { likelihood } of diagnose(plan, seen)) {
          expect(likelihood).toBeGreaterThan(0);
          expect(likelihood).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 300 },
    );
  });
});
