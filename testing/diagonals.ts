import fc from 'fast-check';
import {
  type ChartColour,
  type DiagonalPattern,
  knotIndex,
  knotsAcross,
  knotsInRow,
  NO_KNOT,
} from '../packages/core/src/index.js';

const COLOURS: readonly ChartColour[] = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#e8702a', name: 'buoy orange' },
  { key: 'g', hex: '#4f7942', name: 'reed green' },
  { key: 'c', hex: '#f4f1e8', name: 'chalk' },
];

export interface DiagonalSizes {
  readonly maxStrings?: number;
  readonly maxRows?: number;
  readonly maxColours?: number;
  /** Share of places without a knot, of 10. Default: 1. */
  readonly bareTenths?: number;
}

/** Any diagonal pattern. */
export function anyDiagonal(sizes: DiagonalSizes = {}): fc.Arbitrary<DiagonalPattern> {
  const { maxStrings = 12, maxRows = 14, maxColours = 4, bareTenths = 1 } = sizes;
  return fc
    .record({
      strings: fc.integer({ min: 2, max: maxStrings }),
      rows: fc.integer({ min: 1, max: maxRows }),
      first: fc.constantFrom(0 as const, 1 as const),
      colours: fc.integer({ min: 1, max: Math.min(maxColours, COLOURS.length) }),
    })
    .chain(({ strings, rows, first, colours }) => {
      const lattice = { strings, rows, first };
      const across = knotsAcross(lattice);
      const kinds = fc.array(
        fc.oneof(
          { weight: 10 - bareTenths, arbitrary: fc.integer({ min: 0, max: 3 }) },
          { weight: bareTenths, arbitrary: fc.constant(NO_KNOT) },
        ),
        { minLength: rows * across, maxLength: rows * across },
      );
      const start = fc.array(fc.integer({ min: 0, max: colours - 1 }), {
        minLength: strings,
        maxLength: strings,
      });
      return fc.tuple(start, kinds).map(([startColours, given]) => {
        const knots = Uint8Array.from(given);
        for (let row = 0; row < rows; row++) {
          for (let place = knotsInRow(lattice, row); place < across; place++) {
            knots[knotIndex(lattice, row, place)] = NO_KNOT;
          }
        }
        return {
          ...lattice,
          name: '',
          colours: COLOURS.slice(0, colours),
          start: Uint8Array.from(startColours),
          knots,
        };
      });
    });
}

/** A pattern of two colours whose knots change their direction from row to row. */
export function zigzagOf(strings: number, rows: number, first: 0 | 1 = 0): DiagonalPattern {
  const lattice = { strings, rows, first };
  const knots = new Uint8Array(rows * knotsAcross(lattice)).fill(NO_KNOT);
  for (let row = 0; row < rows; row++) {
    for (let place = 0; place < knotsInRow(lattice, row); place++) {
      knots[knotIndex(lattice, row, place)] = row % 2;
    }
  }
  const start = Uint8Array.from({ length: strings }, (_, slot) => slot % 2);
  return { ...lattice, name: '', colours: COLOURS.slice(0, 2), start, knots };
}
