import { describe, expect, it } from 'vitest';
import { Wanted } from '../../../src/diagonal/verify/wanted.js';
import { BARE, readDiagonalText, simulateDiagonal } from '../../../src/index.js';

// Row 1 has places for strings 1 and 2, 3 and 4; row 2 for 2 and 3, 4 and 5.
const pattern = readDiagonalText('pattern diagonal\nb #1f6fb2 lake blue\n\nbbbbb\n\n\\ .\n . \\\n');
const { picture } = simulateDiagonal(pattern);
const wanted = new Wanted(picture, pattern);

describe('where knots belong', () => {
  it.each([
    [0, [0, -1, 1, -1, -1, -1]],
    [1, [-1, 0, -1, 1, -1, -1]],
  ])('row %i: by the slot of the left string', (row, places) => {
    expect(places.map((_, slot) => wanted.placeAt(row, slot))).toEqual(places);
    expect(wanted.placeAt(row, -1)).toBe(-1);
  });

  it.each([
    [0, [0, 0, 1, 1, -1]],
    [1, [-1, 0, 0, 1, 1]],
  ])('row %i: by the slot of either string', (row, places) => {
    expect(places.map((_, slot) => wanted.placeOf(row, slot))).toEqual(places);
  });

  it('a string idles on the right of an even number, and on both sides every second row', () => {
    const four = new Wanted(
      simulateDiagonal(readDiagonalText('pattern diagonal\nb #1f6fb2 x\n\nbbbb\n\n\\ \\\n \\\n'))
        .picture,
      null,
    );
    expect([0, 1, 2, 3].map((slot) => four.placeOf(1, slot))).toEqual([-1, 0, 0, -1]);
    expect([0, 1, 2, 3].map((slot) => four.placeAt(1, slot))).toEqual([-1, 0, -1, -1]);
    expect([0, 1, 2, 3].map((slot) => four.placeAt(0, slot))).toEqual([0, -1, 1, -1]);
  });
});

describe('which knots are wanted', () => {
  const bare = new Wanted({ ...picture, cells: picture.cells.map(() => BARE) }, null);
  const places = [
    [0, 0],
    [0, 1],
    [1, 0],
    [1, 1],
  ] as const;
  const each = (read: (row: number, place: number) => unknown) =>
    places.map(([row, place]) => read(row, place));

  it('those of the picture', () => {
    const drawn = new Wanted(picture, null);
    expect(each((row, place) => drawn.knot(row, place))).toEqual([true, false, false, true]);
    expect(each((row, place) => drawn.bare(row, place))).toEqual([false, true, true, false]);
    expect(each((row, place) => drawn.kind(row, place))).toEqual([null, null, null, null]);
    expect(each((row, place) => bare.knot(row, place))).toEqual([false, false, false, false]);
  });

  it('and those of the pattern, where it is known', () => {
    expect(each((row, place) => wanted.kind(row, place))).toEqual([
      'forward',
      null,
      null,
      'forward',
    ]);
    const both = new Wanted({ ...picture, cells: picture.cells.map(() => BARE) }, pattern);
    expect(each((row, place) => both.knot(row, place))).toEqual([true, false, false, true]);
    // What the picture leaves bare is bare, whatever the pattern says, and the other way round.
    expect(each((row, place) => both.bare(row, place))).toEqual([true, true, true, true]);
    const full = new Wanted({ ...picture, cells: picture.cells.map(() => 0) }, pattern);
    expect(each((row, place) => full.bare(row, place))).toEqual([false, true, true, false]);
    expect(each((row, place) => full.knot(row, place))).toEqual([true, true, true, true]);
    expect(full.colour(0, 1)).toBe(0);
  });
});
