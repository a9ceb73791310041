import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KNOT_KINDS, NO_KNOT, printDiagonalText, readDiagonalText } from '../../../src/index.js';
import { anyDiagonalOfFile } from '../../support/any-diagonal-file.js';
import { refusal } from '../../support/refusal.js';

const OARS = `pattern diagonal
name Oars
b #1f6fb2 lake blue
o #e8742c buoy orange

bboob

\\ /
 > <
. \\
`;

describe('a diagonal pattern as text', () => {
  it('is a legend, starting colours, and rows of marks in brick position', () => {
    const pattern = readDiagonalText(OARS);
    expect(pattern).toEqual({
      name: 'Oars',
      strings: 5,
      rows: 3,
      first: 0,
      colours: [
        { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
        { key: 'o', hex: '#e8742c', name: 'buoy orange' },
      ],
      start: Uint8Array.of(0, 0, 1, 1, 0),
      knots: Uint8Array.of(
        ...['forward', 'backward', 'forward-backward', 'backward-forward'].map((kind) =>
          KNOT_KINDS.indexOf(kind as 'forward'),
        ),
        NO_KNOT,
        0,
      ),
    });
    expect(printDiagonalText(pattern)).toBe(OARS);
  });

  it('lets the first row begin at the second string', () => {
    const text = 'pattern diagonal\nfirst 2\na #123456\n\naaaa\n\n \\\n/ /\n';
    const pattern = readDiagonalText(text);
    expect([pattern.first, ...pattern.knots]).toEqual([1, 0, NO_KNOT, 1, 1]);
    expect(printDiagonalText(pattern)).toBe(text);
  });

  it('has one full stop for a row without places', () => {
    const text = 'pattern diagonal\na #000\nb #fff\n\nab\n\n\\\n.\n/\n';
    const pattern = readDiagonalText(text.replace('#fff', '#ffffff'));
    expect([...pattern.knots]).toEqual([0, NO_KNOT, 1]);
    expect(readDiagonalText(printDiagonalText(pattern))).toEqual(pattern);
  });

  it('is the same after printing and reading', () => {
    fc.assert(
      fc.property(anyDiagonalOfFile, (pattern) => {
        expect(readDiagonalText(printDiagonalText(pattern))).toEqual(pattern);
      }),
    );
  });

  it('is the same when a program on the way drops, doubles or changes blanks', () => {
    const blanks = fc.constantFrom('', ' ', '   ', '\t', '\u00a0', ' \u2003');
    fc.assert(
      fc.property(anyDiagonalOfFile, blanks, blanks, (pattern, inside, end) => {
        const lines = printDiagonalText(pattern).split('\n');
        const head = lines.indexOf('');
        const spoilt = lines.map((line, i) =>
          i <= head || line === '' ? line : [...line.replaceAll(' ', '')].join(inside) + end,
        );
        expect(readDiagonalText(spoilt.join('\r\n'))).toEqual(pattern);
      }),
    );
  });
});

describe('a faulty diagonal pattern as text', () => {
  const legend = 'pattern diagonal\na #000\n\n';
  it.each([
    ['', 'empty', { line: 1 }],
    ['a #000\n\naa\n\n\\\n', 'not-diagonal', { line: 1 }],
    ['pattern straight\na #000\n\naa\n\n\\\n', 'bad-setting', { line: 1, column: 1 }],
    [`${legend}aa`, 'no-rows', { line: 4 }],
    ['pattern diagonal\na #000\n', 'no-start', { line: 2 }],
    ['pattern diagonal\n\naa\n\n\\', 'no-colours', { line: 1 }],
    ['pattern diagonal\nfirst 0\na #000\n\naa\n\n\\', 'bad-setting', { line: 2, column: 1 }],
    ['pattern diagonal\nedge straight\na #000\n\naa\n\n\\', 'bad-legend', { line: 2, column: 1 }],
    [`${legend}aa\n\\\n`, 'start-lines', { line: 5 }],
    [`${legend}a\n\n\\`, 'too-few-strings', { line: 4, column: 1 }],
    [`${legend}${'a'.repeat(301)}\n\n\\`, 'too-many-strings', { line: 4, column: 301 }],
    [`${legend}ax\n\n\\`, 'unknown-key', { line: 4, column: 2 }],
    [`${legend}aaaa\n\n\\ x\n \\`, 'unknown-mark', { line: 6, column: 3 }],
    [`${legend}aaaa\n\n\\ /\n \\ /`, 'row-uneven', { line: 7, column: 4 }],
    [`${legend}aaaa\n\n\\ /\n\\ /\n`, 'row-uneven', { line: 7, column: 3 }],
    [`${legend}aaaa\n\n\\\n`, 'row-uneven', { line: 6, column: 2 }],
    [`${legend}aa\n\n\\\n\\\n`, 'row-uneven', { line: 7, column: 1 }],
    [`${legend}aa\n\n\\\n\n.\n`, 'too-many-blocks', { line: 8 }],
    [`${legend}aaa\n\n${'\\\n'.repeat(10_001)}`, 'too-many-rows', { line: 10_006 }],
  ])('is refused: %#', (text, code, place) => {
    const error = refusal(() => readDiagonalText(text));
    expect({ code: error.code, place: error.place }).toEqual({ code, place });
    expect(error.remedy).not.toBe('');
  });

  it('says how many places a row has', () => {
    const error = refusal(() => readDiagonalText(`${legend}aaaa\n\n\\ /\n\\ /\n`));
    expect(error.message).toContain(
      'The row has 2 marks, but 4 strings have 1 place for knots in row 2, which begins at string 2.',
    );
  });
});
