import { describe, expect, test } from 'vitest';
import {
  chevrons,
  type DiagonalPattern,
  diagonalStripes,
  diamonds,
  simulateDiagonal,
  wave,
  zigzag,
} from '../../src/index.js';
import { forcedKnots, solveDiagonal } from '../../src/solve/index.js';

const colours = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#e8702a', name: 'buoy orange' },
  { key: 'g', hex: '#4f7942', name: 'reed green' },
  { key: 'c', hex: '#f4f1e8', name: 'chalk' },
];

const PIECES: readonly (readonly [string, DiagonalPattern])[] = [
  ['stripes', diagonalStripes({ strings: 9, colours })],
  ['chevrons', chevrons({ strings: 12, colours })],
  ['diamonds', diamonds({ strings: 10, colours: colours.slice(0, 3) })],
  ['zigzag', zigzag({ strings: 9, colours })],
  ['wave', wave({ strings: 10, colours })],
];

describe.each(PIECES)('the picture of %s', (_, piece) => {
  const { picture } = simulateDiagonal(piece);

  test('is solved back, as a closed repeat too where the piece is one', async () => {
    const { status, pattern } = await solveDiagonal(picture);
    expect(status).toBe('solved');
    if (pattern !== null) expect(simulateDiagonal(pattern).picture.cells).toEqual(picture.cells);
    const { order } = simulateDiagonal(piece);
    const after = order.subarray(piece.rows * piece.strings);
    const closes = after.every((string, slot) => piece.start[string] === piece.start[slot]);
    if (!closes || piece.rows % 2 === 1) return;
    expect((await solveDiagonal(picture, { repeat: true })).status).toBe('solved');
  });

  test('forces no kind and no starting colour that the piece itself does not have', async () => {
    const reading = await forcedKnots(picture);
    expect(reading.status).toBe('read');
    for (const [cell, kind] of piece.knots.entries()) {
      if (kind < 4) expect(((reading.kinds[cell] as number) >> kind) & 1).toBe(1);
    }
    for (const [slot, colour] of reading.start.entries()) {
      if (colour < colours.length) expect(colour).toBe(piece.start[slot]);
    }
  });
});
