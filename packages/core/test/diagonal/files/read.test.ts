import { describe, expect, it } from 'vitest';
import { zigzagOf } from '../../../../../testing/diagonals.js';
import {
  printDiagonalDocument,
  printDiagonalPicture,
  printDiagonalPictureDocument,
  printDiagonalText,
  readChart,
  readPattern,
  simulateDiagonal,
} from '../../../src/index.js';
import { refusal } from '../../support/refusal.js';

const utf8 = (text: string) => new TextEncoder().encode(text);
const pattern = zigzagOf(6, 4);

describe('reading a pattern of either sort', () => {
  it.each([
    ['text', printDiagonalText(pattern)],
    ['a document', printDiagonalDocument(pattern)],
    ['text with a mark in front', `\uFEFF\n${printDiagonalText(pattern)}`],
    ['a document whose format comes last', lastFirst(printDiagonalDocument(pattern))],
  ])('takes a diagonal pattern as %s', (_, text) => {
    const named = { ...pattern, name: 'crew' };
    const read = readPattern(utf8(text), 'boats/crew.txt');
    expect(read).toEqual({ kind: 'diagonal', pattern: named, notices: [] });
  });

  it.each([
    ['a #000\n\naa\n'],
    [
      '{"format": "halfhitch-chart", "version": 1, "colours": [{"key": "a", "hex": "#000"}], "rows": ["a"]}',
    ],
  ])('leaves charts to their reader: %j', (text) => {
    const bytes = utf8(text);
    expect(readPattern(bytes, 'a.txt')).toEqual({ kind: 'alpha', ...readChart(bytes, 'a.txt') });
  });

  it('says when a file is a wanted picture', () => {
    const { picture } = simulateDiagonal(pattern);
    for (const text of [printDiagonalPicture(picture), printDiagonalPictureDocument(picture)]) {
      const error = refusal(() => readPattern(utf8(text), 'wanted.txt'));
      expect(error).toMatchObject({ code: 'picture-not-pattern', place: { file: 'wanted.txt' } });
    }
  });

  it('names the file in what is wrong with it, once', () => {
    const error = refusal(() => readPattern(utf8('pattern diagonal\na #000\n\naa\n\nx'), 'x.txt'));
    expect(error.message).toMatch(/^x\.txt, line 6, column 1: /);
    expect(refusal(() => readPattern(new Uint8Array(0), 'e.txt')).message).toMatch(/^e\.txt: /);
    const chart = refusal(() => readPattern(utf8('a #000\n\nab'), 'c.txt'));
    expect(chart.message).toMatch(/^c\.txt, line 3, column 2: /);
  });

  it('is refused by the reader of charts, which says what it is', () => {
    expect(refusal(() => readChart(utf8(printDiagonalText(pattern)), '')).code).toBe('diagonal');
    const error = refusal(() => readChart(utf8(printDiagonalDocument(pattern)), ''));
    expect(error.message).toContain('This is a diagonal pattern.');
  });
});

function lastFirst(document: string): string {
  return JSON.stringify(Object.fromEntries(Object.entries(JSON.parse(document)).reverse()));
}
