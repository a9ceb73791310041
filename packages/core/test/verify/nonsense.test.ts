import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planAlpha, StepList, verifyPlan } from '../../src/index.js';
import { drawn } from '../support/charts.js';
import { anyStep } from '../support/steps.js';

describe('any steps at all', () => {
  it('end in findings, never in an exception or without an end', () => {
    const small = drawn('abab', 'baba', 'aabb', 'bbbb');
    const sound = planAlpha(small);
    fc.assert(
      fc.property(fc.array(anyStep, { maxLength: 150 }), (steps) => {
        const result = verifyPlan({ ...sound, steps: StepList.from(sound.strings, steps) }, small);
        expect(result.ok).toBe(false);
      }),
    );
  });
});
