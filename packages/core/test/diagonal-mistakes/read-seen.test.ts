import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import {
  diagnoseDiagonal,
  diagonalStripes,
  patternOfDiagonalPlan,
  planDiagonal,
  printDiagonalPicture,
  printDiagonalPictureDocument,
  printDiagonalText,
  readDiagonalSeen,
  simulateDiagonal,
} from '../../src/index.js';
import { refusal } from '../support/refusal.js';
import { writePng } from '../support/write-png.js';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const COLOURS = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'c', hex: '#f4f1e8', name: 'chalk' },
];
const stripes = diagonalStripes({ strings: 6, colours: COLOURS, rows: 8 });

describe('what was seen, from a file', () => {
  it.each([
    ['a picture as text', printDiagonalPicture(simulateDiagonal(stripes).picture)],
    ['a picture as a document', printDiagonalPictureDocument(simulateDiagonal(stripes).picture)],
    ['a pattern that was knotted', printDiagonalText(stripes)],
  ])('is read from %s', (_, text) => {
    const seen = readDiagonalSeen(bytesOf(text), 'seen.txt');
    expect(diagnoseDiagonal(stripes, seen)).toMatchObject({ ok: true });
    const other = { ...stripes, knots: stripes.knots.map((knot, at) => (at === 7 ? 1 : knot)) };
    expect(diagnoseDiagonal(other, seen).ok).toBe(false);
  });

  it('gives kinds too where a pattern was knotted', () => {
    const other = { ...stripes, knots: stripes.knots.map((knot, at) => (at === 9 ? 2 : knot)) };
    const seen = readDiagonalSeen(bytesOf(printDiagonalText(other)), '');
    const [first] = diagnoseDiagonal(stripes, seen).explanations;
    expect(first?.alternatives.map(({ mistakes }) => mistakes)).toEqual([
      [{ kind: 'wrong-kind', row: 3, place: 0, tied: 'forward-backward' }],
    ]);
  });

  it('is read from a picture with a pixel for each gap', () => {
    const { picture } = simulateDiagonal(stripes);
    const samples = Array.from({ length: 40 }, (_, pixel) => {
      const [row, gap] = [Math.floor(pixel / 5), pixel % 5];
      const colour = picture.cells[row * 3 + Math.floor(gap / 2)] as number;
      const hex = COLOURS[colour]?.hex ?? '#000000';
      return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
    }).flat();
    const png = writePng({ width: 5, height: 8, depth: 8, colourType: 2, samples });
    expect(diagnoseDiagonal(stripes, readDiagonalSeen(png, 'seen.png')).ok).toBe(true);
  });

  it('is refused where it is a chart, with the name of the file', () => {
    const chart = bytesOf('b #1f6fb2 lake blue\n\nbb\n');
    expect(refusal(() => readDiagonalSeen(chart, 'band.txt'))).toMatchObject({
      code: 'chart-not-diagonal',
      place: { file: 'band.txt' },
    });
  });
});

describe('the pattern of a plan', () => {
  it('knots what the pattern knots that was planned', () => {
    fc.assert(
      fc.property(anyDiagonal({ bareTenths: 2 }), (pattern) => {
        const again = patternOfDiagonalPlan(planDiagonal(pattern));
        expect(again.knots).toEqual(pattern.knots);
        const shown = ({
          colours,
          cells,
        }: {
          colours: readonly { hex: string }[];
          cells: Uint8Array;
        }) => [...cells].map((cell) => colours[cell]?.hex);
        expect(shown(simulateDiagonal(again).picture)).toEqual(
          shown(simulateDiagonal(pattern).picture),
        );
      }),
      { numRuns: 30 },
    );
  });
});
