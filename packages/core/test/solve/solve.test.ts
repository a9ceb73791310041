import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import { simulateDiagonal } from '../../src/index.js';
import { solveDiagonal } from '../../src/solve/index.js';
import { fewestWrong } from '../support/row-states.js';
import { anyPicture } from '../support/wanted-pictures.js';

describe('solving back', () => {
  test('a picture that a pattern shows is solved, and the answer shows it', async () => {
    await fc.assert(
      fc.asyncProperty(anyDiagonal({ maxStrings: 20, maxRows: 60 }), async (pattern) => {
        const { picture } = simulateDiagonal(pattern);
        const solution = await solveDiagonal(picture);
        expect(solution.status).toBe('solved');
        expect(solution.wrong).toEqual([]);
        const found = solution.pattern;
        if (found === null) throw new Error('no pattern');
        expect(simulateDiagonal(found).picture.cells).toEqual(picture.cells);
      }),
      { numRuns: 40 },
    );
  });
});

describe('any picture', () => {
  test('is solved if and only if going through all orders of colours finds a way', async () => {
    await fc.assert(
      fc.asyncProperty(
        anyPicture({ maxStrings: 6, maxRows: 6, maxColours: 3 }),
        async (picture) => {
          const solution = await solveDiagonal(picture);
          expect(solution.status).toBe(fewestWrong(picture) === 0 ? 'solved' : 'impossible');
        },
      ),
      { numRuns: 150 },
    );
  });
});
