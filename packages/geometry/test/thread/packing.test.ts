import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { putUpsNeeded } from '../../src/thread/packing.js';

/** The least number, by trying every way: pieces one after another into each put-up. */
function least(pieces: readonly number[], putUp: number): number {
  let best = pieces.length;
  const rooms: number[] = [];
  const place = (i: number): void => {
    if (rooms.length >= best) return;
    if (i === pieces.length) {
      best = rooms.length;
      return;
    }
    const piece = pieces[i] as number;
    for (let r = 0; r < rooms.length; r++) {
      if ((rooms[r] as number) < piece) continue;
      rooms[r] = (rooms[r] as number) - piece;
      place(i + 1);
      rooms[r] = (rooms[r] as number) + piece;
    }
    rooms.push(putUp - piece);
    place(i + 1);
    rooms.pop();
  };
  place(0);
  return best;
}

describe('put-ups', () => {
  it('are never fewer than can be, nor more than the known bound', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 7 }),
        (pieces) => {
          const needed = putUpsNeeded(pieces, 100);
          const fewest = least(pieces, 100);
          expect(needed).toBeGreaterThanOrEqual(fewest);
          // Dosa 2007: first fit decreasing takes at most 11/9 of the least number plus 6/9.
          expect(needed).toBeLessThanOrEqual((11 / 9) * fewest + 6 / 9 + 1e-9);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('knows the plain cases', () => {
    expect(putUpsNeeded([60, 60, 60], 100)).toBe(3);
    expect(putUpsNeeded([60, 40, 60, 40], 100)).toBe(2);
    expect(putUpsNeeded([], 100)).toBe(0);
  });
});
