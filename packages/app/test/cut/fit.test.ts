import { readTextChart } from '@halfhitch/core';
import { cutList, Lengths, tightMeasures, WRIST_SIZES } from '@halfhitch/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differenceInWords, fitInWords, swatchMeaning } from '../../src/cut/fit-words.js';
import type { CutAnswer } from '../../src/cut/messages.js';
import { type CutSettings, USUAL_SETTINGS } from '../../src/cut/settings.js';
import { shoppingLines, shoppingText } from '../../src/cut/shopping.js';
import { workOut } from '../../src/cut/work-out.js';

const { chart } = readTextChart(
  'name Kittiwake\nb #1f6fb2 lake blue\no #d9642a buoy orange\n\nbbbbbb\nboobob\nbbbbbb\nbbobbb\n',
);
const CHOICE = { edge: 'straight', start: 'left' } as const;

function answer(change: Partial<CutSettings> = {}): CutAnswer {
  const outcome = workOut({ chart, choice: CHOICE, settings: { ...USUAL_SETTINGS, ...change } });
  if ('errors' in outcome) throw new Error(JSON.stringify(outcome.errors));
  return outcome;
}

const anyClosing = fc.record({
  closing: fc.constantFrom<CutSettings['closing']>('meet', 'ties', 'loop', 'buckle', 'bead'),
  gap: fc.integer({ min: 0, max: 30 }).map(String),
  plait: fc.integer({ min: 0, max: 200 }).map(String),
  loop: fc.integer({ min: 3, max: 30 }).map(String),
  buckle: fc.integer({ min: 0, max: 20 }).map(String),
  turnOver: fc.integer({ min: 3, max: 30 }).map(String),
  overlap: fc.integer({ min: 0, max: 60 }).map(String),
  ease: fc.integer({ min: 0, max: 30 }).map(String),
});

describe('a piece for a wrist', () => {
  it('goes round it to within half a row, however it is closed', () => {
    fc.assert(
      fc.property(anyClosing, fc.integer({ min: 100, max: 220 }), (closing, wrist) => {
        const { fit, sheet } = answer({ ...closing, span: 'wrist', wrist: String(wrist) });
        const row = sheet.size.length / sheet.rows;
        expect(Math.abs((fit.goesRound ?? 0) - wrist)).toBeLessThanOrEqual(row / 2 + 1e-6);
      }),
      { numRuns: 40 },
    );
  });

  it('has tails at least as long as asked for and as the closing needs', () => {
    fc.assert(
      fc.property(anyClosing, fc.integer({ min: 0, max: 300 }), (closing, tails) => {
        const { fit, sheet } = answer({ ...closing, tails: String(tails) });
        expect(fit.tails).toBeGreaterThanOrEqual(tails);
        expect(fit.tails).toBeGreaterThanOrEqual(fit.tailsNeeded.first);
        expect(fit.tails).toBeGreaterThanOrEqual(fit.tailsNeeded.last);
        for (const { parts } of sheet.lines) expect(parts.tails).toBeCloseTo(2 * fit.tails, 6);
      }),
      { numRuns: 40 },
    );
  });

  it('that is left open is just what the cut list makes for that wrist', () => {
    const { sheet } = answer({ span: 'wrist', wrist: '170' });
    const list = cutList(chart, tightMeasures('straight'), { wrist: 170 });
    expect(sheet.rows).toBe(list.rows);
    expect(sheet.totals.map(({ length }) => length)).toEqual(
      list.totals.map(({ length }) => length),
    );
  });

  it('has rows for every size, more for a larger wrist, those of the list for the chosen one', () => {
    const { sizes, sheet } = answer({ span: 'wrist', wrist: '155', closing: 'ties' });
    expect(sizes).toHaveLength(WRIST_SIZES.length);
    const ordered = [...sizes].sort((one, other) => one.wrist - other.wrist);
    for (const [i, size] of ordered.entries()) {
      expect(size.rows).toBeGreaterThanOrEqual(ordered[i - 1]?.rows ?? 0);
    }
    const chosen = sizes.filter((size) => size.chosen);
    expect(chosen.map(({ who, rows }) => [who, rows])).toEqual([['Woman, medium', sheet.rows]]);
  });

  it('is told of in words: what closes it, and a buckle that is too narrow', () => {
    const told = (change: Partial<CutSettings>): string => {
      const { fit, sheet } = answer(change);
      return fitInWords(fit, sheet).join(' ');
    };
    expect(told({})).toMatch(/too short to go round a wrist/);
    const sample = told({ span: 'length', length: '60' });
    expect(sample).toMatch(/knotted part is \d+ mm ± \d+ long: too short to go round a wrist/);
    expect(sample).not.toMatch(/goes round a wrist of/);
    expect(told({ span: 'wrist', closing: 'ties' })).toMatch(
      /goes round a wrist of \d+ mm ± \d+, with 10 mm of ease.*fill 10 mm.*tails of 130 mm/,
    );
    expect(told({ span: 'wrist', closing: 'loop', loop: '9' })).toMatch(/loop 9 mm long/);
    const buckled = { span: 'wrist', closing: 'buckle' } as const;
    expect(told({ ...buckled, buckleWidth: '40' })).toMatch(/which is \d+ rows, over the bar/);
    expect(told({ ...buckled, buckleWidth: '40' })).not.toMatch(/go through\./);
    expect(told({ ...buckled, buckleWidth: '3' })).toMatch(/will not go through/);
    const { width } = answer(buckled).sheet.size;
    expect(told({ ...buckled, buckleWidth: width.toFixed(2).replace(/\d$/, '9') })).toMatch(
      /may not go through/,
    );
  });

  it('says which field is at fault when the closing takes up all', () => {
    const settings = {
      ...USUAL_SETTINGS,
      span: 'wrist',
      wrist: '80',
      closing: 'ties',
      gap: '100',
      ease: '0',
    } as const;
    const outcome = workOut({ chart, choice: CHOICE, settings });
    expect(outcome).toMatchObject({ errors: { gap: expect.stringMatching(/all the way round/) } });
  });
});

