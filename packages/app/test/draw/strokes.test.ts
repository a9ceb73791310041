import type { Chart } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fillCells } from '../../src/draw/edit/fill.js';
import { linePlaces } from '../../src/draw/edit/line.js';
import { mirrored } from '../../src/draw/edit/mirror.js';
import type { Place } from '../../src/draw/edit/place.js';
import { fillFrom } from '../../src/draw/edit/strokes.js';
import { imagesOf, NO_SYMMETRY, type Symmetry } from '../../src/draw/edit/symmetry.js';
import { type DrawingTool, Stroke } from '../../src/draw/tools/stroke.js';
import { anyChart, below, drawn, rowsOf, seed } from './charts.js';

const place = fc.record({
  row: fc.integer({ min: -40, max: 40 }),
  column: fc.integer({ min: -40, max: 40 }),
});
/** Draws from the first point through the others. */
function stroked(
  tool: DrawingTool,
  chart: Chart,
  [first, ...others]: readonly Place[],
  colour: number,
  ways: Symmetry = NO_SYMMETRY,
): Chart {
  if (first === undefined) return chart;
  const stroke = new Stroke(chart, tool, colour, ways, first);
  for (const point of others) stroke.moveTo(point);
  return stroke.finish().chart;
}

const symmetry = fc.record({ sides: fc.boolean(), ends: fc.boolean(), turn: fc.boolean() });

describe('lines', () => {
  test('go step by step along the longer way, never more than half a knot off', () => {
    fc.assert(
      fc.property(place, place, (from, to) => {
        const line = linePlaces(from, to);
        const high = to.row - from.row;
        const wide = to.column - from.column;
        const long = Math.max(Math.abs(high), Math.abs(wide));
        expect(line).toHaveLength(long + 1);
        expect(line[0]).toEqual(from);
        expect(line.at(-1)).toEqual(to);
        line.forEach(({ row, column }, i) => {
          // Twice the distance in knots, times the steps: whole numbers, so that half is half.
          expect(2 * Math.abs((row - from.row) * long - i * high)).toBeLessThanOrEqual(long);
          expect(2 * Math.abs((column - from.column) * long - i * wide)).toBeLessThanOrEqual(long);
        });
      }),
    );
  });

  test('are the same from either end', () => {
    fc.assert(
      fc.property(place, place, (from, to) => {
        expect(linePlaces(to, from).reverse()).toEqual(linePlaces(from, to));
      }),
    );
  });

  test('take the knots that they should', () => {
    const chart = drawn('........', '........', '........', '........');
    const line = stroked(
      'line',
      chart,
      [
        { row: 0, column: 0 },
        { row: 3, column: 7 },
      ],
      1,
    );
    expect(rowsOf(line)).toEqual(['bb......', '..bb....', '....bb..', '......bb']);
  });
});

describe('pencil and rectangles', () => {
  test('a stroke goes on beside the chart and comes back', () => {
    const chart = drawn('.....', '.....', '.....');
    const points = [
      { row: 0, column: 1 },
      { row: -2, column: 3 },
      { row: 0, column: 5 },
      { row: 2, column: 3 },
    ];
    expect(rowsOf(stroked('pencil', chart, points, 2))).toEqual(['.o...', '....o', '...o.']);
  });

  test('an outline goes round, a block fills', () => {
    const chart = drawn('.....', '.....', '.....', '.....');
    const corners = [
      { row: 3, column: 4 },
      { row: 0, column: 1 },
    ];
    expect(rowsOf(stroked('frame', chart, corners, 1))).toEqual([
      '.bbbb',
      '.b..b',
      '.b..b',
      '.bbbb',
    ]);
    expect(rowsOf(stroked('block', chart, corners, 1))).toEqual([
      '.bbbb',
      '.bbbb',
      '.bbbb',
      '.bbbb',
    ]);
  });

  test('what is drawn already is the very same chart', () => {
    const chart = drawn('bb', 'bb');
    expect(stroked('pencil', chart, [{ row: 0, column: 0 }], 1)).toBe(chart);
    expect(fillFrom(chart, { row: 1, column: 1 }, 1)).toBe(chart);
  });

  test('a colour the chart has not is refused, with its place', () => {
    expect(() => fillFrom(drawn('b'), { row: 0, column: 0 }, 4)).toThrow(
      'colours[4]: There is no colour 5. Choose one of colours 1 to 4.',
    );
  });
});

