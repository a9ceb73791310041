import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal, zigzagOf } from '../../../../../testing/diagonals.js';
import {
  ANY_COLOUR,
  BARE,
  firstSlotOf,
  knotsAcross,
  knotsInRow,
  printDiagonalPicture,
  readPictureFile,
  simulateDiagonal,
} from '../../../src/index.js';
import { refusal } from '../../support/refusal.js';
import { writePng } from '../../support/write-png.js';

const utf8 = (text: string) => new TextEncoder().encode(text);

describe('a wanted picture as a file', () => {
  it('is text or a document, named after its file', () => {
    const { picture } = simulateDiagonal(zigzagOf(6, 4));
    const read = readPictureFile(utf8(printDiagonalPicture(picture)), 'club/oars.txt');
    expect(read).toEqual({ picture: { ...picture, name: 'oars' }, notices: [] });
  });

  it('is a PNG with a pixel for each gap between strings, of which every second is looked at', () => {
    fc.assert(
      fc.property(anyDiagonal({ bareTenths: 0 }), fc.nat(), (pattern, noise) => {
        const drawn = { ...pattern, first: 0 as const };
        const { strings, rows } = drawn;
        fc.pre(pattern.first === 0);
        const { picture } = simulateDiagonal(drawn);
        const across = knotsAcross(drawn);
        const width = strings - 1;
        const samples: number[] = [];
        for (let row = 0; row < rows; row++) {
          for (let gap = 0; gap < width; gap++) {
            const place = (gap - firstSlotOf(drawn, row)) / 2;
            const isKnot = Number.isInteger(place) && place >= 0;
            const colour = isKnot ? (picture.cells[row * across + place] as number) : -1;
            const hex = picture.colours[colour]?.hex;
            const value =
              hex === undefined
                ? (noise * (samples.length + 7)) % 0x1000000
                : Number.parseInt(hex.slice(1), 16);
            samples.push(value >> 16, (value >> 8) & 255, value & 255);
          }
        }
        const png = writePng({ width, height: rows, depth: 8, colourType: 2, samples });
        const { picture: read, notices } = readPictureFile(png, 'oars.png');
        expect(notices).toEqual([]);
        expect(read).toMatchObject({ name: 'oars', strings, rows, first: 0 });
        const hexes = (one: typeof read) => [...one.cells].map((cell) => one.colours[cell]?.hex);
        expect(hexes(read)).toEqual(hexes(picture));
        expect(read.colours.length).toBe(
          new Set([...picture.cells].filter((cell) => cell !== BARE)).size,
        );
      }),
    );
  });

  it('takes see-through pixels for knots of any colour', () => {
    const samples = [
      9, 9, 9, 255, 1, 1, 1, 255, 0, 0, 0, 0, 8, 8, 8, 0, 9, 9, 9, 255, 3, 3, 3, 255,
    ];
    const png = writePng({ width: 3, height: 2, depth: 8, colourType: 6, samples });
    const { picture, notices } = readPictureFile(png, '');
    expect([picture.strings, ...picture.cells]).toEqual([4, 0, ANY_COLOUR, 0, BARE]);
    expect(picture.colours).toMatchObject([{ key: 'a', hex: '#090909' }]);
    expect(notices).toMatchObject([{ code: 'transparency-open' }]);
    expect(knotsInRow(picture, 1)).toBe(1);
  });

  it('is refused where it cannot be knotted, naming the file', () => {
    const wide = (width: number) => {
      const samples = new Uint8Array(4 * width);
      return writePng({ width, height: 1, depth: 8, colourType: 6, samples });
    };
    expect(refusal(() => readPictureFile(wide(300), 'w.png'))).toMatchObject({
      code: 'out-of-range',
      place: { file: 'w.png' },
    });
    expect(refusal(() => readPictureFile(wide(3), '')).code).toBe('no-colours');
    expect(refusal(() => readPictureFile(utf8('a #000\n\na'), 'x.txt')).code).toBe('not-diagonal');
    expect(refusal(() => readPictureFile(new Uint8Array(0), 'x.txt')).code).toBe('empty');
  });
});
