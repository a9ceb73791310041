import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerOrRefusal } from '../../../../testing/hostile/answer.js';
import { anySpoiltDiagonalPlan, anySpoiltPlan } from '../../../../testing/hostile/plans.js';
import { fuzzRuns } from '../../../../testing/hostile/runs.js';
import {
  apply,
  Cursor,
  DiagonalPlanReader,
  type Finding,
  InputError,
  instructionsText,
  type Plan,
  PlanReader,
  patternOfDiagonalPlan,
  printDiagonalPlan,
  printDiagonalTrace,
  printPlan,
  printTrace,
  readDiagonalPlan,
  readPlan,
  StepList,
  simulateDiagonal,
  startState,
  verifyDiagonal,
  verifyPlan,
} from '../../src/index.js';
import { knotsPlainly } from '../support/diagonal-mutate.js';
import { knotsOutAsDrawn } from '../support/second-machine.js';

const serious = (findings: readonly Finding[]): Finding[] =>
  findings.filter(({ grade, code }) => grade !== 'note' && code !== 'long-float');

/** Strings of the table that no step may name when a plan is printed. */
const namesAll = ({ steps, strings }: Plan | { steps: StepList; strings: Plan['strings'] }) =>
  Array.from({ length: steps.length }, (_, i) => i).every((i) => {
    const step = steps.at(i);
    const ids = 'tying' in step ? [step.tying, step.held] : 'string' in step ? [step.string] : [];
    return ids.every((id) => strings.some((string) => string.id === id));
  });

describe('nonsense plans of alpha patterns', () => {
  it('are proven just when a second machine ties the drawing, and judged to their end', () => {
    let proven = 0;
    let refuted = 0;
    fc.assert(
      fc.property(anySpoiltPlan, ({ chart, plan }) => {
        const verified = answerOrRefusal(InputError, () => verifyPlan(plan, chart));
        expect(verified).not.toBeNull();
        const found = verified?.findings ?? [];
        const sound = knotsOutAsDrawn(plan, chart);
        if (sound) {
          proven++;
          expect(serious(found)).toEqual([]);
        } else {
          refuted++;
          expect(serious(found)).not.toEqual([]);
        }
        expect(found.length).toBeLessThanOrEqual(2_200);
        for (const { row, column, message } of found) {
          if (row !== null) expect(row).toBeGreaterThanOrEqual(1);
          if (column !== null) expect(column).toBeLessThanOrEqual(chart.columns);
          expect(message).not.toMatch(/undefined|NaN|\bnull\b/);
        }
      }),
      fuzzRuns(300),
    );
    expect(refuted).toBeGreaterThan(proven);
  });

  it('are read, told, traced and written, or refused in plain words', () => {
    fc.assert(
      fc.property(anySpoiltPlan, ({ chart, plan }) => {
        const tell = (work: () => unknown) => answerOrRefusal(InputError, work);
        tell(() => [...new PlanReader(plan)]);
        tell(() => [...printTrace(plan)]);
        tell(() => [...instructionsText(plan, chart)]);
        if (namesAll(plan)) {
          const read = tell(() => readPlan([...printPlan(plan)].join(''))) as Plan | null;
          if (read !== null) expect([...read.steps]).toEqual([...plan.steps]);
        }
      }),
      fuzzRuns(100),
    );
  });

  it('leave the cursor where the steps can be done, wherever it is sent', () => {
    fc.assert(
      fc.property(anySpoiltPlan, fc.array(fc.double(), { maxLength: 6 }), ({ plan }, targets) => {
        let state = startState(plan.strings, plan.hung);
        let done = 0;
        for (const step of plan.steps) {
          const result = apply(state, step);
          if (!result.ok) break;
          state = result.state;
          done++;
        }
        const cursor = new Cursor(plan.steps, plan.hung);
        for (const target of targets) {
          const reached = cursor.seek(target);
          expect(reached).toBeGreaterThanOrEqual(0);
          expect(reached).toBeLessThanOrEqual(done);
        }
        expect(cursor.seek(plan.steps.length)).toBe(done);
        expect(cursor.state).toEqual(state);
      }),
      fuzzRuns(100),
    );
  });
});

