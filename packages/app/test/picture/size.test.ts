import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Crop,
  columnsForRows,
  fitCrop,
  rowsForColumns,
  sizeForColumns,
  stretch,
} from '../../src/picture/size.js';

const crop = (width: number, height: number): Crop => ({ left: 0, top: 0, width, height });

describe('size in knots', () => {
  it('counts with knots that are higher than wide', () => {
    // A square of 40 columns; knots 3/4 as wide as high.
    expect(rowsForColumns(crop(900, 900), 40, 3 / 4)).toBe(30);
    expect(columnsForRows(crop(900, 900), 30, 3 / 4)).toBe(40);
    expect(stretch(crop(900, 900), { columns: 40, rows: 30 }, 3 / 4)).toBeCloseTo(1, 12);
  });

  it('keeps proportions within half a row, for every picture and knot', () => {
    const side = fc.integer({ min: 1, max: 5000 });
    fc.assert(
      fc.property(
        side,
        side,
        fc.integer({ min: 1, max: 300 }),
        fc.double({ min: 0.5, max: 2, noNaN: true }),
        (width, height, columns, aspect) => {
          const rows = rowsForColumns(crop(width, height), columns, aspect);
          const exact = ((columns * height) / width) * aspect;
          if (exact >= 1 && exact <= 10_000)
            expect(Math.abs(rows - exact)).toBeLessThanOrEqual(0.5);
          expect(rows).toBeGreaterThanOrEqual(1);
          expect(rows).toBeLessThanOrEqual(10_000);
        },
      ),
    );
  });

  it('gives up columns where the rows would be too many', () => {
    const { columns, rows } = sizeForColumns(crop(10, 4000), 300, 1);
    expect(rows).toBe(10_000);
    expect(columns).toBe(25);
  });
});

describe('a crop', () => {
  it('ends up inside the picture, whatever is wished', () => {
    const any = fc.double({ min: -1e5, max: 1e5, noNaN: true });
    const side = fc.integer({ min: 1, max: 5000 });
    fc.assert(
      fc.property(
        fc.record({ left: any, top: any, width: any, height: any }),
        fc.record({ width: side, height: side }),
        (wanted, picture) => {
          const { left, top, width, height } = fitCrop(wanted, picture);
          for (const figure of [left, top, width, height]) {
            expect(Number.isInteger(figure)).toBe(true);
          }
          expect(left).toBeGreaterThanOrEqual(0);
          expect(top).toBeGreaterThanOrEqual(0);
          expect(width).toBeGreaterThanOrEqual(1);
          expect(height).toBeGreaterThanOrEqual(1);
          expect(left + width).toBeLessThanOrEqual(picture.width);
          expect(top + height).toBeLessThanOrEqual(picture.height);
        },
      ),
    );
  });

  it('that fits stays as it is', () => {
    const wanted = { left: 3, top: 4, width: 50, height: 6 };
    expect(fitCrop(wanted, { width: 53, height: 10 })).toEqual(wanted);
  });
});
