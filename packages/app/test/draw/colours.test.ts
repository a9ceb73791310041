import { type Chart, InputError, printChartDocument, readChartDocument } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blankChart, FIRST_COLOURS } from '../../src/draw/edit/blank.js';
import {
  colourAdded,
  firstDrawn,
  knotsByColour,
  recoloured,
  relegended,
} from '../../src/draw/edit/colours.js';
import {
  withDeleted,
  withMerged,
  withMoved,
  withName,
  withReplaced,
} from '../../src/draw/edit/legend.js';
import { chartRenamed } from '../../src/draw/edit/names.js';
import { anyChart, below, drawn, rowsOf, seed, shownIn } from './charts.js';

function errorOf(act: () => unknown): InputError {
  try {
    act();
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return error as InputError;
  }
  throw new Error('It went through.');
}

const colourMoved = (chart: Chart, from: number, to: number): Chart =>
  relegended(chart, withMoved(chart.colours, from, to));
const colourRenamed = (chart: Chart, index: number, name: string): Chart =>
  relegended(chart, withName(chart.colours, index, name));
const colourDeleted = (chart: Chart, index: number): Chart =>
  relegended(chart, withDeleted(chart.colours, index, firstDrawn(chart, index)));

describe('the legend', () => {
  test('its order changes no knot', () => {
    fc.assert(
      fc.property(anyChart(), seed, seed, (chart, one, other) => {
        const from = below(one, chart.colours.length);
        const to = below(other, chart.colours.length);
        const after = colourMoved(chart, from, to);
        expect(shownIn(after)).toEqual(shownIn(chart));
        expect(after.colours[to]).toEqual(chart.colours[from]);
        expect(colourMoved(after, to, from)).toEqual(chart);
      }),
    );
  });

  test('merging leaves every other knot and one colour fewer', () => {
    fc.assert(
      fc.property(anyChart(), seed, seed, (chart, one, other) => {
        const from = below(one, chart.colours.length);
        const into = below(other, chart.colours.length);
        const hexes = chart.colours.map(({ hex }) => hex);
        const wanted = shownIn(chart).map((hex) => (hex === hexes[from] ? hexes[into] : hex));
        const after = relegended(chart, withMerged(chart.colours, from, into));
        expect(shownIn(after)).toEqual(wanted);
        expect(after.colours).toHaveLength(hexes.length - (from === into ? 0 : 1));
        expect(shownIn(relegended(chart, withReplaced(chart.colours, from, into)))).toEqual(wanted);
      }),
    );
  });

  test('counts sum to the knots', () => {
    fc.assert(
      fc.property(anyChart(), (chart) => {
        const many = knotsByColour(chart);
        expect(many.reduce((sum, some) => sum + some, 0)).toBe(chart.cells.length);
        many.forEach((some, index) => {
          expect(some).toBe(chart.cells.filter((cell) => cell === index).length);
        });
      }),
    );
  });

  test('a colour has a name, another shade, and goes when it is not drawn', () => {
    const chart = drawn('b.', '.o');
    expect(colourRenamed(chart, 1, '  tarn blue ').colours[1]?.name).toBe('tarn blue');
    expect(colourRenamed(chart, 1, 'lake blue')).toBe(chart);
    expect(recoloured(chart, 1, '#ABCDEF').colours[1]?.hex).toBe('#abcdef');
    expect(rowsOf(colourDeleted(chart, 3))).toEqual(['b.', '.o']);
    expect(colourDeleted(chart, 3).colours).toHaveLength(3);
  });

  test('what cannot be is refused with its place and what to do', () => {
    const chart = drawn('b.', '.o');
    const used = errorOf(() => colourDeleted(chart, 2));
    expect(used.place).toEqual({ row: 2, column: 2 });
    expect(used.message).toContain('Merge it');
    expect(errorOf(() => recoloured(chart, 1, '#d9642a')).code).toBe('colour-twice');
    expect(errorOf(() => recoloured(chart, 1, 'red')).place).toEqual({ path: 'colours[1].hex' });
    expect(errorOf(() => colourAdded(chart, '#F4F1E8', '')).message).toContain('Colour 1, chalk');
    expect(errorOf(() => colourRenamed(chart, 0, 'x'.repeat(201))).code).toBe('name-too-long');
    expect(errorOf(() => colourRenamed(chart, 0, 'a\nb')).code).toBe('bad-name');
    expect(errorOf(() => chartRenamed(chart, 'a\u0007b')).place).toEqual({ path: 'name' });
    expect(errorOf(() => colourMoved(chart, 0, 4)).code).toBe('no-such-colour');
  });

  test('sixty-four colours and no more, each with a key of its own', () => {
    let chart = blankChart('', { rows: 1, columns: 1 }, [{ hex: '#000000', name: '' }]);
    for (let i = 1; i < 64; i++) {
      chart = colourAdded(chart, `#${(i * 1000).toString(16).padStart(6, '0')}`, '');
    }
    expect(new Set(chart.colours.map(({ key }) => key)).size).toBe(64);
    expect(errorOf(() => colourAdded(chart, '#ffffff', '')).place).toEqual({ path: 'colours[64]' });
  });
});

describe('a new chart', () => {
  test('can be written and read again', () => {
    const chart = blankChart(' Kittiwake ', { rows: 30, columns: 12 });
    expect(chart.name).toBe('Kittiwake');
    expect(chart.colours.map(({ name }) => name)).toEqual(FIRST_COLOURS.map(({ name }) => name));
    expect(readChartDocument(printChartDocument(chart)).chart).toEqual(chart);
  });

  test('has a size that can be', () => {
    expect(blankChart('', { rows: 10_000, columns: 300 }).cells).toHaveLength(3_000_000);
    expect(errorOf(() => blankChart('', { rows: 1, columns: 301 })).place).toEqual({ column: 301 });
    expect(errorOf(() => blankChart('', { rows: 1, columns: 1 }, [])).code).toBe('no-colours');
  });
});
