import { KNOT_KINDS } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Area, areaInWords, clipped, isIn, wholeOf } from '../../src/draw/edit/area.js';
import { deleted, duplicated, inserted } from '../../src/draw/edit/lines-of-knots.js';
import { mirrored } from '../../src/draw/edit/mirror.js';
import { emptied, moved, pasted, pastedWithRoom, patchOf } from '../../src/draw/edit/patch.js';
import { repeatedDrawing } from '../../src/draw/edit/repeat.js';
import { type Anchor, resized } from '../../src/draw/edit/resize.js';
import { anyChart, below, drawn, rowsOf, seed, shownIn } from './charts.js';

const seeds = fc.array(seed, { minLength: 6, maxLength: 6 });

function someArea(size: { rows: number; columns: number }, [a, b, c, d]: readonly number[]): Area {
  const row = below(a as number, size.rows);
  const column = below(b as number, size.columns);
  return {
    row,
    column,
    rows: 1 + below(c as number, size.rows - row),
    columns: 1 + below(d as number, size.columns - column),
  };
}

describe('mirroring', () => {
  test('twice is nothing, and half a turn is both ways one after the other', () => {
    fc.assert(
      fc.property(anyChart(), seeds, (chart, numbers) => {
        const area = someArea(chart, numbers);
        for (const way of ['sides', 'ends', 'turn'] as const) {
          expect(mirrored(mirrored(chart, way, area), way, area).cells).toEqual(chart.cells);
        }
        expect(mirrored(mirrored(chart, 'sides', area), 'ends', area).cells).toEqual(
          mirrored(chart, 'turn', area).cells,
        );
      }),
    );
  });

  test('half a turn of the whole is its cells from the last to the first', () => {
    fc.assert(
      fc.property(anyChart(), (chart) => {
        expect(mirrored(chart, 'turn').cells).toEqual(chart.cells.slice().reverse());
      }),
    );
  });

  test('leaves what is not in the area', () => {
    const chart = drawn('bo.r', 'ro.b');
    const area = { row: 0, column: 0, rows: 2, columns: 2 };
    expect(rowsOf(mirrored(chart, 'sides', area))).toEqual(['ob.r', 'or.b']);
    expect(rowsOf(mirrored(chart, 'ends', area))).toEqual(['ro.r', 'bo.b']);
    expect(rowsOf(mirrored(chart, 'turn', area))).toEqual(['or.r', 'ob.b']);
  });

  test('an area over the side is refused', () => {
    expect(() =>
      mirrored(drawn('bo'), 'sides', { row: 0, column: 1, rows: 1, columns: 2 }),
    ).toThrow('goes over the side');
  });
});

