import { PlanReader, planAlpha, verifyPlan } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ChangeCount } from '../../src/tie/changes-left.js';
import { doneBefore, knotsIn, placeAfter } from '../../src/tie/shape.js';
import { anyWork } from './works.js';

describe('places of a count of knots', () => {
  it('are the knots of the plan in the order in which its steps tie them', () => {
    fc.assert(
      fc.property(anyWork, ({ chart, choice }) => {
        const { rows, columns } = chart;
        const shape = { rows, columns, start: choice.start };
        const tied = [...new PlanReader(planAlpha(chart, choice))].flatMap(({ knots }) => knots);
        expect(tied).toHaveLength(knotsIn(shape));
        tied.forEach(({ row, column, order }, done) => {
          expect(placeAfter(done, shape)).toEqual({ row, column, order });
          expect(doneBefore(row, column, shape)).toBe(done);
        });
        expect(placeAfter(tied.length, shape)).toBeNull();
        expect(placeAfter(-1, shape)).toBeNull();
      }),
    );
  });
});

describe('changes left', () => {
  it('are those that the steps of the plan make', () => {
    fc.assert(
      fc.property(anyWork, fc.nat(), fc.nat(), ({ chart, choice }, one, other) => {
        const plan = planAlpha(chart, choice);
        const { tying } = verifyPlan(plan, chart);
        const changes = [...new PlanReader(plan)]
          .flatMap(({ knots }) => knots)
          .map(({ change }) => change !== null && change.oldLead !== null);
        const [from, to] = [one % (changes.length + 1), other % (changes.length + 1)].sort(
          (a, b) => a - b,
        ) as [number, number];
        const { rows, columns } = chart;
        const count = new ChangeCount({ rows, columns, choice, tying });
        expect(count.between(from, to)).toBe(changes.slice(from, to).filter(Boolean).length);
      }),
    );
  });
});
