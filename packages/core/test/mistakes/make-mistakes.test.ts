import fc from 'fast-check';
import { expect, test } from 'vitest';
import { makeMistakes, planAlpha, verifyPlan, Cursor, Look } from '../../src/index.js';
import { anyChart, anyEdge, anyStart, drawn, generator } from '../support/charts.js';
import { allMistakes, randomPlan } from '../support/planted.js';

test('A maker who makes no mistake does just what the plan says', () => {
  fc.assert(
    fc.property(anyChart({ columns: 12, rows: 12 }), anyEdge, anyStart, fc.array(fc.nat(), {maxLength: 3}), (chart, edge, start, joined) => {
      const joins = joined.map((n) => ({ row: n % chart.rows, column: (n >>> 8) % chart.columns }));
      const plan = planAlpha(chart, { edge, start, joins });
      const piece = makeMistakes(plan, []);
      expect([...piece.plan.steps]).toEqual([...plan.steps]);
      const { tying } = verifyPlan(plan, chart);
      expect([...piece.seen.cells].map((c) => piece.seen.colours[c])).toEqual(
        [...tying].map((string) => plan.strings[string]?.colour),
      );
    }),
  );
});

test('The state machine can do every step of a piece with mistakes', () => {
  for (let seed = 0; seed < 300; seed++) {
    const plan = randomPlan(seed);
    const next = generator(seed + 1);
    const all = [...allMistakes(plan).values()].filter((some) => some.length > 0);
    const any = () => {
      const some = all[Math.floor(next() * all.length)] as (typeof all)[number];
      return some[Math.floor(next() * some.length)] as (typeof some)[number];
    };
    const mistakes = [any(), any(), any()].filter((m) => m.row < plan.rows - 4);
    const piece = makeMistakes(plan, mistakes);
    const cursor = new Cursor(piece.plan.steps, piece.plan.hung);
    expect(cursor.seek(piece.plan.steps.length)).toBe(piece.plan.steps.length);
  }
});
