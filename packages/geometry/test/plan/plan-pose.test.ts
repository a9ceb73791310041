import { planAlpha } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planPose } from '../../src/plan/pose.js';
import { drawn } from '../support/charts.js';

const chart = drawn('aabba', 'abbbc', 'ccaab', 'aaaaa');
const plan = planAlpha(chart);

const phaseAt = (step: number, fraction: number): string => {
  const pose = planPose(plan, step, fraction);
  return `${pose.phase} ${pose.phaseProgress.toFixed(1)}`;
};

/** Places of steps of one sort. */
const stepsThat = (is: (step: ReturnType<typeof plan.steps.at>) => boolean): number[] =>
  [...plan.steps].flatMap((step, i) => (is(step) ? [i] : []));

describe('planPose', () => {
  it('is pure: any order of asking gives the same poses', () => {
    const places = fc.tuple(
      fc.integer({ min: 0, max: plan.steps.length - 1 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    const first = new Map<string, string>();
    fc.assert(
      fc.property(fc.array(places, { maxLength: 6 }), (asked) => {
        for (const [step, fraction] of asked) {
          const pose = JSON.stringify(planPose(plan, step, fraction));
          const key = `${step} ${fraction}`;
          expect(pose).toBe(first.get(key) ?? pose);
          first.set(key, pose);
          expect(JSON.stringify(planPose(planAlpha(chart), step, fraction))).toBe(pose);
        }
      }),
      { numRuns: 10 },
    );
  });

  it('shows each step as the move it is', () => {
    for (const step of stepsThat((s) => s.do === 'layThrough')) {
      expect(phaseAt(step, 0.5)).toBe('lay-through 0.5');
      expect(phaseAt(step - 1, 0.5)).toBe('first-half 0.5');
      expect(phaseAt(step + 1, 0.5)).toBe('second-half 0.5');
    }
    for (const step of stepsThat((s) => s.do === 'park' && s.route === 'behind')) {
      expect(phaseAt(step, 0.5)).toBe('pass-behind 0.5');
    }
    for (const step of stepsThat((s) => s.do === 'park' && s.route === 'down')) {
      expect(phaseAt(step, 0.5)).toBe('take-down 0.5');
    }
    expect(stepsThat((s) => s.do === 'layThrough').length).toBeGreaterThan(0);
    expect(stepsThat((s) => s.do === 'park' && s.route === 'behind').length).toBeGreaterThan(0);
    expect(stepsThat((s) => s.do === 'park' && s.route === 'down').length).toBeGreaterThan(0);
  });

  it('goes on from step to step within a knot without a jump', () => {
    for (let step = 0; step + 1 < plan.steps.length; step++) {
      const end = planPose(plan, step, 1);
      const begin = planPose(plan, step + 1, 0);
      if (end.row !== begin.row || end.column !== begin.column) continue;
      expect(begin.t).toBeCloseTo(end.t, 9);
    }
  });

  it('names the knot that a step belongs to', () => {
    let row = 0;
    for (const [i, step] of [...plan.steps].entries()) {
      if (step.do === 'turn') row++;
      if (step.do !== 'halfHitch') continue;
      const pose = planPose(plan, i, 0.5);
      expect(pose.row).toBe(row);
      expect(`B${pose.column + 1}`).toBe(step.held);
    }
  });

  it('refuses steps that are not there', () => {
    expect(() => planPose(plan, -1, 0)).toThrow(/no step 0.*from 1 to/);
    expect(() => planPose(plan, plan.steps.length, 0)).toThrow(/no step/);
  });
});
