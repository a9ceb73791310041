import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CutList, type CutOptions, cutList } from '../../src/thread/cut-list.js';
import type { KnotMeasures } from '../../src/thread/measures.js';
import { drawn } from '../support/charts.js';

/** Round figures, so that sums can be checked by hand. */
const MEASURES: KnotMeasures = {
  tying: { forward: 16, backward: 16, 'forward-backward': 15, 'backward-forward': 15 },
  link: 1,
  turn: { inside: 2, outside: 4 },
  pitch: 3,
  rowHeight: 2.5,
  thickness: 3,
  held: 2.75,
};

const PLAIN: CutOptions = { thread: { diameter: 1 }, tails: 100, margin: 0 };

const stripes = drawn('aaaaa', 'aabba', 'bbbbb', 'aaaab', 'bbaaa', 'aaaaa');

const letters = fc.constantFrom('a', 'b', 'c');
const anyDrawing = fc
  .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 12 }))
  .chain(([columns, rows]) =>
    fc.array(
      fc.array(letters, { minLength: columns, maxLength: columns }).map((row) => row.join('')),
      { minLength: rows, maxLength: rows },
    ),
  )
  .map((rows) => drawn(...rows));

const whole = (list: CutList): number =>
  list.pieces.reduce((sum, piece) => sum + piece.length.mm, 0);

