import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solveDiagonal } from '../../src/solve/index.js';
import { fewestWrong } from '../support/row-states.js';
import { anyPicture } from '../support/wanted-pictures.js';

describe('the nearest pattern', () => {
  test('differs in as few knots as any does, and that is known', async () => {
    await fc.assert(
      fc.asyncProperty(
        anyPicture({ maxStrings: 6, maxRows: 8, maxColours: 4 }),
        async (picture) => {
          const least = fewestWrong(picture);
          const solution = await solveDiagonal(picture, { explain: false });
          expect(solution.wrong.length).toBe(least);
          expect(solution.atLeastWrong).toBe(least);
          expect(solution.status).toBe(least === 0 ? 'solved' : 'impossible');
        },
      ),
      { numRuns: 60 },
    );
  });
});
