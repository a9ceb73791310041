import type { Chart } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areaBetween } from '../../src/draw/edit/area.js';
import { paint } from '../../src/draw/edit/cells.js';
import { linePlaces } from '../../src/draw/edit/line.js';
import { patchOf } from '../../src/draw/edit/patch.js';
import type { Place } from '../../src/draw/edit/place.js';
import { blockPlaces, cellsOf, outlinePlaces } from '../../src/draw/edit/strokes.js';
import { NO_SYMMETRY } from '../../src/draw/edit/symmetry.js';
import { Drawing } from '../../src/draw/sheet/drawing.js';
import type { SheetAsk, SheetSettings } from '../../src/draw/sheet/events.js';
import { cellInWords, rowInWords } from '../../src/draw/sheet/words.js';
import { Lifting } from '../../src/draw/tools/lifting.js';
import { Stroke } from '../../src/draw/tools/stroke.js';
import { TOOLS } from '../../src/draw/tools/tools.js';
import { anyChart, below, drawn, rowsOf, seed } from './charts.js';

const SETTINGS: SheetSettings = {
  tool: 'pencil',
  colour: 1,
  ground: 0,
  symmetry: NO_SYMMETRY,
  signs: false,
  asThread: false,
  repeat: false,
};

/** A drawing as the sheet has it, and what it has told. */
function bench(first: Chart, settings: Partial<SheetSettings> = {}) {
  const steps: string[] = [];
  const asked: SheetAsk[] = [];
  let chart = first;
  const drawing: Drawing = new Drawing(
    { ...SETTINGS, ...settings },
    {
      edit: (next, what) => {
        if (next === chart) return;
        chart = next;
        steps.push(what);
        drawing.take(next);
      },
      ask: (one) => asked.push(one),
      repaint: () => {},
      placed: () => {},
    },
  );
  drawing.take(first);
  return { drawing, steps, asked, chart: () => chart, rows: () => rowsOf(chart) };
}

const HAND = { extend: false, leave: false };

describe('a stroke', () => {
  test('comes to what its points alone would draw, wherever it has been meanwhile', () => {
    const place = fc.record({
      row: fc.integer({ min: -3, max: 12 }),
      column: fc.integer({ min: -3, max: 12 }),
    });
    const ways = fc.record({ sides: fc.boolean(), ends: fc.boolean(), turn: fc.boolean() });
    fc.assert(
      fc.property(
        anyChart(),
        fc.array(place, { minLength: 1, maxLength: 6 }),
        ways,
        (chart, points, symmetry) => {
          const colour = chart.colours.length - 1;
          const [from, to] = [points[0], points.at(-1)];
          if (from === undefined || to === undefined) return;
          const result = (tool: 'pencil' | 'line' | 'frame' | 'block'): Chart => {
            const stroke = new Stroke(chart, tool, colour, symmetry, from);
            for (const point of points) stroke.moveTo(point);
            return stroke.finish().chart;
          };
          const near = ({ row, column }: { row: number; column: number }) => ({
            row: Math.max(0, Math.min(chart.rows - 1, row)),
            column: Math.max(0, Math.min(chart.columns - 1, column)),
          });
          const area = areaBetween(near(from), near(to));
          const atOnce = (places: Iterable<Place>): Chart =>
            paint(chart, cellsOf(places, chart, symmetry), colour);
          const passed = points.flatMap((point, at) => linePlaces(points[at - 1] ?? point, point));
          expect(result('pencil')).toEqual(atOnce(passed));
          expect(result('line')).toEqual(atOnce(linePlaces(from, to)));
          expect(result('frame')).toEqual(atOnce(outlinePlaces(area)));
          expect(result('block')).toEqual(atOnce(blockPlaces(area)));
        },
      ),
    );
  });

  test('is one step, and none when it changes nothing or is not meant', () => {
    const { drawing, steps, rows } = bench(drawn('...', '...'));
    drawing.begin({ row: 0, column: 0 }, HAND);
    drawing.follow({ row: 0, column: 1 });
    drawing.follow({ row: 1, column: 2 });
    expect(steps).toEqual([]);
    drawing.finish();
    expect(rows()).toEqual(['bb.', '..b']);
    drawing.begin({ row: 0, column: 0 }, HAND);
    drawing.finish();
    drawing.begin({ row: 1, column: 0 }, HAND);
    drawing.cancel();
    drawing.finish();
    expect(steps).toEqual(['Draw with the pencil']);
  });

  test('is let go when the chart is changed under it', () => {
    const { drawing, steps } = bench(drawn('...'));
    drawing.begin({ row: 0, column: 0 }, HAND);
    drawing.take(drawn('bbb'));
    drawing.finish();
    expect(steps).toEqual([]);
  });
});

