import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pack, STEP, unpack } from '../../src/knot/tightened/coding.js';
import { tightening } from '../../src/knot/tightened/curves.js';
import { tighteningOver } from '../../src/knot/tightened/over.js';
import { tightenOver } from '../../src/relax/caught.js';
import { FRAMES } from '../../src/relax/grid.js';
import { tightenHalves } from '../../src/relax/hitches.js';

const furthest = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let most = 0;
  for (let i = 0; i < a.length; i++) most = Math.max(most, Math.abs(a[i]! - b[i]!));
  return most;
};

describe('stored tight hitches', () => {
  it.each([
    ['same', 1],
    ['opposite', 1],
    ['opposite', 0.7],
  ] as const)('%s halves, ratio %s, come out of the solver again', (pairing, ratio) => {
    const fresh = tightenHalves(pairing, ratio);
    for (const half of ['first', 'second'] as const) {
      const stored = tightening(pairing, half, ratio);
      expect(stored).toHaveLength(FRAMES);
      expect(furthest(stored[FRAMES - 1]!, fresh[half][FRAMES - 1]!)).toBeLessThan(0.01);
      stored.forEach((curve, k) => {
        expect(furthest(curve, fresh[half][k]!)).toBeLessThan(0.1);
      });
    }
  });

  it('a second half over an old lead comes out of the solver again', () => {
    const first = tightening('same', 'first', 1);
    const fresh = tightenOver(1, first[first.length - 1]!);
    const stored = tighteningOver(1);
    expect(stored).toHaveLength(FRAMES);
    expect(furthest(stored[FRAMES - 1]!, fresh[FRAMES - 1]!)).toBeLessThan(0.02);
    stored.forEach((curve, k) => {
      expect(furthest(curve, fresh[k]!)).toBeLessThan(0.1);
    });
  });

  it('unpacks what was packed, to the step', () => {
    const coordinate = fc.double({ min: -60, max: 60, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.array(coordinate, { minLength: 9, maxLength: 9 }), { maxLength: 6 }),
        (curves) => {
          const back = unpack(pack(curves), 9);
          expect(back).toHaveLength(curves.length);
          back.forEach((curve, k) => {
            expect(furthest(curve, curves[k]!)).toBeLessThanOrEqual(STEP * 0.51);
          });
        },
      ),
    );
  });
});
