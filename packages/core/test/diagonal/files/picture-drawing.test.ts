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

  it('has a column for each gap between strings, of which every second is looked at', () => {
    const picture = pictureFromDrawing(drawing);
    expect(picture).toMatchObject({ name: 'Otter', strings: 4, rows: 2, first: 0 });
    expect([...picture.cells]).toEqual([0, 0, 0, BARE]);
    // Orange and green were only in fields between knots.
    expect(picture.colours.map(({ key }) => key)).toEqual(['b']);
    expect([...pictureFromDrawing(drawing, { first: 1 }).cells]).toEqual([0, BARE, 0, 1]);
  });

  it('is taken under the middle of each knot with any other number of strings', () => {
    // Six strings: middles at 1/6, 3/6 and 5/6 of the width, then on the borders at 2/6 and 4/6.
    const six = pictureFromDrawing(drawing, { strings: 6 });
    expect([...six.cells].map((cell) => six.colours[cell]?.key)).toEqual([
      ...['b', 'o', 'b', 'b', 'g', undefined],
    ]);
    expect([...pictureFromDrawing(drawing, { strings: 12 }).cells.subarray(0, 6)]).toEqual([
      ...[0, 0, 1, 1, 0, 0],
    ]);
  });

  it('is refused outside the limits', () => {
    expect(() => pictureFromDrawing(drawing, { strings: 301 })).toThrow(/2 to 300 strings/);
  });
});

describe('a picture from a PNG', () => {
  it('takes what is see-through for any colour, and says so', () => {
    const data = Uint8Array.of(...[9, 9, 9, 255], ...[0, 0, 0, 0], ...[9, 9, 9, 255]);
    const png = (alpha: number) => {
      const pixels = data.slice();
      pixels[11] = alpha;
      return encode({ width: 3, height: 1, data: pixels, channels: 4, depth: 8 });
    };
    const { picture, notices } = readDrawnPng(png(255), { strings: 6 });
    expect([...picture.cells]).toEqual([0, ANY_COLOUR, 0]);
    expect(notices).toMatchObject([{ code: 'transparency-open' }]);
    expect([...readDrawnPng(png(100), { strings: 6 }).picture.cells]).toEqual([
      ...[0, ANY_COLOUR, ANY_COLOUR],
    ]);
  });
});
