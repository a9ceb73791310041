import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ANY_COLOUR,
  BARE,
  printDiagonalPicture,
  printDiagonalPictureDocument,
  readDiagonalPicture,
} from '../../../src/index.js';
import { anyPictureOfFile } from '../../support/any-diagonal-file.js';
import { refusal } from '../../support/refusal.js';

const head = 'picture diagonal\nb #1f6fb2 lake blue\no #e8742c buoy orange\n';

describe('a picture wanted of a diagonal pattern', () => {
  it('has a character for each place: a colour, any, or no knot', () => {
    const picture = readDiagonalPicture(`${head}name Oars\n\nb o\n ?\n. o\n`);
    expect(picture).toMatchObject({ name: 'Oars', strings: 4, rows: 3, first: 0 });
    expect([...picture.cells]).toEqual([0, 1, ANY_COLOUR, BARE, BARE, 1]);
  });

  it('tells the number of strings from two rows, or takes the fewest for one', () => {
    expect(readDiagonalPicture(`${head}\nbb\nbb\n`).strings).toBe(5);
    expect(readDiagonalPicture(`${head}\nbb\nb\n`).strings).toBe(4);
    expect(readDiagonalPicture(`${head}\nbb\n`).strings).toBe(4);
    expect(readDiagonalPicture(`${head}first 2\n\nbb\n`).strings).toBe(5);
    expect(readDiagonalPicture(`${head}strings 5\n\nbb\n`).strings).toBe(5);
  });

  it('is the same after printing and reading as text and as a document', () => {
    fc.assert(
      fc.property(anyPictureOfFile, (picture) => {
        const text = printDiagonalPicture(picture);
        const read = readDiagonalPicture(text);
        expect(read).toEqual({ ...picture, colours: read.colours });
        expect(read.colours.map(({ hex, name }) => [hex, name])).toEqual(
          picture.colours.map(({ hex, name }) => [hex, name]),
        );
        expect(readDiagonalPicture(printDiagonalPictureDocument(picture))).toEqual(read);
        expect(printDiagonalPicture(read)).toBe(text);
      }),
    );
  });

  it.each([
    ['b #000\n\nbb\n', 'not-diagonal', { line: 1 }],
    [`${head}`, 'no-rows', { line: 3 }],
    [`${head}? #000\n\nb?\n`, 'key-taken', { line: 1 }],
    [`${head}\nbx\nb\n`, 'unknown-mark', { line: 5, column: 2 }],
    [`${head}\nbb\nbbb\nbb\n`, 'row-uneven', { line: 5, column: 3 }],
    [`${head}\nbb\nb\nb\n`, 'row-uneven', { line: 7, column: 2 }],
    [`${head}strings 301\n\nbb\n`, 'bad-setting', { line: 4, column: 1 }],
    [`${head}\n${'b'.repeat(301)}\n`, 'too-many-strings', { line: 5 }],
  ])('is refused where it is faulty: %#', (text, code, place) => {
    const error = refusal(() => readDiagonalPicture(text));
    expect({ code: error.code, place: error.place }).toEqual({ code, place });
  });
});
