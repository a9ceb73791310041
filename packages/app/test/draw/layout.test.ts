import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  CELL_HEIGHTS,
  isNumbered,
  numberEvery,
  SheetLayout,
  withinZoom,
} from '../../src/draw/sheet/layout.js';

const wish = fc.record({
  rows: fc.integer({ min: 1, max: 10_000 }),
  columns: fc.integer({ min: 1, max: 300 }),
  aspect: fc.double({ min: 0.3, max: 3, noNaN: true }),
  cellHeight: fc.option(fc.double({ min: 3, max: 72, noNaN: true })),
  repeated: fc.integer({ min: 0, max: 40 }),
  view: fc.record({
    width: fc.integer({ min: 200, max: 2_000 }),
    height: fc.integer({ min: 200, max: 1_500 }),
  }),
});

describe('the layout of a sheet', () => {
  test('knots are as wide by their height as they come out, and a point in one finds it', () => {
    fc.assert(
      fc.property(
        wish,
        fc.nat(),
        fc.nat(),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (given, r, c, part) => {
          const layout = new SheetLayout(given);
          const place = { row: r % given.rows, column: c % given.columns };
          const { x, y, width, height } = layout.boxOf(place);
          expect(width / height).toBeCloseTo(given.aspect, 9);
          expect(layout.placeAt(x + part * width, y + part * height)).toEqual(place);
          expect(x).toBeGreaterThanOrEqual(layout.gutter - 0.001);
          expect(x + width).toBeLessThanOrEqual(layout.width - layout.gutter + 0.001);
          expect(y + height).toBeLessThanOrEqual(layout.height);
        },
      ),
    );
  });

  test('a stretch of the sheet shows every row and column that is in it, and few more', () => {
    fc.assert(
      fc.property(wish, fc.nat(), (given, at) => {
        const layout = new SheetLayout(given);
        const from = at % layout.height;
        const { first, end } = layout.rowsIn(from, from + given.view.height);
        const seen = (row: number): boolean => {
          const { y, height } = layout.boxOf({ row, column: 0 });
          // Sums of px are rounded: what is in sight by a millionth of one may be left out or not.
          return y + height > from + 1e-6 && y < from + given.view.height - 1e-6;
        };
        for (const row of [first - 1, end]) {
          const exists = row >= -given.repeated && row < given.rows + given.repeated;
          if (exists) expect(seen(row)).toBe(false);
        }
        expect(end - first).toBeLessThanOrEqual(given.view.height / layout.cellHeight + 2);
      }),
    );
  });

  test('all columns are in sight where that leaves knots to be met with a finger', () => {
    const view = { width: 336, height: 500 };
    const common = { rows: 100, aspect: 0.74, cellHeight: null, repeated: 0, view };
    const narrow = new SheetLayout({ ...common, columns: 14 });
    expect(narrow.width).toBe(view.width);
    const wide = new SheetLayout({ ...common, columns: 300 });
    expect(wide.cellHeight).toBe(18);
    expect(wide.width).toBeGreaterThan(view.width);
  });

  test('numbers keep their distance, and zooming its bounds', () => {
    fc.assert(
      fc.property(fc.double({ min: 3, max: 72, noNaN: true }), (size) => {
        expect(numberEvery(size, 15) * size).toBeGreaterThanOrEqual(15);
        for (const factor of [1.25, 0.8]) {
          const next = withinZoom(factor * size);
          expect(next).toBeGreaterThanOrEqual(CELL_HEIGHTS.least);
          expect(next).toBeLessThanOrEqual(CELL_HEIGHTS.most);
          expect(withinZoom(next)).toBe(next);
        }
      }),
    );
    expect([0, 1, 4, 5, 9].filter((line) => isNumbered(line, 5))).toEqual([0, 4, 9]);
  });
});
