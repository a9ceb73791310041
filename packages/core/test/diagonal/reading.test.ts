import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal, zigzagOf } from '../../../../testing/diagonals.js';
import {
  DiagonalPlanReader,
  knotAt,
  knotIndex,
  knotsInRow,
  planDiagonal,
  type Step,
  StepList,
  simulateDiagonal,
  slotOfPlace,
} from '../../src/index.js';
import { refusal } from '../support/refusal.js';

describe('a diagonal plan, read as knots', () => {
  it('has the knots of the pattern, in their places, with all of its steps', () => {
    fc.assert(
      fc.property(anyDiagonal({ bareTenths: 3 }), (pattern) => {
        const plan = planDiagonal(pattern);
        const { tying, held, order } = simulateDiagonal(pattern);
        const reader = new DiagonalPlanReader(plan);
        let step = 0;
        const rows = [...reader];
        expect(rows.map(({ row }) => row)).toEqual([...Array(pattern.rows).keys()]);
        for (const { row, knots, before } of rows) {
          const hang = order.slice(row * pattern.strings, (row + 1) * pattern.strings);
          expect(before.front).toEqual([...hang].map((string) => plan.hung[string]));
          const places = Array.from({ length: knotsInRow(pattern, row) }, (_, place) => place);
          expect(knots.map(({ place }) => place)).toEqual(
            places.filter((place) => knotAt(pattern, row, place) !== null),
          );
          for (const knot of knots) {
            const cell = knotIndex(pattern, row, knot.place);
            expect(knot).toMatchObject({
              row,
              slot: slotOfPlace(pattern, row, knot.place),
              kind: knotAt(pattern, row, knot.place),
              tying: plan.strings[tying[cell] as number],
              held: plan.strings[held[cell] as number],
            });
            expect(plan.steps.at(knot.steps.end - 1)).toMatchObject({ tying: knot.tying.id });
            // A row begins with the turn before it; nothing else stands between knots.
            if (row > 0 && knot === knots[0]) {
              expect(plan.steps.at(knot.steps.first).do).toBe('turn');
            } else expect(knot.steps.first).toBe(step);
            expect(knot.steps.end).toBeGreaterThan(step);
            step = knot.steps.end;
          }
        }
      }),
    );
  });

  it('reads any row at once, and goes back', () => {
    const reader = new DiagonalPlanReader(planDiagonal(zigzagOf(6, 9)));
    const late = reader.row(7);
    expect(reader.row(2).row).toBe(2);
    expect(reader.row(7)).toEqual(late);
  });

  it('says where it cannot be read', () => {
    const plan = planDiagonal(zigzagOf(4, 3));
    const steps = [...plan.steps];
    const read = (changed: typeof steps, row: number) =>
      refusal(() =>
        new DiagonalPlanReader({ ...plan, steps: StepList.from(plan.strings, changed) }).row(row),
      );
    expect(read(steps, 3)).toMatchObject({ code: 'no-such-row', place: { row: 4 } });
    expect(read(steps.slice(0, 4), 1)).toMatchObject({ code: 'row-missing', place: { row: 2 } });
    expect(read([...steps.slice(0, 1), ...steps.slice(2)], 0)).toMatchObject({
      code: 'step-cannot-be-done',
      place: { row: 1, path: 'step 2' },
    });
    expect(
      read(
        steps.filter(({ do: what }) => what !== 'turn'),
        0,
      ).message,
    ).toContain('no place for a knot at string 2');
    const parked: Step[] = [{ do: 'park', string: 'S1', route: 'behind' }, ...steps];
    expect(read(parked, 0).message).toContain('every string stays in front');
  });

  it.each([-1, 0.5, 3, Number.NaN])('has no row %d', (row) => {
    const error = refusal(() => new DiagonalPlanReader(planDiagonal(zigzagOf(4, 3))).row(row));
    expect(error).toMatchObject({
      code: 'no-such-row',
      what: `The plan has no row ${row + 1}.`,
      place: { row: row + 1 },
      remedy: 'Choose a row from 1 to 3.',
    });
  });

  it('has knots in places of their row only', () => {
    const plan = planDiagonal(zigzagOf(5, 2));
    const read = (steps: readonly Step[], row: number) =>
      refusal(() =>
        new DiagonalPlanReader({ ...plan, steps: StepList.from(plan.strings, steps) }).row(row),
      );
    const fwd = (tying: string, held: string): Step => ({
      do: 'halfHitch',
      way: 'forward',
      tying,
      held,
    });
    // Strings 4 and 5 have no place in row 1, nor have 1 and 2 in row 2.
    expect(read([fwd('S4', 'S5'), fwd('S4', 'S5')], 0)).toMatchObject({
      what: 'Row 1 has no place for a knot at string 4.',
      place: { row: 1, path: 'step 2' },
      remedy: 'Verify the plan to see where it first goes wrong.',
    });
    expect(read([{ do: 'turn' }, fwd('S1', 'S2'), fwd('S1', 'S2')], 1)).toMatchObject({
      what: 'Row 2 has no place for a knot at string 1.',
      place: { row: 2, path: 'step 3' },
    });
  });

  it('cannot turn in the middle of a knot', () => {
    const plan = planDiagonal(zigzagOf(4, 3));
    const steps = [...plan.steps];
    const turned = [...steps.slice(0, 1), { do: 'turn' } as const, ...steps.slice(1)];
    const error = refusal(() =>
      new DiagonalPlanReader({ ...plan, steps: StepList.from(plan.strings, turned) }).row(0),
    );
    expect(error).toMatchObject({ code: 'step-cannot-be-done', place: { row: 1, path: 'step 2' } });
  });
});
