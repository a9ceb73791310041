import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Chart,
  cellAt,
  drawFabric,
  fabricGeometry,
  KNOT_KINDS,
  planAlpha,
  type Verification,
  verifyPlan,
} from '../../src/index.js';
import { anyChart, anyEdge, anyStart, drawn } from '../support/charts.js';
import { refusal } from '../support/refusal.js';

interface Drawn {
  readonly row: number;
  readonly column: number;
  readonly kind: string;
  readonly colour: string;
}

function knotsIn(svg: string): Drawn[] {
  const uses = svg.matchAll(
    /<use href="#hh-([a-z-]+)" x="[-\d.]+" stroke="(#[0-9a-f]{6})" data-row="(\d+)" data-column="(\d+)"\/>/g,
  );
  return [...uses].map(([, kind, colour, row, column]) => ({
    row: Number(row),
    column: Number(column),
    kind: kind as string,
    colour: colour as string,
  }));
}

function turnsIn(svg: string): string[] {
  return [...svg.matchAll(/<use href="#hh-((?:in|out)side-[a-z]+)"/g)].map(
    (match) => match[1] as string,
  );
}

describe('the picture of the fabric', () => {
  it('shows each knot once, with the kind and the colour the verifier found', () => {
    fc.assert(
      fc.property(
        anyChart({ rows: 8, columns: 8, colours: 4 }),
        anyEdge,
        anyStart,
        (chart, edge, start) => {
          const plan = planAlpha(chart, { edge, start });
          const verification = verifyPlan(plan, chart);
          const knots = knotsIn(drawFabric({ plan, verification }));
          expect(knots).toHaveLength(chart.rows * chart.columns);
          expect(new Set(knots.map(({ row, column }) => `${row} ${column}`)).size).toBe(
            knots.length,
          );
          for (const { row, column, kind, colour } of knots) {
            const cell = (row - 1) * chart.columns + column - 1;
            expect(kind).toBe(KNOT_KINDS[verification.kinds[cell] as number]);
            expect(colour).toBe(chart.colours[cellAt(chart, row - 1, column - 1)]?.hex);
          }
        },
      ),
    );
  });

  it('leaves out a missing knot, so that the base string shows', () => {
    const chart = drawn('aaa', 'aaa');
    const plan = planAlpha(chart);
    const full = verifyPlan(plan, chart);
    const verification: Verification = {
      ...full,
      knots: full.knots - 1,
      tying: full.tying.map((string, cell) => (cell === 4 ? 0xffff : string)),
      kinds: full.kinds.map((kind, cell) => (cell === 4 ? 255 : kind)),
    };
    const svg = drawFabric({ plan, verification });
    expect(knotsIn(svg)).toHaveLength(5);
    expect(knotsIn(svg)).not.toContainEqual(expect.objectContaining({ row: 2, column: 2 }));
    expect(svg).toContain('Where a knot is missing, the base string shows (1 of them).');
  });

  it('takes a lead round the outside of a wrapped edge, and not of a straight one', () => {
    const chart = drawn('aaa', 'aaa', 'aaa', 'bbb');
    const turns = (edge: 'straight' | 'wrapped'): string[] => {
      const plan = planAlpha(chart, { edge });
      return turnsIn(drawFabric({ plan, verification: verifyPlan(plan, chart) }));
    };
    // After row 3 another lead starts, so nothing goes round there.
    expect(turns('wrapped')).toEqual(['outside-right', 'outside-left']);
    expect(turns('straight')).toEqual(['inside-right', 'inside-left']);
  });

  it('refers only to shapes it defines, under the prefix asked for', () => {
    const chart = drawn('abc', 'cba');
    const plan = planAlpha(chart);
    const svg = drawFabric({ plan, verification: verifyPlan(plan, chart), idPrefix: 'two-' });
    const ids = new Set([...svg.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]));
    for (const [, id] of svg.matchAll(/(?:href="#|url\(#)([^")]+)/g)) expect(ids).toContain(id);
    for (const id of ids) expect(id).toMatch(/^two-/);
  });

  it('does not let the title become markup', () => {
    const chart = drawn('a');
    const plan = planAlpha({ ...chart, name: '<script>"\u0000' });
    const svg = drawFabric({ plan, verification: verifyPlan(plan, chart) });
    expect(svg).not.toContain('<script');
    expect(svg).not.toContain('\u0000');
  });

  it('is refused above its limit', () => {
    const chart: Chart = {
      ...drawn('a'),
      rows: 3001,
      columns: 100,
      cells: new Uint8Array(300_100),
    };
    const plan = planAlpha(chart);
    const verification = verifyPlan(plan, chart);
    expect(refusal(() => drawFabric({ plan, verification })).code).toBe('picture-too-large');
  });
});

describe('the geometry of the picture', () => {
  const anySize = fc.record({
    rows: fc.integer({ min: 1, max: 500 }),
    columns: fc.integer({ min: 1, max: 300 }),
  });

  it('finds the knot at every point of its box', () => {
    fc.assert(
      fc.property(
        anySize,
        fc.nat(),
        fc.nat(),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        ({ rows, columns }, r, c, share) => {
          const geometry = fabricGeometry(rows, columns);
          const cell = { row: r % rows, column: c % columns };
          const box = geometry.boxOf(cell);
          expect(geometry.knotAt(box.x + share * box.width, box.y + share * box.height)).toEqual(
            cell,
          );
        },
      ),
    );
  });

  it('finds none beside the work', () => {
    fc.assert(
      fc.property(anySize, ({ rows, columns }) => {
        const geometry = fabricGeometry(rows, columns);
        const { left, top, width, height } = geometry;
        for (const [x, y] of [
          [left - 1, top + 1],
          [left + 1, top - 1],
          [width - 1, top + 1],
          [left + 1, height - 1],
        ] as const) {
          expect(geometry.knotAt(x, y)).toBeNull();
        }
      }),
    );
  });
});
