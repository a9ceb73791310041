import { encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { ANY_COLOUR, BARE, pictureFromDrawing, readDrawnPng } from '../../../src/index.js';

const colours = ['#1f6fb2', '#e8702a', '#4f7942'].map((hex, at) => ({
  key: 'bog'[at] as string,
  hex,
  name: '',
}));

describe('a picture from a drawing', () => {
  const drawing = {
    name: 'Otter',
    rows: 2,
    columns: 3,
    colours,
    cells: Uint8Array.of(0, 1, 0, 1, 0, 2),
  };

  it('has two strings for each column, and leaves out the last field of short rows', () => {
    const picture = pictureFromDrawing(drawing);
    expect(picture).toMatchObject({ name: 'Otter', strings: 6, rows: 2, first: 0 });
    expect([...picture.cells]).toEqual([0, 1, 0, 1, 0, BARE]);
    // Green was only in the field that is left out.
    expect(picture.colours.map(({ key }) => key)).toEqual(['b', 'o']);
    expect([...pictureFromDrawing(drawing, { first: 1 }).cells]).toEqual([0, 1, BARE, 1, 0, 2]);
  });

  it('has as many knots in every row with an odd number of strings', () => {
    expect([...pictureFromDrawing(drawing, { strings: 7 }).cells]).toEqual([0, 1, 0, 1, 0, 2]);
  });

  it('is taken under the middle of each knot with any other number of strings', () => {
    // Four strings: middles at 1/4 and 3/4 of the width, then at 1/2.
    const picture = pictureFromDrawing(drawing, { strings: 4 });
    expect([...picture.cells]).toEqual([0, 0, 0, BARE]);
    expect([...pictureFromDrawing(drawing, { strings: 12 }).cells.subarray(0, 6)]).toEqual([
      ...[0, 0, 1, 1, 0, 0],
    ]);
  });

  it('is refused outside the limits', () => {
    expect(() => pictureFromDrawing(drawing, { strings: 301 })).toThrow(/2 to 300 strings/);
  });
});

describe('a picture from a PNG', () => {
  it('takes what cannot be seen for any colour, and says what else is see-through', () => {
    const data = Uint8Array.of(...[9, 9, 9, 255], ...[0, 0, 0, 0], ...[9, 9, 9, 255]);
    const png = (alpha: number) => {
      const pixels = data.slice();
      pixels[11] = alpha;
      return encode({ width: 3, height: 1, data: pixels, channels: 4, depth: 8 });
    };
    const { picture, notices } = readDrawnPng(png(255));
    expect([...picture.cells]).toEqual([0, ANY_COLOUR, 0]);
    expect(notices).toEqual([]);
    expect(readDrawnPng(png(128)).notices).toHaveLength(1);
  });
});