describe('nonsense plans of diagonal patterns', () => {
  it('are proven just when they are tied plainly, and judged to their end', () => {
    fc.assert(
      fc.property(anySpoiltDiagonalPlan, fc.boolean(), ({ pattern, plan }, known) => {
        const { picture } = simulateDiagonal(pattern);
        const verified = answerOrRefusal(InputError, () =>
          verifyDiagonal(plan, picture, known ? { pattern } : {}),
        );
        expect(verified).not.toBeNull();
        if (!known) expect(verified?.ok).toBe(knotsPlainly(plan, picture));
        else if (verified?.ok === true) expect(verified.kinds).toEqual(pattern.knots);
        for (const { message } of verified?.findings ?? []) {
          expect(message).not.toMatch(/undefined|NaN|\bnull\b/);
        }
      }),
      fuzzRuns(200),
    );
  });

  it('are read, traced, taken for a pattern and written, or refused in plain words', () => {
    fc.assert(
      fc.property(anySpoiltDiagonalPlan, ({ plan }) => {
        const tell = (work: () => unknown) => answerOrRefusal(InputError, work);
        tell(() => [...new DiagonalPlanReader(plan)]);
        tell(() => [...printDiagonalTrace(plan)]);
        tell(() => patternOfDiagonalPlan(plan));
        if (namesAll(plan)) {
          tell(() => readDiagonalPlan([...printDiagonalPlan(plan)].join('')));
        }
      }),
      fuzzRuns(100),
    );
  });
});

describe('plans that are no plans', () => {
  const anyHeader = fc.record(
    {
      rows: fc.constantFrom(0, -1, 1, 6, 10_000, 1.5),
      columns: fc.constantFrom(0, 1, 2, 300, -1, 0.5),
      start: fc.constantFrom('left', 'right'),
      edge: fc.constantFrom('straight', 'wrapped'),
      hung: fc.constantFrom('none', 'twice', 'unknown', 'leads', 'reversed'),
      strings: fc.constantFrom('none', 'all-base', 'all-lead', 'reversed', 'same-id'),
      cut: fc.constantFrom('op', 'a', 'b', 'length'),
    },
    { requiredKeys: [] },
  );

  type Header = typeof anyHeader extends fc.Arbitrary<infer T> ? T : never;

  function spoilHeader(plan: Plan, given: Header): Plan {
    const { hung, strings, cut, ...header } = given;
    const { op, a, b, length } = plan.steps;
    const table = {
      none: [],
      'all-base': plan.strings.map((string) => ({ ...string, role: 'base' as const })),
      'all-lead': plan.strings.map((string) => ({ ...string, role: 'lead' as const })),
      reversed: [...plan.strings].reverse(),
      'same-id': plan.strings.map((string) => ({ ...string, id: 'B1' })),
    };
    const hanging = {
      none: [],
      twice: [...plan.hung, ...plan.hung],
      unknown: plan.hung.map((id) => `${id}?`),
      leads: plan.strings.filter(({ role }) => role === 'lead').map(({ id }) => id),
      reversed: [...plan.hung].reverse(),
    };
    const known = strings === undefined ? plan.strings : table[strings as keyof typeof table];
    return {
      ...plan,
      ...(header as Partial<Plan>),
      strings: known,
      hung: hung === undefined ? plan.hung : hanging[hung as keyof typeof hanging],
      steps: new StepList(
        known,
        cut === 'op' ? op.slice(0, length >> 1) : op,
        cut === 'a' ? a.slice(0, length >> 1) : a,
        cut === 'b' ? b.slice(0, length >> 1) : b,
        cut === 'length' ? 2 * length : length,
      ),
    };
  }

  it('are judged, read and traced, or refused in plain words', () => {
    fc.assert(
      fc.property(anySpoiltPlan, anyHeader, ({ chart, plan: sound }, header) => {
        const tell = (work: () => unknown) => answerOrRefusal(InputError, work);
        const plan = tell(() => spoilHeader(sound, header)) as Plan | null;
        if (plan === null) return;
        tell(() => verifyPlan(plan, chart));
        tell(() => {
          const reader = new PlanReader(plan);
          for (let row = 0; row < 8; row++) tell(() => reader.row(row));
        });
        tell(() => [...printTrace(plan)]);
        tell(() => new Cursor(plan.steps, plan.hung).seek(1e9));
      }),
      fuzzRuns(200),
    );
  });

  it('name no steps that there are not', () => {
    const table = [{ id: 'B1', role: 'base' as const, colour: '#111111', name: '' }];
    const steps = (...ops: number[]) =>
      new StepList(
        table,
        Uint8Array.from(ops),
        new Uint16Array(ops.length),
        new Uint16Array(ops.length),
        ops.length,
      );
    expect(() => steps(9, 10)).toThrow(InputError);
    expect(() => steps(255)).toThrow(/step 1.*255/i);
    expect(steps(9, 8).length).toBe(2);
  });
});
