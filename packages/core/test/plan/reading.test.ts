import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Plan, PlanReader, planAlpha, type Step, StepList } from '../../src/index.js';
import { splice, stepOf, withSteps } from '../support/alpha-slips.js';
import { anyChart, anyEdge, anyStart, drawn } from '../support/charts.js';
import { refusal } from '../support/refusal.js';

describe('the rows of a plan', () => {
  it('hold every knot of the chart once, in order, and every step once', () => {
    fc.assert(
      fc.property(anyChart({ columns: 9, rows: 9 }), anyEdge, anyStart, (chart, edge, start) => {
        const plan = planAlpha(chart, { edge, start });
        const rows = [...new PlanReader(plan)];
        expect(rows.map(({ row }) => row)).toEqual([...Array(chart.rows).keys()]);
        let step = 0;
        for (const { row, direction, knots } of rows) {
          expect(direction === 'right').toBe((start === 'left') === (row % 2 === 0));
          const places = [...Array(chart.columns).keys()];
          expect(knots.map(({ order }) => order)).toEqual(places);
          expect(knots.map(({ column }) => column)).toEqual(
            direction === 'right' ? places : places.reverse(),
          );
          for (const knot of knots) {
            expect(knot).toMatchObject({ row, direction });
            expect(knot.held.id).toBe(`B${knot.column + 1}`);
            const drawnHex =
              chart.colours[chart.cells[row * chart.columns + knot.column] as number];
            expect(knot.tying.colour).toBe(drawnHex?.hex);
            expect(knot.steps.first).toBe(step);
            step = knot.steps.end;
          }
        }
        expect(step).toBe(plan.steps.length);
      }),
    );
  });

  it('say where in the row each knot is', () => {
    const places = (plan: Plan) => new PlanReader(plan).row(0).knots.map(({ place }) => place);
    expect(places(planAlpha(drawn('aaaa')))).toEqual(['first', 'inner', 'inner', 'last']);
    expect(places(planAlpha(drawn('aa')))).toEqual(['first', 'last']);
    expect(places(planAlpha(drawn('a')))).toEqual(['only']);
  });

  it('are read in any order, the same each time', () => {
    const reader = new PlanReader(planAlpha(drawn('ab', 'ba', 'ab', 'ba', 'ab')));
    const late = reader.row(4);
    expect(reader.row(1).row).toBe(1);
    expect(reader.row(4)).toEqual(late);
    expect(new PlanReader(reader.plan).row(4)).toEqual(late);
  });

  it.each([-1, 3, 0.5, Number.NaN])('are no more than there are: %d', (row) => {
    const error = refusal(() => new PlanReader(planAlpha(drawn('a', 'a', 'a'))).row(row));
    expect(error).toMatchObject({
      code: 'no-such-row',
      place: { row: row + 1 },
      remedy: 'Choose a row from 1 to 3.',
    });
    expect(error.message).toContain(`The plan has no row ${row + 1}.`);
  });
});

