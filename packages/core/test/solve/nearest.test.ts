import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BARE, type DiagonalPicture, knotsInRow } from '../../src/index.js';
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

  test('is told as far as it is found when the search is aborted', async () => {
    const abort = new AbortController();
    const stages = new Set<string>();
    const solution = await solveDiagonal(strewn(16, 24), {
      explain: false,
      signal: abort.signal,
      onProgress: ({ stage, wrong, atLeastWrong }) => {
        stages.add(stage);
        if (wrong !== null) expect(wrong).toBeGreaterThanOrEqual(atLeastWrong);
        if (stage === 'nearing' && wrong !== null) abort.abort();
      },
    });
    expect([...stages]).toEqual(['reading', 'nearing']);
    expect(solution.wrong.length).toBeGreaterThanOrEqual(solution.atLeastWrong);
    expect(solution.pattern).not.toBeNull();
    expect(solution.seconds).toBeLessThan(60);
  });
});

/** Five colours at random: far from what can be knotted. */
function strewn(strings: number, rows: number): DiagonalPicture {
  const lattice = { strings, rows, first: 0 as const };
  const across = Math.floor(strings / 2);
  let state = 3;
  const cells = Uint8Array.from({ length: rows * across }, (_, cell) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    const there = cell % across < knotsInRow(lattice, Math.floor(cell / across));
    return there ? Math.floor((state / 2 ** 32) * 5) : BARE;
  });
  const colours = [...'bogcs'].map((key) => ({ key, hex: '#1f6fb2', name: '' }));
  return { ...lattice, name: '', colours, cells };
}
