import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import '../../src/index.js';
import { packMotion, STEP, unpackMotion, WAVE_STEP } from '../../src/knot/tightened/coding.js';
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
    const { tying, caught } = tighteningOver(1);
    const stored = tying.map((curve, k) => [...curve, ...caught[k]!]);
    expect(stored).toHaveLength(FRAMES);
    expect(furthest(stored[FRAMES - 1]!, fresh[FRAMES - 1]!)).toBeLessThan(0.02);
    stored.forEach((curve, k) => {
      expect(furthest(curve, fresh[k]!)).toBeLessThan(0.1);
    });
  });

  it('unpacks what was packed: ends to their step, waves in between to theirs', () => {
    const waves = fc.array(
      fc.record({
        size: fc.double({ min: -2, max: 2, noNaN: true }),
        along: fc.double({ min: 0, max: 3, noNaN: true }),
        inTime: fc.double({ min: 0, max: 3, noNaN: true }),
      }),
      { maxLength: 4 },
    );
    const points = fc.integer({ min: 3, max: 30 });
    const count = fc.integer({ min: 2, max: 12 });
    fc.assert(
      fc.property(waves, points, count, (of, n, frames) => {
        const curves = Array.from({ length: frames }, (_, k) =>
          Float64Array.from({ length: n * 3 }, (_, i) =>
            of.reduce((sum, w) => sum + w.size * Math.sin(w.along * i + w.inTime * k), i / 10),
          ),
        );
        const back = unpackMotion(packMotion(curves), n * 3, frames);
        expect(back).toHaveLength(frames);
        back.forEach((curve, k) => {
          const isEnd = k === 0 || k === frames - 1;
          expect(furthest(curve, curves[k]!)).toBeLessThan(isEnd ? STEP * 0.51 : 3 * WAVE_STEP);
        });
      }),
    );
  });
});
