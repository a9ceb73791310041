import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  apply,
  type Chart,
  PlanReader,
  planAlpha,
  printTrace,
  type State,
  startState,
} from '../../src/index.js';
import { anyChart, anyEdge, anyStart, drawn } from '../support/charts.js';

describe('the trace', () => {
  it('says of each knot what the immutable state machine says', () => {
    fc.assert(
      fc.property(
        anyChart({ rows: 8, columns: 8, colours: 4 }),
        anyEdge,
        anyStart,
        (chart, edge, start) => {
          const plan = planAlpha(chart, {
            edge,
            start,
            joins: [{ row: chart.rows - 1, column: 0 }],
          });
          const lines = [...printTrace(plan)].map((line) => JSON.parse(line));
          let state: State = startState(plan.strings, plan.hung);
          let step = 0;
          let i = 0;
          for (const { knots } of new PlanReader(plan)) {
            for (const knot of knots) {
              for (; step < knot.steps.end; step++) {
                const result = apply(state, plan.steps.at(step));
                if (!result.ok) throw new Error(result.fault.message);
                state = result.state;
              }
              expect(lines[i++]).toEqual({
                row: knot.row + 1,
                column: knot.column + 1,
                direction: knot.direction,
                kind: knot.kind,
                tying: knot.tying.id,
                held: knot.held.id,
                colour:
                  chart.colours[chart.cells[knot.row * chart.columns + knot.column] as number]?.hex,
                front: state.front,
                parked: state.parked.map(({ string, at, how }) => ({
                  string,
                  row: at.row + 1,
                  column: at.column + 1,
                  how,
                })),
              });
            }
          }
          expect(i).toBe(lines.length);
        },
      ),
    );
  });

  it('keeps the keys in their order', () => {
    const [first] = printTrace(planAlpha(drawn('ab')));
    expect(first).toBe(
      '{"row":1,"column":1,"direction":"right","kind":"backward-forward","tying":"L1","held":"B1","colour":"#0a0b0d","front":["B1","L1","B2"],"parked":[]}\n',
    );
  });

  it('stops with the place of a step that cannot be done', () => {
    const chart: Chart = { ...drawn('aa', 'aa'), knots: Uint8Array.from([0, 0, 0, 0]) };
    const lines: string[] = [];
    expect(() => {
      for (const line of printTrace(planAlpha(chart))) lines.push(line);
    }).toThrow(/row 2/);
    expect(lines).toHaveLength(2);
  });
});
