import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KNOT_KINDS, printTextChart, readTextChart } from '../../src/index.js';
import { anyChartOfFile } from '../support/any-chart-file.js';
import { refusal } from '../support/refusal.js';

const read = (text: string) => readTextChart(text).chart;

describe('a text chart', () => {
  it('is a legend, a blank line and rows', () => {
    const chart = read('b #1f6fb2 lake blue\nw #FFF chalk\n\nbbw\nwbb\n');
    expect(chart).toEqual({
      name: '',
      rows: 2,
      columns: 3,
      colours: [
        { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
        { key: 'w', hex: '#ffffff', name: 'chalk' },
      ],
      cells: Uint8Array.of(0, 0, 1, 1, 0, 0),
    });
  });

  it('may give a name, an edge technique and a side to start from', () => {
    const chart = read('Name: Heron\nedge = wrapped\nstart right\na #000\n\na');
    expect(chart).toMatchObject({ name: 'Heron', edge: 'wrapped', start: 'right' });
  });

  it('may give knots worked out by hand', () => {
    const chart = read('a #000\n\naa\naa\n\n\\/\n<>\n');
    const kinds = [...(chart.knots ?? [])].map((kind) => KNOT_KINDS[kind]);
    expect(kinds).toEqual(['forward', 'backward', 'backward-forward', 'forward-backward']);
  });

  it.each([
    ['b = #1f6fb2 lake blue'],
    ['b: #1F6FB2: lake blue'],
    ['b#1f6fb2 lake blue'],
    ['  b  #1f6fb2\tlake blue  '],
    ['#1f6fb2 b lake blue'],
    ['#1f6fb2 = b = lake blue'],
    ['b lake blue #1f6fb2'],
    ['b = lake blue #1f6fb2'],
  ])('takes the legend line %j', (line) => {
    expect(read(`${line}\n\nb`).colours).toEqual([{ key: 'b', hex: '#1f6fb2', name: 'lake blue' }]);
  });

  it.each(['\n', '\r\n', '\r'])(
    'takes lines ended by %j, a mark in front and blanks behind',
    (end) => {
      const lines = ['\uFEFF', 'a #000  ', 'b #fff', '  ', '', 'ab \t', 'ba', '', ''];
      expect(read(lines.join(end)).cells).toEqual(Uint8Array.of(0, 1, 1, 0));
    },
  );

  it('takes any visible character for a key, counted as one', () => {
    const chart = read('# #111\n= #222\n\u{1f6a3} #333\n\n#=\u{1f6a3}\n\u{1f6a3}=#');
    expect([...chart.cells]).toEqual([0, 1, 2, 2, 1, 0]);
  });

  it('is the same after printing and reading', () => {
    fc.assert(
      fc.property(anyChartOfFile, (chart) => {
        expect(read(printTextChart(chart))).toEqual(chart);
      }),
    );
  });

  it('is printed in one plain form', () => {
    const text = 'name Heron\nedge straight\nb #1f6fb2 lake blue\nw #ffffff\n\nbw\n\n\\>\n';
    expect(printTextChart(read(text))).toBe(text);
  });
});

describe('a faulty text chart', () => {
  const legend = 'a #000\nb #fff\n\n';
  it.each([
    ['', 'empty', { line: 1 }],
    ['\n \n', 'empty', { line: 1 }],
    ['a #000\n', 'no-rows', { line: 1 }],
    ['name Heron\n\na', 'no-colours', { line: 1 }],
    ['aabb\naabb\n', 'bad-legend', { line: 1, column: 1 }],
    ['a #00\n\na', 'bad-colour', { line: 1, column: 3 }],
    ['a #12345g\n\na', 'bad-colour', { line: 1, column: 3 }],
    ['a red\n\na', 'bad-colour', { line: 1, column: 3 }],
    ['a #000\na #fff\n\na', 'key-twice', { line: 2, column: 1 }],
    ['a #000\nb #000000\n\na', 'colour-twice', { line: 2, column: 1 }],
    ['a #000\nb #fff\nabab\n', 'blank-line-missing', { line: 3, column: 1 }],
    ['edge round\na #000\n\na', 'bad-setting', { line: 1, column: 1 }],
    ['edge wrapped\nedge wrapped\na #000\n\na', 'setting-twice', { line: 2, column: 1 }],
    [`name ${'x'.repeat(201)}\na #000\n\na`, 'name-too-long', { line: 1, column: 1 }],
    ['\u0301 #000\n\na', 'bad-key', { line: 1, column: 1 }],
    ['a #000 \u0007\n\na', 'bad-name', { line: 1, column: 1 }],
    [`${legend}aab\nabx\n`, 'unknown-key', { line: 5, column: 3 }],
    [`${legend}a b\n`, 'unknown-key', { line: 4, column: 2 }],
    [`${legend}aab\nab\n`, 'rows-uneven', { line: 5, column: 3 }],
    [`${legend}aab\nabba\n`, 'rows-uneven', { line: 5, column: 4 }],
    [`${legend}ab\nab\n\n\\/\n`, 'marks-uneven', { line: 7 }],
    [`${legend}ab\n\n\\x\n`, 'unknown-mark', { line: 6, column: 2 }],
    [`${legend}ab\n\n\\\n`, 'rows-uneven', { line: 6, column: 2 }],
    [`${legend}ab\n\n\\/\n\nab`, 'too-many-blocks', { line: 8 }],
    [`${legend}${'a'.repeat(301)}`, 'too-many-columns', { line: 4, column: 301 }],
    [`${legend}${'a\n'.repeat(10_001)}`, 'too-many-rows', { line: 10_004 }],
  ])('is refused: %#', (text, code, place) => {
    const error = refusal(() => readTextChart(text));
    expect({ code: error.code, place: error.place }).toEqual({ code, place });
    expect(error.remedy).not.toBe('');
  });

  it('has at most 64 colours', () => {
    const line = (i: number) =>
      `${String.fromCodePoint(0x4e00 + i)} #${(i + 4096).toString(16).padStart(6, '0')}`;
    const lines = (count: number) => Array.from({ length: count }, (_, i) => line(i)).join('\n');
    expect(read(`${lines(64)}\n\n\u4e00`).colours).toHaveLength(64);
    const error = refusal(() => readTextChart(`${lines(65)}\n\n\u4e00`));
    expect(error).toMatchObject({ code: 'too-many-colours', place: { line: 65 } });
  });
});
