import { describe, expect, it } from 'vitest';
import { Cursor, PlanReader, planAlpha } from '../../src/index.js';
import { drawnAtRandom, generator } from '../support/charts.js';

/** A piece in which a lead runs out at every third knot, so that it has some 2,000 strings. */
const chart = drawnAtRandom({ columns: 100, rows: 60, colours: 3, run: 4, seed: 11 });
const joins = Array.from({ length: 2_000 }, (_, i) => ({
  row: Math.floor((3 * i) / 100),
  column: (3 * i) % 100,
}));
const plan = planAlpha(chart, { joins });

/** Fields that say how much is kept; of no use to anybody else. */
const keptOf = (of: object, field: string) => (of as Record<string, readonly unknown[]>)[field];

describe('a piece of very many strings', () => {
  it('is read the same in any order, though not every row is kept', () => {
    expect(plan.strings.length).toBeGreaterThan(1_500);
    const inOrder = [...new PlanReader(plan)];
    const reader = new PlanReader(plan);
    const next = generator(5);
    for (let i = 0; i < 40; i++) {
      const row = Math.floor(next() * plan.rows);
      expect(reader.row(row).knots).toEqual(inOrder[row]?.knots);
      expect(reader.row(row).before.front).toEqual(inOrder[row]?.before.front);
    }
    expect(keptOf(reader, 'starts')?.length).toBeLessThanOrEqual(plan.rows / 3);
  });

  it('is gone through the same both ways, though states are kept far apart', () => {
    const cursor = new Cursor(plan.steps, plan.hung);
    const straight = new Cursor(plan.steps, plan.hung);
    const seen = new Map<number, unknown>();
    for (let at = 0; at <= plan.steps.length; at += 1_777) {
      expect(straight.seek(at)).toBe(at);
      seen.set(at, straight.state);
    }
    for (const [at, state] of [...seen].reverse()) {
      cursor.seek(at);
      expect(cursor.state).toEqual(state);
    }
    expect(keptOf(cursor, 'marks')?.length).toBeLessThanOrEqual(2);
  });
});