describe('hand-overs as they are read', () => {
  const changes = (plan: Plan) =>
    [...new PlanReader(plan)].flatMap(({ knots }) =>
      knots.flatMap(({ row, column, change }) =>
        change === null ? [] : [{ row, column, ...change }],
      ),
    );

  it('say who takes over from whom, where, and by which route', () => {
    const read = changes(planAlpha(drawn('abba', 'bbba')));
    expect(
      read.map(({ row, column, place, oldLead, newLead, oldLeadRoute, firstUse, join }) => [
        row,
        column,
        place,
        oldLead?.id ?? null,
        newLead.id,
        oldLeadRoute,
        firstUse,
        join,
      ]),
    ).toEqual([
      [0, 0, null, null, 'L1', null, true, false],
      [0, 1, 'afterFirstKnot', 'L1', 'L2', 'through', true, false],
      [0, 3, 'lastKnot', 'L2', 'L1', 'behind', false, false],
      [1, 2, 'afterFirstKnot', 'L1', 'L2', 'through', false, false],
    ]);
    expect(read.map(({ float }) => float)).toEqual([
      null,
      null,
      { from: { row: 0, column: 1 }, rows: 0, columns: 2 },
      { from: { row: 0, column: 3 }, rows: 1, columns: 1 },
    ]);
  });

  it('at a turn, and in one colour', () => {
    const read = changes(planAlpha(drawn('aa', 'bb', 'bb'), { joins: [{ row: 2, column: 0 }] }));
    expect(read.slice(1)).toMatchObject([
      { place: 'turn', oldLeadRoute: 'down', firstUse: true, join: false, float: null },
      { place: 'turn', oldLeadRoute: 'down', firstUse: false, join: true, float: null },
    ]);
  });

  it('measure a float from where the lead left, in whatever row that was', () => {
    const read = changes(planAlpha(drawn('bbbb', 'bbab', 'bbbb', 'babb')));
    expect(read.at(-2)).toMatchObject({
      row: 3,
      column: 1,
      float: { from: { row: 1, column: 1 }, rows: 2, columns: 0 },
    });
  });

  it('end with the last step of the old lead, also where it is finished', () => {
    const plan = planAlpha(drawn('aaaa'), { joins: [{ row: 0, column: 2 }] });
    const knot = new PlanReader(plan).row(0).knots[2];
    expect(plan.steps.at((knot?.steps.end ?? 0) - 1)).toEqual({ do: 'end', string: 'L1' });
  });

  it('do not depend on where in the table of strings a lead is listed', () => {
    const plan = planAlpha(drawn('abba', 'bbba'));
    const strings = [...plan.strings].reverse();
    const other = { ...plan, strings, steps: StepList.from(strings, [...plan.steps]) };
    expect(changes(other)).toEqual(changes(plan));
    const single = planAlpha(drawn('aa', 'bb'));
    const first = [...single.strings].reverse();
    expect(
      changes({ ...single, strings: first, steps: StepList.from(first, [...single.steps]) }),
    ).toEqual(changes(single));
  });

  it('keep the float of a knot apart from those before it', () => {
    // L1 comes back over a float at row 2; L3 is new at the knot after.
    const read = changes(planAlpha(drawn('aabb', 'bbac')));
    expect(read.map(({ newLead, float }) => [newLead.id, float === null])).toEqual([
      ['L1', true],
      ['L2', true],
      ['L3', true],
      ['L1', false],
      ['L2', false],
    ]);
  });
});

describe('a plan that cannot be read', () => {
  const chart = drawn('aab', 'aab');
  const plan = planAlpha(chart);
  const read = (steps: readonly Step[], row: number) =>
    refusal(() => new PlanReader(withSteps(plan, steps)).row(row));

  it('is refused at the step that cannot be done', () => {
    const steps = [...plan.steps];
    const first = stepOf(steps, 'add', 1);
    const error = read(splice(steps, first, 1), 0);
    expect(error).toMatchObject({
      code: 'step-cannot-be-done',
      place: { row: 1, path: `step ${first + 2}` },
      remedy: 'Verify the plan to see where it first goes wrong.',
    });
    const turn = stepOf(steps, 'turn');
    const later = read(splice(steps, turn + 1, 0, { do: 'end', string: 'nobody' }), 1);
    expect(later.place).toEqual({ row: 2, path: `step ${turn + 2}` });
  });

  it('is refused where a turn is missing', () => {
    const steps = [...plan.steps];
    const error = read(splice(steps, stepOf(steps, 'turn'), 1), 1);
    expect(error).toMatchObject({
      code: 'row-missing',
      place: { row: 2 },
      remedy: 'Verify the plan to see what is missing.',
    });
  });

  it.each([
    ['rows', { rows: 0 }, 'rows'],
    ['columns', { columns: 301, hung: [] }, 'columns'],
  ])('is refused when its number of %s is outside the limits', (_, size, what) => {
    expect(refusal(() => new PlanReader({ ...plan, ...size })).message).toContain(what);
  });

  it('is refused when it hangs too few base strings', () => {
    const error = refusal(() => new PlanReader({ ...plan, hung: ['B1', 'B2'] }));
    expect(error).toMatchObject({
      code: 'base-strings',
      remedy: 'A plan needs one base string for each column.',
    });
    expect(error.message).toContain('hangs 2 base strings for 3 columns.');
  });

  it('is read up to there', () => {
    const steps = [...plan.steps];
    const turn = stepOf(steps, 'turn');
    const broken = splice(steps, turn + 1, 0, { do: 'end', string: 'nobody' });
    expect(new PlanReader(withSteps(plan, broken)).row(0).knots).toHaveLength(3);
  });

  it('takes up no string that it does not list', () => {
    const steps: Step[] = [{ do: 'takeUp', string: 'nobody', slot: 0 }, ...plan.steps];
    const error = refusal(() =>
      new PlanReader({ ...plan, steps: StepList.from(plan.strings, steps) }).row(0),
    );
    expect(error.code).toBe('step-cannot-be-done');
  });
});
