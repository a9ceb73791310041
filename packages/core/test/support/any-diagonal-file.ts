import fc from 'fast-check';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import {
  ANY_COLOUR,
  BARE,
  type DiagonalPattern,
  type DiagonalPicture,
  simulateDiagonal,
} from '../../src/index.js';
import { anyChartOfFile } from './any-chart-file.js';

/** Diagonal patterns with everything a file can say: names, odd keys, colours not used. */
export const anyDiagonalOfFile: fc.Arbitrary<DiagonalPattern> = fc
  .tuple(anyChartOfFile, anyDiagonal({ bareTenths: 3 }))
  .map(([{ name, colours }, pattern]) => ({
    ...pattern,
    name,
    colours,
    start: pattern.start.map((colour) => colour % colours.length),
  }));

/** Wanted pictures: what a pattern shows, with some places open and some changed. */
export const anyPictureOfFile: fc.Arbitrary<DiagonalPicture> = fc
  .tuple(anyDiagonalOfFile, fc.infiniteStream(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.nat(7))))
  .map(([pattern, changes]) => {
    const { picture } = simulateDiagonal(pattern);
    const cells = picture.cells.map((cell) => {
      const [change, colour] = changes.next().value as [number, number];
      if (cell === BARE || change > 4) return cell;
      return change > 2 ? ANY_COLOUR : colour % pattern.colours.length;
    });
    return { ...picture, cells };
  });
