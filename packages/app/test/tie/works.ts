import {
  type Chart,
  EDGE_TECHNIQUES,
  instructRow,
  PlanReader,
  planAlpha,
  planStepInWords,
  START_SIDES,
} from '@halfhitch/core';
import fc from 'fast-check';
import { AlphaRows } from '../../src/tie/row-marks.js';
import type { TieRow } from '../../src/tie/row-sheets.js';
import type { TiedWork } from '../../src/tie/tying.js';
import type { KnotChoice } from '../../src/work/messages.js';

const COLOURS = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#d9642a', name: 'buoy orange' },
  { key: 'w', hex: '#f4f1e8', name: 'chalk' },
];

/** A chart from rows of the letters b, o and w. */
export function chartOf(rows: readonly string[], name = 'Kittiwake'): Chart {
  return {
    name,
    rows: rows.length,
    columns: rows[0]?.length ?? 0,
    colours: COLOURS,
    cells: Uint8Array.from([...rows.join('')], (key) => COLOURS.findIndex((c) => c.key === key)),
  };
}

export const CHOICE: KnotChoice = { edge: 'straight', start: 'left' };

export interface Work {
  readonly chart: Chart;
  readonly choice: KnotChoice;
}

export const anyWork: fc.Arbitrary<Work> = fc
  .record({ rows: fc.integer({ min: 1, max: 6 }), columns: fc.integer({ min: 1, max: 7 }) })
  .chain(({ rows, columns }) =>
    fc.record({
      chart: fc
        .array(
          fc.array(fc.constantFrom('b', 'o', 'w'), { minLength: columns, maxLength: columns }),
          { minLength: rows, maxLength: rows },
        )
        .map((drawn) => chartOf(drawn.map((row) => row.join('')))),
      choice: fc.record({
        edge: fc.constantFrom(...EDGE_TECHNIQUES),
        start: fc.constantFrom(...START_SIDES),
      }),
    }),
  );

/** A chart as knots are counted in it. */
export function workOf(chart: Chart, choice = CHOICE): TiedWork {
  return { id: 'a1', rows: new AlphaRows(chart, choice) };
}

/** The rows of a work as the worker gives them. */
export function rowsOf({ chart, choice }: Work): TieRow[] {
  const plan = planAlpha(chart, choice);
  const readings = [...new PlanReader(plan)];
  return readings.map((reading, row) => ({
    sheet: {
      reading,
      previous: readings[row - 1] ?? null,
      instructions: instructRow(reading, plan),
    },
    steps: reading.knots.map(({ steps: { first, end } }) =>
      Array.from({ length: end - first }, (_, i) => planStepInWords(plan, first + i)),
    ),
  }));
}