describe('cut list', () => {
  it('adds up by hand for one row of one colour', () => {
    const list = cutList(drawn('aaaa'), MEASURES, PLAIN);
    const lead = list.pieces.find((piece) => piece.role === 'lead');
    expect(lead?.parts).toEqual({
      knots: 15 + 16 + 16 + 15,
      // Three links, and the way into the first knot counted as that of a turn is not taken.
      travel: 3,
      floats: 0,
      hanging: 0,
      tails: 200,
      margin: 0,
    });
    expect(list.pieces.filter((piece) => piece.role === 'base')).toHaveLength(4);
    expect(list.pieces[0]?.length.mm).toBeCloseTo(2.75 + 200, 9);
    expect(list.size).toMatchObject({ width: 12, length: 2.5 });
  });

  it('counts a float over the rows and knots it spans', () => {
    const list = cutList(drawn('aabbb', 'bbbbb', 'bbbba'), MEASURES, PLAIN);
    const lead = list.pieces.find((piece) => piece.string === 'L1');
    // From row 1, column 3, where it lies through a knot, to row 3, column 5.
    expect(lead?.parts.floats).toBeCloseTo(Math.hypot(2 * 2.5, 2 * 3), 9);
  });

  it('gives nothing less than the sum of its parts, and rounds what to cut up', () => {
    fc.assert(
      fc.property(
        anyDrawing,
        fc.integer({ min: 0, max: 300 }),
        fc.integer({ min: 0, max: 50 }),
        (chart, tails, margin) => {
          const list = cutList(chart, MEASURES, { thread: { diameter: 0.6 }, tails, margin });
          for (const piece of list.pieces) {
            const sum = Object.values(piece.parts).reduce((a, b) => a + b, 0);
            expect(piece.length.mm).toBeGreaterThanOrEqual(sum - 1e-9);
            expect(piece.cut).toBeGreaterThanOrEqual(piece.length.mm);
            expect(piece.length.plusMinus).toBeGreaterThan(0);
          }
          const tied = list.pieces.reduce((sum, piece) => sum + piece.knotsTied, 0);
          const held = list.pieces.reduce((sum, piece) => sum + piece.knotsHeld, 0);
          expect(tied).toBe(chart.rows * chart.columns);
          expect(held).toBe(tied);
          const totals = list.totals.reduce((sum, total) => sum + total.length.mm, 0);
          expect(totals).toBeCloseTo(whole(list), 6);
        },
      ),
    );
  });

  it('doubles every length with the diameter', () => {
    fc.assert(
      fc.property(anyDrawing, fc.double({ min: 0.2, max: 1, noNaN: true }), (chart, diameter) => {
        const options = { tails: 0, margin: 0, workable: 100_000, putUp: 1_000_000 };
        const once = cutList(chart, MEASURES, { ...options, thread: { diameter } });
        const twice = cutList(chart, MEASURES, { ...options, thread: { diameter: 2 * diameter } });
        once.pieces.forEach((piece, i) => {
          expect(twice.pieces[i]?.length.mm).toBeCloseTo(2 * piece.length.mm, 6);
        });
      }),
    );
  });

  it('takes as much for rows together as for rows apart, but for what lies between', () => {
    const lead = (rows: number): number => {
      const list = cutList(drawn(...Array<string>(rows).fill('aaaaaa')), MEASURES, {
        ...PLAIN,
        tails: 0,
      });
      return list.pieces.find((piece) => piece.role === 'lead')?.length.mm ?? 0;
    };
    // Each further row adds the same: its knots, its links and one turn.
    const row = 4 * 16 + 2 * 15 + 5 * 1;
    expect(lead(1)).toBeCloseTo(row, 9);
    for (const rows of [2, 3, 10]) expect(lead(rows)).toBeCloseTo(rows * row + (rows - 1) * 2, 6);
  });

  it('joins a lead that would be too long to work with, away from the edges', () => {
    const long = drawn(...Array<string>(60).fill('aaaaaaaa'));
    const list = cutList(long, MEASURES, { ...PLAIN, workable: 1_500 });
    const leads = list.pieces.filter((piece) => piece.role === 'lead');
    expect(leads.length).toBeGreaterThan(3);
    for (const lead of leads) expect(lead.length.mm).toBeLessThanOrEqual(1_500);
    for (const { column } of list.joins) {
      expect(column).toBeGreaterThanOrEqual(2);
      expect(column).toBeLessThanOrEqual(5);
    }
    expect(leads.map((lead) => lead.joinedInRow)).toEqual([
      null,
      ...list.joins.map(({ row }) => row + 1),
    ]);
    // Nothing is knotted twice or left out for the joins.
    expect(leads.reduce((sum, lead) => sum + lead.knotsTied, 0)).toBe(480);
  });

  it('keeps every piece workable, whatever is drawn', () => {
    fc.assert(
      fc.property(anyDrawing, fc.integer({ min: 500, max: 2_000 }), (chart, workable) => {
        const list = cutList(chart, MEASURES, { ...PLAIN, tails: 50, margin: 10, workable });
        for (const piece of list.pieces) {
          if (piece.role === 'lead') expect(piece.length.mm).toBeLessThanOrEqual(workable);
        }
      }),
    );
  });

  it('repeats the chart to a length or for a wrist', () => {
    const list = cutList(stripes, MEASURES, { ...PLAIN, length: 40 });
    expect(list.rows).toBe(16);
    const wrist = cutList(stripes, MEASURES, { ...PLAIN, wrist: 160 });
    expect(wrist.size.length).toBeGreaterThan(160);
    expect(wrist.size.length).toBeLessThan(190);
  });

  it('fits a swatch and says what it leaves unexplained', () => {
    const list = cutList(stripes, MEASURES, {
      ...PLAIN,
      swatch: { rows: 10, columns: 10, width: 33, length: 24 },
    });
    // By hand: 33/30 = 1.1 and 24/25 = 0.96 mm; their mean is the root of 1.056.
    expect(list.calibration?.diameter).toBeCloseTo(Math.sqrt(1.056), 9);
    expect(list.size.width).toBeCloseTo(5 * 3.3, 9);
    expect(list.size.length).toBeCloseTo(6 * 2.4, 9);
    expect(list.calibration?.residual.width).toBeCloseTo(1 - Math.sqrt(1.056) / 1.1, 9);
    expect(list.calibration?.residual.length).toBeCloseTo(1 - Math.sqrt(1.056) / 0.96, 9);
    expect(list.uncertainty).toBeLessThan(cutList(stripes, MEASURES, PLAIN).uncertainty);
  });

  it.each<[CutOptions, RegExp]>([
    [{ tails: -1 }, /tails is -1 mm.*from 0 to 2000/],
    [{ margin: 1_000 }, /margin/],
    [{ workable: Number.NaN }, /workable is NaN/],
    [{ workable: 200 }, /no room for knots/],
    [{ length: 0 }, /above 0/],
    [{ length: 10, wrist: 150 }, /Both a length and a wrist/],
    [{ wrist: 20 }, /wrist of 20 mm/],
    [{ length: 20_000, thread: { diameter: 0.05 } }, /at most 10000 rows/],
    [{ swatch: { rows: 0, columns: 2, width: 3, length: 4 } }, /0 rows/],
    [{ swatch: { rows: 3, columns: 2, width: 0, length: 4 } }, /width of 0 mm/],
    [{ putUp: 1_000, workable: 3_000, wrist: 300, thread: { diameter: 2 } }, /put-up holds 1000/],
  ])('refuses %j', (options, message) => {
    expect(() => cutList(stripes, MEASURES, options)).toThrow(message);
  });
});
