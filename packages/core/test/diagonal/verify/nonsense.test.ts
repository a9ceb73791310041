import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../../testing/diagonals.js';
import {
  type DiagonalPlan,
  DiagonalPlanReader,
  planDiagonal,
  printDiagonalPlan,
  readDiagonalPlan,
  type Step,
  StepList,
  simulateDiagonal,
  verifyDiagonal,
} from '../../../src/index.js';
import { knotsPlainly } from '../../support/diagonal-mutate.js';
import { readOrRefusal } from '../../support/refusal.js';

/** Steps that nobody could knot, most of them. */
const anyPicks = fc.array(fc.tuple(fc.nat(9), fc.nat(9), fc.nat(9), fc.nat(12)), { maxLength: 60 });

function nonsense(plan: DiagonalPlan, picks: readonly number[][]): DiagonalPlan {
  const id = (number: number) => plan.hung[number % (plan.hung.length + 1)] ?? 'S99';
  const steps = picks.map(([what = 0, a = 0, b = 0, slot = 0]): Step => {
    const kinds: Step[] = [
      { do: 'halfHitch', way: 'forward', tying: id(a), held: id(b) },
      { do: 'halfHitch', way: 'backward', tying: id(a), held: id(b) },
      { do: 'halfHitch', way: 'forward', tying: id(a), held: id(a + 1) },
      { do: 'turn' },
      { do: 'layThrough', string: id(a) },
      { do: 'park', string: id(a), route: 'through' },
      { do: 'takeUp', string: id(a), slot },
      { do: 'add', string: id(a), slot },
      { do: 'end', string: id(a) },
      { do: 'turn' },
    ];
    return kinds[what] as Step;
  });
  return { ...plan, steps: StepList.from(plan.strings, steps) };
}

describe('steps that make no sense', () => {
  it('are judged to their end, and rightly, with every finding in the piece', () => {
    fc.assert(
      fc.property(
        anyDiagonal({ maxStrings: 6, maxRows: 6 }),
        anyPicks,
        fc.boolean(),
        (pattern, picks, known) => {
          const plan = nonsense(planDiagonal(pattern), picks);
          const { picture } = simulateDiagonal(pattern);
          const verified = verifyDiagonal(plan, picture, known ? { pattern } : {});
          if (!known) expect(verified.ok).toBe(knotsPlainly(plan, picture));
          else if (verified.ok) expect(verified.kinds).toEqual(pattern.knots);
          for (const { row, place, slot, message } of verified.findings) {
            expect(row ?? 1).toBeGreaterThanOrEqual(1);
            expect(row ?? 1).toBeLessThanOrEqual(pattern.rows + 1);
            expect(place ?? 1).toBeGreaterThanOrEqual(1);
            expect(slot ?? 1).toBeGreaterThanOrEqual(1);
            expect(slot ?? 1).toBeLessThanOrEqual(pattern.strings);
            expect(message).not.toMatch(/undefined|NaN|null/);
          }
          for (let row = 0; row <= pattern.rows; row++) {
            const from = row * pattern.strings;
            const front = verified.order.subarray(from, from + pattern.strings);
            expect(new Set(front).size).toBe(pattern.strings);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it('are read and printed, or refused where a knot cannot be read', () => {
    fc.assert(
      fc.property(anyDiagonal({ maxStrings: 6, maxRows: 6 }), anyPicks, (pattern, picks) => {
        const plan = nonsense(planDiagonal(pattern), picks);
        readOrRefusal(() => [...new DiagonalPlanReader(plan)]);
        const known = picks.filter(([what = 0, a = 0, b = 0]) => {
          const inTable = (n: number) => n % (pattern.strings + 1) < pattern.strings;
          return inTable(a) && (what > 1 || inTable(b)) && (what !== 2 || inTable(a + 1));
        });
        const listed = nonsense(planDiagonal(pattern), known);
        const read = readDiagonalPlan([...printDiagonalPlan(listed)].join(''));
        expect([...read.steps]).toEqual([...listed.steps]);
      }),
      { numRuns: 200 },
    );
  });
});
