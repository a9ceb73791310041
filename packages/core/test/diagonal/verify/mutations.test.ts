import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../../testing/diagonals.js';
import {
  knotsAcross,
  NO_KNOT,
  planDiagonal,
  simulateDiagonal,
  verifyDiagonal,
} from '../../../src/index.js';
import { anyMutant, knotsPlainly } from '../../support/diagonal-mutate.js';

describe('verifying diagonal plans', () => {
  it('proves what the planner makes of any pattern, and reports what it simulated', () => {
    fc.assert(
      fc.property(anyDiagonal({ bareTenths: 2 }), fc.boolean(), (pattern, known) => {
        const plan = planDiagonal(pattern);
        const reading = simulateDiagonal(pattern);
        const verified = verifyDiagonal(plan, reading.picture, known ? { pattern } : {});
        expect(verified.findings.filter(({ grade }) => grade === 'wrong')).toEqual([]);
        expect(verified.ok).toBe(true);
        expect(verified.order).toEqual(reading.order);
        expect(verified.tying).toEqual(reading.tying);
        expect(verified.kinds).toEqual(pattern.knots);
        expect(verified.knots * 2).toBe(verified.halfHitches);
      }),
    );
  });

  it('sees a change just when the steps no longer knot the picture', () => {
    let tried = 0;
    let bad = 0;
    fc.assert(
      fc.property(anyMutant(anyDiagonal({ maxStrings: 9, maxRows: 8 })), (mutant) => {
        tried++;
        const { picture } = simulateDiagonal(mutant.pattern);
        const verified = verifyDiagonal(mutant.plan, picture);
        expect(verified.ok).toBe(knotsPlainly(mutant.plan, picture));
        if (!verified.ok) bad++;
      }),
      { numRuns: 600 },
    );
    expect(bad).toBeGreaterThan(tried / 3);
  });

  it('finds one change where it was made when the pattern is known, and little else', () => {
    // Turns between rows without knots cannot be told from each other.
    const inEveryRow = anyDiagonal({ maxStrings: 9, maxRows: 8 }).filter((pattern) => {
      const across = knotsAcross(pattern);
      return Array.from({ length: pattern.rows }, (_, row) =>
        pattern.knots.subarray(row * across, (row + 1) * across).some((kind) => kind !== NO_KNOT),
      ).every(Boolean);
    });
    fc.assert(
      fc.property(anyMutant(inEveryRow), (mutant) => {
        const { pattern, plan, change, row } = mutant;
        const { picture } = simulateDiagonal(pattern);
        const { ok, findings } = verifyDiagonal(plan, picture, { pattern });
        if (ok) return;
        const wrong = findings.filter(({ grade }) => grade === 'wrong');
        expect(wrong.length).toBeLessThanOrEqual(change === 'swap-next' ? 6 : 4);
        const near = wrong.some((finding) => Math.abs((finding.row ?? 0) - 1 - row) <= 1);
        expect(near).toBe(true);
      }),
      { numRuns: 600 },
    );
  });
});
