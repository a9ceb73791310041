import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Finding, type Plan, PlanReader, planAlpha, verifyPlan } from '../../src/index.js';
import { anyChart, anyEdge, anyStart } from '../support/charts.js';
import { anyMutation, mutate } from '../support/mutate.js';
import { knotsOutAsDrawn } from '../support/second-machine.js';

interface Cell {
  readonly row: number;
  readonly column: number;
}

/** The knots to which a step of the sound plan belongs, or stands next to; rows from 1. */
function knotsAround(plan: Plan, step: number): Cell[] {
  const cells: { cell: Cell; first: number; end: number }[] = [];
  for (const row of new PlanReader(plan)) {
    for (const knot of row.knots) {
      const cell = { row: knot.row + 1, column: knot.column + 1 };
      cells.push({ cell, first: knot.steps.first, end: knot.steps.end });
    }
  }
  const at = cells.findIndex(({ end }) => step < end);
  const last = at < 0 ? cells.length - 1 : at;
  return cells.slice(Math.max(0, last - 1), last + 2).map(({ cell }) => cell);
}

const serious = (findings: readonly Finding[]): Finding[] =>
  findings.filter(({ grade, code }) => grade !== 'note' && code !== 'long-float');

describe('one slip in a plan', () => {
  it('either leaves the piece as drawn or is found where it was made', () => {
    let seen = 0;
    let harmless = 0;
    fc.assert(
      fc.property(
        anyChart({ columns: 9, rows: 7, colours: 4 }),
        anyEdge,
        anyStart,
        anyMutation,
        (chart, edge, start, mutation) => {
          const plan = planAlpha(chart, { edge, start });
          const mutant = mutate(plan, mutation);
          fc.pre(mutant !== null);
          const result = verifyPlan(mutant.plan, chart);
          const found = serious(result.findings);
          seen++;
          if (knotsOutAsDrawn(mutant.plan, chart)) {
            harmless++;
            expect(found, mutant.what).toEqual([]);
            return;
          }
          expect(found.length, `${mutant.what} passed unseen`).toBeGreaterThan(0);
          const around = mutant.touched.flatMap((step) => knotsAround(plan, step));
          const first = found[0] as Finding;
          const near = around.some(
            (cell) => cell.row === first.row && cell.column === first.column,
          );
          expect(
            near,
            `${mutant.what}: found ${JSON.stringify(first)}, expected near ${JSON.stringify(around)}`,
          ).toBe(true);
        },
      ),
      { numRuns: 3000 },
    );
    // A property in which nearly every mutation is harmless would show nothing.
    expect(harmless).toBeLessThan(seen / 2);
  });

  it('never stops the verifier, however many there are', () => {
    fc.assert(
      fc.property(
        anyChart({ columns: 7, rows: 6, colours: 4 }),
        anyEdge,
        anyStart,
        fc.array(anyMutation, { minLength: 2, maxLength: 25 }),
        (chart, edge, start, mutations) => {
          let plan = planAlpha(chart, { edge, start });
          for (const mutation of mutations) {
            if (plan.steps.length > 0) plan = mutate(plan, mutation)?.plan ?? plan;
          }
          const result = verifyPlan(plan, chart);
          expect(result.ok || !knotsOutAsDrawn(plan, chart)).toBe(true);
          if (knotsOutAsDrawn(plan, chart)) expect(serious(result.findings)).toEqual([]);
          else expect(serious(result.findings)).not.toEqual([]);
        },
      ),
      { numRuns: 2000 },
    );
  });
});
