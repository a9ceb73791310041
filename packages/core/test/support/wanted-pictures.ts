import fc from 'fast-check';
import { anyDiagonal, type DiagonalSizes } from '../../../../testing/diagonals.js';
import {
  ANY_COLOUR,
  BARE,
  type ChartColour,
  type DiagonalPicture,
  knotsAcross,
  knotsInRow,
  simulateDiagonal,
} from '../../src/index.js';

const COLOURS: readonly ChartColour[] = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#e8702a', name: 'buoy orange' },
  { key: 'g', hex: '#4f7942', name: 'reed green' },
  { key: 'c', hex: '#f4f1e8', name: 'chalk' },
];

/**
 * Any wanted picture: half of them of colours at random, half what a pattern shows with a few knots
 * changed, which is nearer to what can be knotted.
 */
export function anyPicture(sizes: DiagonalSizes = {}): fc.Arbitrary<DiagonalPicture> {
  return fc.oneof(atRandom(sizes), changed(sizes));
}

function atRandom({ maxStrings = 12, maxRows = 14, maxColours = 4 }: DiagonalSizes) {
  return fc
    .record({
      strings: fc.integer({ min: 2, max: maxStrings }),
      rows: fc.integer({ min: 1, max: maxRows }),
      first: fc.constantFrom(0 as const, 1 as const),
      colours: fc.integer({ min: 1, max: maxColours }),
    })
    .chain(({ strings, rows, first, colours }) => {
      const lattice = { strings, rows, first };
      return fc
        .array(anyCell(colours), {
          minLength: rows * knotsAcross(lattice),
          maxLength: rows * knotsAcross(lattice),
        })
        .map((cells): DiagonalPicture => {
          return {
            ...lattice,
            name: '',
            colours: COLOURS.slice(0, colours),
            cells: padded(lattice, cells),
          };
        });
    });
}

function changed(sizes: DiagonalSizes): fc.Arbitrary<DiagonalPicture> {
  return anyDiagonal(sizes).chain((pattern) => {
    const { picture } = simulateDiagonal(pattern);
    const change = fc.tuple(
      fc.nat({ max: Math.max(picture.cells.length - 1, 0) }),
      anyCell(picture.colours.length),
    );
    return fc.array(change, { maxLength: 4 }).map((changes) => {
      const cells = Array.from(picture.cells);
      for (const [cell, colour] of changes) if (cell < cells.length) cells[cell] = colour;
      return { ...picture, cells: padded(picture, cells) };
    });
  });
}

function anyCell(colours: number): fc.Arbitrary<number> {
  return fc.oneof(
    { weight: 12, arbitrary: fc.integer({ min: 0, max: colours - 1 }) },
    { weight: 2, arbitrary: fc.constant(ANY_COLOUR) },
    { weight: 1, arbitrary: fc.constant(BARE) },
  );
}

function padded(
  lattice: Pick<DiagonalPicture, 'strings' | 'rows' | 'first'>,
  cells: readonly number[],
): Uint8Array {
  const across = knotsAcross(lattice);
  return Uint8Array.from(cells, (colour, cell) =>
    cell % across < knotsInRow(lattice, Math.floor(cell / across)) ? colour : BARE,
  );
}