describe('what to buy', () => {
  it('has a line for each colour, with its put-ups and metres, and what the closing needs', () => {
    const { sheet, fit } = answer({ closing: 'buckle', buckleWidth: '16' });
    const lines = shoppingLines(sheet, fit.closing, fit.buckleWidth);
    expect(lines).toHaveLength(sheet.totals.length + 2);
    for (const [i, total] of sheet.totals.entries()) {
      const metres = (total.length.mm / 1_000).toFixed(2);
      expect(lines[i]).toContain(`${total.putUps} put-up of 8.0 m (${metres} m ±`);
    }
    expect(lines.join('\n')).toMatch(/Lake blue, for the leads.*Buoy orange/s);
    expect(lines.at(-2)).toContain('up to 16 mm wide');
    expect(shoppingText('Kittiwake', lines)).toMatch(/^To buy for Kittiwake\n- Base strings/);
    expect(shoppingText('', ['x'])).toBe('To buy\n- x');
  });
});

describe('a swatch of the maker’s own', () => {
  const lengths = new Lengths(tightMeasures('straight'), answer().sheet.thread.diameter);
  const swatchOf = (wider: number, longer: number): CutAnswer =>
    answer({
      swatchRows: '20',
      swatchColumns: '12',
      swatchWidth: (wider * (12 * lengths.pitch + lengths.edges)).toFixed(1),
      swatchLength: (longer * 20 * lengths.rowHeight).toFixed(1),
    });

  it.each([
    [1, 1, /as near as can be expected/],
    [1.4, 1.4, /thread is thicker/],
    [0.7, 0.7, /thread is finer/],
    [1, 1.4, /longer for its width/],
    [1.4, 1, /wider for its length/],
  ])('%s times as wide and %s as long: %s', (wider, longer, meaning) => {
    const { swatch } = swatchOf(wider, longer);
    if (swatch === null) throw new Error('There is no comparison.');
    expect(swatch.width.difference).toBeCloseTo(wider - 1, 1);
    expect(swatch.length.difference).toBeCloseTo(longer - 1, 1);
    expect(swatchMeaning(swatch)).toMatch(meaning);
    const words = differenceInWords(swatch.width);
    if (wider !== 1)
      expect(words).toMatch(wider > 1 ? /^(39|40)\.\d % more$/ : /^(29|30)\.\d % less$/);
  });

  it('is compared with the thread as it is given, not with itself', () => {
    expect(answer().swatch).toBeNull();
    const { swatch, sheet } = swatchOf(1.4, 1.4);
    expect(swatch?.width.predicted).toBeCloseTo(12 * lengths.pitch + lengths.edges, 6);
    expect(sheet.calibration?.diameter).toBeCloseTo(1.4 * sheet.thread.diameter, 1);
  });
});