describe('copying, pasting, moving', () => {
  test('what is pasted where it was copied changes nothing', () => {
    fc.assert(
      fc.property(anyChart(), seeds, (chart, numbers) => {
        const area = someArea(chart, numbers);
        expect(pasted(chart, patchOf(chart, area), area)).toBe(chart);
        const cut = emptied(chart, area, 0);
        expect(pasted(cut, patchOf(chart, area), area).cells).toEqual(chart.cells);
      }),
    );
  });

  test('moving takes the drawing along, leaves the ground, and loses what goes over the side', () => {
    fc.assert(
      fc.property(anyChart(), seeds, (chart, numbers) => {
        const area = someArea(chart, numbers);
        const to = {
          row: below(numbers[4] as number, chart.rows + 4) - 2,
          column: below(numbers[5] as number, chart.columns + 4) - 2,
        };
        const after = moved(chart, area, to, 0);
        const landed = clipped({ ...area, ...to }, chart);
        for (let row = 0; row < chart.rows; row++) {
          for (let column = 0; column < chart.columns; column++) {
            const at = row * chart.columns + column;
            const from =
              (row - to.row + area.row) * chart.columns + column - to.column + area.column;
            const wanted =
              landed !== null && isIn(landed, { row, column })
                ? chart.cells[from]
                : isIn(area, { row, column })
                  ? 0
                  : chart.cells[at];
            expect(after.cells[at]).toBe(wanted);
          }
        }
      }),
    );
  });

  test('with room made, all of a patch is there and nothing else is lost', () => {
    fc.assert(
      fc.property(anyChart(), anyChart({ colours: 1 }), seeds, (chart, other, numbers) => {
        const patch = patchOf(other, wholeOf(other));
        const at = {
          row: below(numbers[0] as number, chart.rows),
          column: below(numbers[1] as number, chart.columns),
        };
        const after = pastedWithRoom(chart, patch, at, 0);
        const area = { ...at, rows: patch.rows, columns: patch.columns };
        expect(shownIn({ ...other, ...patchOf(after, area) })).toEqual(shownIn(other));
        for (let cell = 0; cell < chart.cells.length; cell++) {
          const place = { row: Math.floor(cell / chart.columns), column: cell % chart.columns };
          if (isIn(area, place)) continue;
          expect(after.cells[place.row * after.columns + place.column]).toBe(chart.cells[cell]);
        }
        expect(after.rows).toBe(Math.max(chart.rows, at.row + patch.rows));
      }),
    );
  });

  test('moving all the way out and back is not a move', () => {
    const chart = drawn('bo', 'r.');
    expect(moved(chart, wholeOf(chart), { row: 0, column: 0 }, 0)).toBe(chart);
    expect(rowsOf(moved(chart, wholeOf(chart), { row: 9, column: 9 }, 0))).toEqual(['..', '..']);
  });

  test('colours come along to another chart by their value, under a key that is free', () => {
    const patch = patchOf(drawn('bo'), { row: 0, column: 0, rows: 1, columns: 2 });
    const other = {
      ...drawn('..'),
      colours: [
        { key: 'o', hex: '#1f6fb2', name: 'sky' },
        { key: 'b', hex: '#000000', name: '' },
      ],
    };
    const after = pasted(other, patch, { row: 0, column: 0 });
    expect(shownIn(after)).toEqual(['#1f6fb2', '#d9642a']);
    expect(after.colours).toEqual([
      ...other.colours,
      { key: 'a', hex: '#d9642a', name: 'buoy orange' },
    ]);
  });

  test('colours that a chart has no room for are refused', () => {
    const full = {
      ...drawn('..'),
      colours: Array.from({ length: 64 }, (_, i) => ({
        key: String.fromCodePoint(0x100 + i),
        hex: `#0000${(i + 16).toString(16)}`,
        name: '',
      })),
    };
    const patch = patchOf(drawn('.o'), { row: 0, column: 1, rows: 1, columns: 1 });
    expect(() => pasted(full, patch, { row: 0, column: 0 })).toThrow('buoy orange');
  });
});

describe('rows and columns', () => {
  const across = fc.constantFrom('rows' as const, 'columns' as const);

  test('what is put in and taken out again leaves the chart as it was', () => {
    fc.assert(
      fc.property(anyChart(), across, seeds, (chart, way, numbers) => {
        const at = below(numbers[0] as number, chart[way] + 1);
        const many = 1 + below(numbers[1] as number, 4);
        const more = inserted(chart, way, at, many, 0);
        expect(more[way]).toBe(chart[way] + many);
        expect(deleted(more, way, at, many)).toEqual(chart);
      }),
    );
  });

  test('lines that are doubled stand right behind themselves', () => {
    fc.assert(
      fc.property(anyChart(), across, seeds, (chart, way, numbers) => {
        const at = below(numbers[0] as number, chart[way]);
        const many = 1 + below(numbers[1] as number, chart[way] - at);
        const more = duplicated(chart, way, at, many);
        expect(deleted(more, way, at, many)).toEqual(chart);
        expect(deleted(more, way, at + many, many)).toEqual(chart);
      }),
    );
  });

  test('columns are to rows as the chart laid on its side', () => {
    const chart = drawn('bo.', 'r.b');
    expect(rowsOf(inserted(chart, 'columns', 1, 1, 3))).toEqual(['bro.', 'rr.b']);
    expect(rowsOf(duplicated(chart, 'columns', 1, 2))).toEqual(['bo.o.', 'r.b.b']);
    expect(rowsOf(deleted(chart, 'columns', 0, 2))).toEqual(['.', 'b']);
    expect(rowsOf(inserted(chart, 'rows', 2, 1, 2))).toEqual(['bo.', 'r.b', 'ooo']);
  });

  test('a chart keeps a line and has no more than it can', () => {
    const chart = drawn('bo', '..');
    expect(() => deleted(chart, 'rows', 0, 2)).toThrow('row 1: No rows would be left.');
    expect(() => inserted(chart, 'columns', 0, 299, 0)).toThrow('column 301');
    expect(() => inserted(chart, 'rows', 0, 9_999, 0)).toThrow('row 10001');
    expect(() => deleted(chart, 'rows', 2, 1)).toThrow('row 3: There is no row 3.');
    expect(() => duplicated(chart, 'rows', Number.NaN, 1)).toThrow('There is no row');
  });

  test('knot kinds worked out by hand go when they no longer fit', () => {
    const chart = { ...drawn('bo', '..'), knots: new Uint8Array(4).fill(KNOT_KINDS.length - 1) };
    expect(mirrored(chart, 'sides').knots).toBe(chart.knots);
    expect(inserted(chart, 'rows', 0, 1, 0)).not.toHaveProperty('knots');
  });
});