/** Patches found without walking: neighbours of one colour are joined pair by pair. */
function patchNumbers(rows: number, columns: number, cells: Uint8Array): number[] {
  const parent = Array.from(cells, (_, at) => at);
  const root = (at: number): number => {
    const up = parent[at] as number;
    return up === at ? at : root(up);
  };
  for (let at = 0; at < rows * columns; at++) {
    if ((at + 1) % columns !== 0 && cells[at] === cells[at + 1]) parent[root(at)] = root(at + 1);
    if (at + columns < cells.length && cells[at] === cells[at + columns]) {
      parent[root(at)] = root(at + columns);
    }
  }
  return parent.map((_, at) => root(at));
}

describe('filling', () => {
  test('reaches just what joining neighbours pair by pair finds', () => {
    fc.assert(
      fc.property(anyChart({ rows: 14, columns: 14, colours: 3 }), seed, (chart, start) => {
        const at = below(start, chart.cells.length);
        const found = fillCells(chart, {
          row: Math.floor(at / chart.columns),
          column: at % chart.columns,
        });
        const numbers = patchNumbers(chart.rows, chart.columns, chart.cells);
        const wanted = numbers.flatMap((number, cell) => (number === numbers[at] ? [cell] : []));
        expect([...found].sort((a, b) => a - b)).toEqual(wanted);
      }),
    );
  });

  test('does not go over a corner or round the side', () => {
    const chart = drawn('b..b', '.bb.', 'b..b');
    expect(rowsOf(fillFrom(chart, { row: 1, column: 1 }, 2))).toEqual(['b..b', '.oo.', 'b..b']);
    expect(rowsOf(fillFrom(chart, { row: 1, column: 3 }, 2))).toEqual(['b..b', '.bbo', 'b..b']);
  });

  test('a chart as large as any is filled at once', () => {
    const chart = {
      ...drawn('.'),
      rows: 10_000,
      columns: 300,
      cells: new Uint8Array(3_000_000),
    };
    // A winding way, as long as any: nothing must be called within itself again and again.
    for (let row = 1; row < chart.rows; row += 2) {
      const from = row * chart.columns + (row % 4 === 1 ? 0 : 1);
      chart.cells.fill(1, from, from + chart.columns - 1);
    }
    const filled = fillFrom(chart, { row: 0, column: 0 }, 2);
    expect(filled.cells.indexOf(0)).toBe(-1);
    expect(filled.cells.filter((cell) => cell === 1)).toHaveLength(5_000 * 299);
  });

  test('a place beside the chart is refused', () => {
    expect(() => fillFrom(drawn('b.'), { row: 0, column: 2 }, 1)).toThrow('row 1, column 3');
  });
});

describe('symmetry', () => {
  test('every image has the same images', () => {
    fc.assert(
      fc.property(anyChart(), symmetry, seed, (chart, ways, at) => {
        const cell = below(at, chart.cells.length);
        const start = { row: Math.floor(cell / chart.columns), column: cell % chart.columns };
        const key = ({ row, column }: { row: number; column: number }) => `${row} ${column}`;
        const images = imagesOf(start, chart, ways).map(key).sort();
        expect(new Set(images).size).toBe(images.length);
        expect([1, 2, 4]).toContain(images.length);
        for (const image of imagesOf(start, chart, ways)) {
          expect(imagesOf(image, chart, ways).map(key).sort()).toEqual(images);
        }
      }),
    );
  });

  test('what is drawn on a symmetric chart leaves it symmetric', () => {
    fc.assert(
      fc.property(
        anyChart({ rows: 12, columns: 12 }),
        symmetry,
        fc.array(place, { maxLength: 4 }),
        seed,
        (blank, ways, points, at) => {
          const chart = { ...blank, cells: new Uint8Array(blank.cells.length) };
          const colour = blank.colours.length - 1;
          const spot = below(at, chart.cells.length);
          const start = { row: Math.floor(spot / chart.columns), column: spot % chart.columns };
          const lines = stroked('pencil', chart, points, colour, ways);
          for (const result of [lines, fillFrom(lines, start, colour, ways)]) {
            if (ways.sides) expect(mirrored(result, 'sides')).toBe(result);
            if (ways.ends) expect(mirrored(result, 'ends')).toBe(result);
            if (ways.turn) expect(mirrored(result, 'turn')).toBe(result);
          }
        },
      ),
    );
  });

  test('a patch is filled on both sides, even where filling joins the two', () => {
    const chart = drawn('.b.', '.b.');
    const ways = { sides: true, ends: false, turn: false };
    expect(rowsOf(fillFrom(chart, { row: 0, column: 0 }, 1, ways))).toEqual(['bbb', 'bbb']);
  });
});
