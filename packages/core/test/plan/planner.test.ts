import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Join,
  KNOT_KINDS,
  type Plan,
  PlanReader,
  planAlpha,
  StepList,
  verifyPlan,
} from '../../src/index.js';
import { anyChart, anyEdge, anyStart, drawn } from '../support/charts.js';
import { knotsOutAsDrawn } from '../support/second-machine.js';
import { stepWords } from '../support/step-words.js';

const kindsOf = (plan: Plan, row: number): string[] =>
  new PlanReader(plan).row(row).knots.map((knot) => `${knot.kind} on ${knot.held.id}`);

describe('planAlpha', () => {
  it('knots every chart out as drawn, by the verifier and by a second machine', () => {
    fc.assert(
      fc.property(anyChart(), anyEdge, anyStart, (chart, edge, start) => {
        const plan = planAlpha(chart, { edge, start });
        const result = verifyPlan(plan, chart);
        expect(result.findings.filter((f) => f.grade === 'wrong')).toEqual([]);
        expect(result.knots).toBe(chart.rows * chart.columns);
        expect(result.halfHitches).toBe(2 * result.knots);
        chart.cells.forEach((colour, cell) => {
          const tied = plan.strings[result.tying[cell] as number];
          expect(tied?.colour).toBe(chart.colours[colour]?.hex);
        });
        expect(knotsOutAsDrawn(plan, chart)).toBe(true);
        const weak = result.findings.filter((f) => f.grade === 'weak');
        expect(weak.filter((f) => f.code !== 'long-float')).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('mirrors: the mirrored chart from the other side gives the mirrored steps', () => {
    const mirrored = (words: string[], columns: number): string[] =>
      words.map((word) =>
        word
          .replace(/B(\d+)/, (_, n) => `B${columns + 1 - Number(n)}`)
          .replace(/forward|backward/, (way) => (way === 'forward' ? 'backward' : 'forward'))
          .replace(/ at (\d+)/, ' at side'),
      );
    fc.assert(
      fc.property(anyChart({ columns: 12, rows: 12 }), anyEdge, (chart, edge) => {
        const flipped = chart.cells.slice();
        for (let row = 0; row < chart.rows; row++) {
          flipped.subarray(row * chart.columns, (row + 1) * chart.columns).reverse();
        }
        const left = stepWords(planAlpha(chart, { edge, start: 'left' }));
        const right = stepWords(planAlpha({ ...chart, cells: flipped }, { edge, start: 'right' }));
        expect(mirrored(right, chart.columns)).toEqual(
          left.map((word) => word.replace(/ at (\d+)/, ' at side')),
        );
      }),
    );
  });

  it('goes on with a new lead wherever one runs out', () => {
    fc.assert(
      fc.property(
        anyChart({ columns: 8, rows: 12, colours: 3 }),
        anyEdge,
        anyStart,
        fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 6 }),
        (chart, edge, start, places) => {
          const joins: Join[] = places.map(([row, column]) => ({
            row: row % chart.rows,
            column: column % chart.columns,
          }));
          const plan = planAlpha(chart, { edge, start, joins });
          const result = verifyPlan(plan, chart);
          expect(result.findings.filter((f) => f.grade === 'wrong')).toEqual([]);
          expect(knotsOutAsDrawn(plan, chart)).toBe(true);
        },
      ),
    );
  });
});

describe('reading a plan', () => {
  it('says which row the steps do not reach, wherever they stop', () => {
    const chart = drawn('abab', 'baab', 'aaaa');
    const plan = planAlpha(chart);
    const all = [...plan.steps];
    for (let length = 0; length < all.length; length++) {
      const short = { ...plan, steps: StepList.from(plan.strings, all.slice(0, length)) };
      const turns = all.slice(0, length).filter((step) => step.do === 'turn').length;
      const reader = new PlanReader(short);
      for (let row = 0; row < turns; row++) expect(reader.row(row).knots).toHaveLength(4);
      if (turns < 2) expect(() => reader.row(2)).toThrow(/end before row [23]/);
    }
  });
});

describe('rows and edges', () => {
  const chart = drawn('aaaa', 'aaaa', 'aaaa');

  it('ties a straight edge with two edge knots at each turn', () => {
    const plan = planAlpha(chart);
    expect(kindsOf(plan, 0)).toEqual([
      'backward-forward on B1',
      'forward on B2',
      'forward on B3',
      'forward-backward on B4',
    ]);
    expect(kindsOf(plan, 1)).toEqual([
      'forward-backward on B4',
      'backward on B3',
      'backward on B2',
      'backward-forward on B1',
    ]);
    expect(kindsOf(plan, 2)).toEqual(kindsOf(plan, 0));
  });

  it('keeps the outermost base strings outermost with a straight edge only', () => {
    fc.assert(
      fc.property(anyChart({ columns: 9, rows: 9 }), anyStart, (drawing, start) => {
        const straight = new PlanReader(planAlpha(drawing, { start }));
        for (const row of straight) {
          const bases = row.before.front.filter((id) => id.startsWith('B'));
          expect(row.before.front[0] === 'B1' || drawing.columns === 1).toBe(true);
          expect(bases).toEqual(straight.plan.hung);
        }
      }),
    );
    const wrapped = new PlanReader(planAlpha(chart, { edge: 'wrapped' }));
    expect(wrapped.row(1).before.front).toEqual(['B1', 'B2', 'B3', 'B4', 'L1']);
    expect(wrapped.row(2).before.front).toEqual(['L1', 'B1', 'B2', 'B3', 'B4']);
  });

  it('ties a wrapped edge with forward knots to the right and backward knots to the left', () => {
    const plan = planAlpha(chart, { edge: 'wrapped' });
    expect(new Set(kindsOf(plan, 0).map((k) => k.split(' ')[0]))).toEqual(new Set(['forward']));
    expect(new Set(kindsOf(plan, 1).map((k) => k.split(' ')[0]))).toEqual(new Set(['backward']));
  });

  it('starts from the right when told to', () => {
    expect(kindsOf(planAlpha(chart, { start: 'right' }), 0)[0]).toBe('forward-backward on B4');
  });

  it('keeps the lead on its side of a single base string', () => {
    const narrow = drawn('a', 'b', 'a');
    expect(kindsOf(planAlpha(narrow), 1)).toEqual(['backward-forward on B1']);
    expect(kindsOf(planAlpha(narrow, { start: 'right' }), 1)).toEqual(['forward-backward on B1']);
    expect(kindsOf(planAlpha(narrow, { edge: 'wrapped' }), 1)).toEqual(['backward on B1']);
  });
});

describe('colour changes', () => {
  it('within the row: the old lead is laid through the half-made knot and goes to the back', () => {
    expect(stepWords(planAlpha(drawn('aabbb'))).slice(5, 13)).toEqual([
      'add L2 at 3',
      'L2 forward B3',
      'layThrough L1',
      'L2 forward B3',
      'park L1 through',
      'L2 forward B4',
      'L2 forward B4',
      'L2 forward B5',
    ]);
  });

  it('after the first knot: as within the row', () => {
    expect(stepWords(planAlpha(drawn('abb'))).slice(3, 8)).toEqual([
      'add L2 at 2',
      'L2 forward B2',
      'layThrough L1',
      'L2 forward B2',
      'park L1 through',
    ]);
  });

  it('at the last knot: the old lead is passed behind, not caught', () => {
    expect(stepWords(planAlpha(drawn('aab'))).slice(5)).toEqual([
      'add L2 at 3',
      'park L1 behind',
      'L2 forward B3',
      'L2 backward B3',
    ]);
  });

  it('at the turn: the old lead goes down and the new one starts the row', () => {
    expect(stepWords(planAlpha(drawn('aa', 'bb'))).slice(5, 10)).toEqual([
      'park L1 down',
      'turn',
      'add L2 at 1',
      'L2 forward B2',
      'L2 backward B2',
    ]);
  });

  it('at the last knot and at the turn after it', () => {
    const plan = planAlpha(drawn('aab', 'ccc'));
    const [first] = new PlanReader(plan).row(1).knots;
    expect(first?.change).toMatchObject({ place: 'turn', firstUse: true, oldLeadRoute: 'down' });
    expect(verifyPlan(plan, drawn('aab', 'ccc')).changes).toEqual({
      withinRow: 0,
      afterFirstKnot: 0,
      lastKnot: 1,
      turn: 1,
      start: 3,
    });
  });

  it('counts each hand-over once, and first uses beside them', () => {
    const chart = drawn('abab', 'abab', 'cccc');
    expect(verifyPlan(planAlpha(chart), chart).changes).toEqual({
      withinRow: 2,
      afterFirstKnot: 2,
      lastKnot: 2,
      turn: 1,
      start: 3,
    });
  });

  it('counts the second of two knots as the last', () => {
    const chart = drawn('ab', 'ab');
    expect(verifyPlan(planAlpha(chart), chart).changes).toMatchObject({
      afterFirstKnot: 0,
      lastKnot: 2,
      turn: 0,
    });
  });

  it('takes a lead up again over a float and says how long it is', () => {
    const chart = drawn('aabbbbbb', 'bbbbbbbb', 'bbbbbbab');
    const reading = new PlanReader(planAlpha(chart)).row(2);
    const back = reading.knots.find((knot) => knot.change?.newLead.id === 'L1');
    expect(back?.change).toMatchObject({
      place: 'withinRow',
      firstUse: false,
      float: { from: { row: 0, column: 2 }, rows: 2, columns: 4 },
    });
  });

  it('ties hand-worked kinds when the chart has them', () => {
    const chart = { ...drawn('aaa'), knots: Uint8Array.from([3, 2, 2]) };
    expect([...planAlpha(chart).steps].filter((s) => s.do === 'halfHitch')).toHaveLength(6);
    const result = verifyPlan(planAlpha(chart), chart);
    expect(KNOT_KINDS[2]).toBe('forward-backward');
    expect(result.ok).toBe(false);
    expect(result.findings[0]).toMatchObject({ code: 'wrong-kind', row: 1, column: 2 });
  });
});