describe('another size', () => {
  test('what is kept is where its anchor holds it', () => {
    const chart = drawn('bo', 'r.');
    const size = { rows: 4, columns: 3 };
    const end: Anchor = { down: 'bottom', across: 'right' };
    const middle: Anchor = { down: 'middle', across: 'middle' };
    expect(rowsOf(resized(chart, size, 3))).toEqual(['bor', 'r.r', 'rrr', 'rrr']);
    expect(rowsOf(resized(chart, size, 3, end))).toEqual(['rrr', 'rrr', 'rbo', 'rr.']);
    expect(rowsOf(resized(chart, size, 3, middle))).toEqual(['rrr', 'bor', 'r.r', 'rrr']);
    expect(rowsOf(resized(chart, { rows: 1, columns: 1 }, 0, end))).toEqual(['.']);
  });

  test('larger and back again is nothing', () => {
    fc.assert(
      fc.property(
        anyChart(),
        fc.constantFrom('top', 'middle', 'bottom'),
        fc.constantFrom('left', 'middle', 'right'),
        seeds,
        (chart, down, across, numbers) => {
          const anchor = { down, across } as Anchor;
          const size = {
            rows: chart.rows + below(numbers[0] as number, 5),
            columns: chart.columns + below(numbers[1] as number, 5),
          };
          expect(resized(resized(chart, size, 0, anchor), chart, 0, anchor)).toEqual(chart);
        },
      ),
    );
  });

  test('a size that no chart can have is refused', () => {
    for (const size of [
      { rows: 0, columns: 1 },
      { rows: 1, columns: 301 },
      { rows: 10_001, columns: 1 },
      { rows: 1.5, columns: 1 },
      { rows: Number.NaN, columns: 1 },
    ]) {
      expect(() => resized(drawn('b'), size, 0)).toThrow(/Keep to 1 to/);
    }
  });
});

describe('repeating', () => {
  test('every knot is that of the drawing, as often as asked', () => {
    fc.assert(
      fc.property(anyChart(), seeds, (chart, numbers) => {
        const down = 1 + below(numbers[0] as number, 4);
        const across = 1 + below(numbers[1] as number, 3);
        const more = repeatedDrawing(chart, down, across);
        expect([more.rows, more.columns]).toEqual([chart.rows * down, chart.columns * across]);
        more.cells.forEach((cell, at) => {
          const row = Math.floor(at / more.columns) % chart.rows;
          const column = (at % more.columns) % chart.columns;
          expect(cell).toBe(chart.cells[row * chart.columns + column]);
        });
      }),
    );
  });

  test('once is nothing; too often is refused', () => {
    const chart = drawn('bo', '..');
    expect(repeatedDrawing(chart, 1)).toBe(chart);
    expect(() => repeatedDrawing(chart, 5_001)).toThrow('10,002 rows');
    expect(() => repeatedDrawing(chart, 0)).toThrow('whole number');
  });
});

test('areas are said in words', () => {
  expect(areaInWords({ row: 2, column: 1, rows: 5, columns: 4 })).toBe(
    'rows 3 to 7, columns 2 to 5',
  );
  expect(areaInWords({ row: 0, column: 0, rows: 1, columns: 1 })).toBe('row 1, column 1');
});
