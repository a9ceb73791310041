import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countOf } from '../../src/ease/count.js';
import { effortOf } from '../../src/ease/effort.js';
import { PlanReader, planAlpha, verifyPlan } from '../../src/index.js';
import { anyChart, anyEdge, anyStart, drawn } from '../support/charts.js';

describe('what a piece asks of the hands', () => {
  it('is what the verifier and the reader of plans find', () => {
    fc.assert(
      fc.property(
        anyChart({ columns: 12, rows: 14, colours: 5 }),
        anyEdge,
        anyStart,
        (chart, edge, start) => {
          const { ok, effort } = effortOf(chart, { edge, start }, { longFloat: 4 });
          expect(ok).toBe(true);
          const plan = planAlpha(chart, { edge, start });
          const { changes, findings } = verifyPlan(plan, chart, { longFloat: 4 });
          expect(effort.changes).toBe(
            changes.withinRow + changes.afterFirstKnot + changes.lastKnot + changes.turn,
          );
          const long = findings.filter(({ code }) => code === 'long-float').length;
          if (long < 200) expect(effort.longFloats).toBe(long);
          let floats = 0;
          let length = 0;
          for (const row of new PlanReader(plan)) {
            for (const { change } of row.knots) {
              if (change?.float == null) continue;
              floats++;
              length += Math.hypot(change.float.rows, change.float.columns);
            }
          }
          expect(effort.floats).toBe(floats);
          expect(effort.floatKnots).toBeCloseTo(length, 6);
        },
      ),
    );
  });

  it('counted from the drawing is the same', () => {
    fc.assert(
      fc.property(
        anyChart({ columns: 12, rows: 14, colours: 5 }),
        anyEdge,
        anyStart,
        (chart, edge, start) => {
          const { effort } = effortOf(chart, { edge, start }, { longFloat: 4 });
          const count = countOf(chart, start, 4);
          expect(count.floatKnots).toBeCloseTo(effort.floatKnots, 6);
          expect(effort).toMatchObject({ ...count, floatKnots: effort.floatKnots });
        },
      ),
      { numRuns: 200 },
    );
  });

  it('takes two entries of one colour for no change, as the verifier does', () => {
    const chart = drawn('aabbaa', 'aaaaaa');
    const [a, b] = chart.colours;
    const alike = { ...chart, colours: [a!, { ...b!, hex: a!.hex }] };
    expect(effortOf(alike, { edge: 'straight', start: 'left' }).effort).toMatchObject({
      changes: 0,
      floats: 1,
    });
    expect(countOf(alike, 'left', 10)).toMatchObject({ changes: 0, floats: 1 });
  });

  it('takes time for half hitches and changes, as it is told', () => {
    const chart = drawn('aab', 'aab');
    const pace = { halfHitch: 2, change: 30 };
    expect(effortOf(chart, { edge: 'straight', start: 'left' }, { pace }).effort.seconds).toBe(
      6 * 2 * 2 + 2 * 30,
    );
  });
});