describe('what is selected', () => {
  test('moved step by step, it leaves everything as it was but where it lies', () => {
    fc.assert(
      fc.property(
        anyChart({ rows: 8, columns: 8 }),
        fc.array(seed, { minLength: 4, maxLength: 4 }),
        fc.array(fc.tuple(fc.integer({ min: -2, max: 2 }), fc.integer({ min: -2, max: 2 })), {
          minLength: 1,
          maxLength: 5,
        }),
        (chart, [a, b, c, d], moves) => {
          const one = {
            row: below(a as number, chart.rows),
            column: below(b as number, chart.columns),
          };
          const other = {
            row: below(c as number, chart.rows),
            column: below(d as number, chart.columns),
          };
          const { drawing, chart: now } = bench(chart, { tool: 'select', ground: 0 });
          const area = areaBetween(one, other);
          drawing.select(area);
          const patch = patchOf(chart, area);
          let at = { row: area.row, column: area.column };
          for (const [rows, columns] of moves) {
            const next = { row: at.row + rows, column: at.column + columns };
            // Pushed over the side, it is cut off for good: another test.
            const inside =
              next.row >= 0 &&
              next.column >= 0 &&
              next.row + area.rows <= chart.rows &&
              next.column + area.columns <= chart.columns;
            if (!inside) continue;
            drawing.nudge(rows, columns);
            at = next;
          }
          const after = now();
          expect(patchOf(after, { ...area, ...at }).cells).toEqual(patch.cells);
          for (let cell = 0; cell < chart.cells.length; cell++) {
            const row = Math.floor(cell / chart.columns);
            const column = cell % chart.columns;
            const within = (from: { row: number; column: number }) =>
              row >= from.row &&
              row < from.row + area.rows &&
              column >= from.column &&
              column < from.column + area.columns;
            if (within(at)) continue;
            expect(after.cells[cell]).toBe(within(area) && after !== chart ? 0 : chart.cells[cell]);
          }
        },
      ),
    );
  });

  test('something done meanwhile is not undone by moving on', () => {
    const { drawing, rows } = bench(drawn('bo..', '....'), { tool: 'select' });
    drawing.select({ row: 0, column: 0, rows: 1, columns: 2 });
    drawing.nudge(0, 1);
    expect(rows()).toEqual(['.bo.', '....']);
    drawing.mirror('sides');
    drawing.nudge(1, 0);
    expect(rows()).toEqual(['....', '.ob.']);
  });

  test('left behind too, it is there twice', () => {
    const { drawing, steps, rows } = bench(drawn('bo..'), { tool: 'select' });
    drawing.select({ row: 0, column: 0, rows: 1, columns: 2 });
    drawing.begin({ row: 0, column: 0 }, { extend: false, leave: true });
    drawing.follow({ row: 0, column: 2 });
    drawing.finish();
    expect(rows()).toEqual(['bobo']);
    expect(steps).toEqual(['Copy the selection']);
  });

  test('what was laid down is only known in the chart that came of it', () => {
    const lifting = new Lifting();
    const on = drawn('oooo');
    const patch = patchOf(drawn('b...'), { row: 0, column: 0, rows: 1, columns: 1 });
    const area = { row: 0, column: 2, rows: 1, columns: 1 };
    const laid = lifting.lay(on, { on, patch, at: area }, area);
    expect(rowsOf(lifting.lift(laid, area, 0, false).on)).toEqual(['oooo']);
    expect(rowsOf(lifting.lift(drawn('oobo'), area, 0, false).on)).toEqual(['oo.o']);
    expect(lifting.lay(laid, { on, patch, at: area }, area)).toBe(laid);
  });

  test('moved without a change to be seen, it still leaves what was under it', () => {
    // The two lower rows are as plain as what is moved over them.
    const { drawing, rows } = bench(drawn('.', 'b', '.', '.'), { tool: 'select' });
    drawing.select({ row: 2, column: 0, rows: 2, columns: 1 });
    drawing.nudge(-1, 0);
    expect(rows()).toEqual(['.', '.', '.', '.']);
    drawing.nudge(-1, 0);
    drawing.nudge(1, 0);
    drawing.nudge(1, 0);
    expect(rows()).toEqual(['.', 'b', '.', '.']);
  });

  test('a patch from another chart tells when part of it is left out', () => {
    const { drawing, asked, rows } = bench(drawn('...', '...'));
    drawing.here = { row: 1, column: 2 };
    drawing.putIn(patchOf(drawn('bo', 'ob'), { row: 0, column: 0, rows: 2, columns: 2 }), 'Paste');
    expect(rows()).toEqual(['...', '..b']);
    expect(asked.map(({ ask }) => ask)).toContain('say');
    expect(drawing.selected).toEqual({ row: 1, column: 2, rows: 1, columns: 1 });
  });
});

test('every tool has a key of its own, and none that moves or chooses colours', () => {
  const keys = TOOLS.map(({ key }) => key);
  expect(new Set(keys).size).toBe(keys.length);
  expect(keys.every((key) => /^[a-z]$/.test(key) && key !== 'h')).toBe(true);
});

test('knots and rows are said in words', () => {
  const chart = drawn('bo', '.o');
  expect(cellInWords(chart, { row: 1, column: 1 })).toBe('Row 2, column 2: buoy orange');
  expect(rowInWords('left', 0)).toBe('Row 1 is knotted from left to right.');
  expect(rowInWords('right', 0)).toBe('Row 1 is knotted from right to left.');
});
