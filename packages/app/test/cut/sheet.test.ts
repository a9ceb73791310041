import type { Chart } from '@halfhitch/core';
import { cutList, tightMeasures } from '@halfhitch/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { USUAL_SETTINGS } from '../../src/cut/settings.js';
import { runsOf, sheetOf } from '../../src/cut/sheet.js';
import { workOut } from '../../src/cut/work-out.js';

const measures = tightMeasures('straight');

function chartOf(rows: number, columns: number, colour: (cell: number) => number): Chart {
  return {
    name: 'Heron',
    rows,
    columns,
    colours: [
      { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
      { key: 'o', hex: '#d9642a', name: '' },
    ],
    cells: Uint8Array.from({ length: rows * columns }, (_, cell) => colour(cell)),
  };
}

describe('the sheet of a cut list', () => {
  it('says every string once, and lengths add up to those of the list', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 7 }),
        fc.constantFrom(800, 1_500, 5_000),
        (rows, columns, every, workable) => {
          const chart = chartOf(rows, columns, (cell) => (cell % every === 0 ? 1 : 0));
          const list = cutList(chart, measures, { workable });
          const sheet = sheetOf(list);
          const counted = sheet.lines.reduce((sum, line) => sum + line.count, 0);
          expect(counted).toBe(list.pieces.length);
          const length = sheet.lines.reduce((sum, line) => sum + line.count * line.length.mm, 0);
          const whole = list.pieces.reduce((sum, piece) => sum + piece.length.mm, 0);
          expect(length).toBeCloseTo(whole, 6);
          for (const total of sheet.totals) {
            expect(total.mostPutUps).toBeGreaterThanOrEqual(total.putUps);
          }
        },
      ),
    );
  });

  it('lists base strings that are alike in one line', () => {
    const { lines } = sheetOf(
      cutList(
        chartOf(4, 6, () => 0),
        measures,
      ),
    );
    expect(lines.map(({ strings, count, role }) => [strings, count, role])).toEqual([
      ['B1 to B6', 6, 'base'],
      ['L1', 1, 'lead'],
    ]);
    expect(lines[0]?.knots).toBe(4);
    expect(lines[1]?.knots).toBe(24);
  });

  it('lists no more than a person reads, and counts all', () => {
    const list = cutList(
      chartOf(600, 20, () => 0),
      measures,
      { workable: 700, tails: 50 },
    );
    expect(list.pieces.length).toBeGreaterThan(250);
    const sheet = sheetOf(list);
    expect(sheet.lines).toHaveLength(200);
    expect(sheet.lineCount).toBe(list.pieces.length - 19);
    expect(sheet.joined).toBe(true);
  });

  it.each([
    [['B1', 'B2', 'B3', 'B4'], 'B1 to B4'],
    [['B1', 'B2', 'B4'], 'B1, B2, B4'],
    [['B9', 'B10', 'B11', 'L12'], 'B9 to B11, L12'],
    [['L1'], 'L1'],
    [['x', 'y'], 'x, y'],
  ])('%j in short: %s', (names, short) => {
    expect(runsOf(names)).toBe(short);
  });
});

describe('working a cut list out', () => {
  const chart = chartOf(6, 8, (cell) => cell % 2);
  const choice = { edge: 'straight', start: 'left' } as const;
  const settled = (change: object) =>
    workOut({ chart, choice, settings: { ...USUAL_SETTINGS, ...change } });

  it('gives what the list gives, for the edges that are chosen', () => {
    for (const edge of ['straight', 'wrapped'] as const) {
      const outcome = workOut({
        chart,
        choice: { edge, start: 'right' },
        settings: USUAL_SETTINGS,
      });
      const list = cutList(chart, tightMeasures(edge), { edge, start: 'right' });
      expect(outcome).toMatchObject({ sheet: sheetOf(list) });
    }
  });

  it.each([
    ['workable', { workable: '0.3' }],
    ['putUp', { span: 'length', length: '1500', putUp: '0.5' }],
    ['length', { span: 'length', length: '20000', thread: 'diameter', diameter: '0.05' }],
  ])('puts a mistake between several fields to %s', (field, change) => {
    const outcome = settled(change);
    expect(Object.keys('errors' in outcome ? outcome.errors : {})).toEqual([field]);
  });
});
