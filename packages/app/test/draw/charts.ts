import type { Chart } from '@halfhitch/core';
import fc from 'fast-check';
import { blankChart } from '../../src/draw/edit/blank.js';
import { colourAdded } from '../../src/draw/edit/colours.js';

const LEGEND = [
  ['.', '#f4f1e8', 'chalk'],
  ['b', '#1f6fb2', 'lake blue'],
  ['o', '#d9642a', 'buoy orange'],
  ['r', '#3f7d4e', 'reed green'],
] as const;

/** A chart from rows of keys: `.` chalk, `b` lake blue, `o` buoy orange, `r` reed green. */
export function drawn(...rows: readonly string[]): Chart {
  const keys = LEGEND.map(([key]) => key as string);
  return {
    name: 'Heron',
    rows: rows.length,
    columns: rows[0]?.length ?? 0,
    colours: LEGEND.map(([key, hex, name]) => ({ key, hex, name })),
    cells: Uint8Array.from([...rows.join('')], (key) => keys.indexOf(key)),
  };
}

/** What `drawn` would be given for a chart. */
export function rowsOf({ colours, columns, cells }: Chart): string[] {
  const text = [...cells].map((cell) => colours[cell]?.key).join('');
  return text.match(new RegExp(`.{${columns}}`, 'gsu')) ?? [];
}

/** The colour that each knot shows, whatever the legend's order. */
export function shownIn({ colours, cells }: Chart): string[] {
  return Array.from(cells, (cell) => colours[cell]?.hex ?? 'none');
}

export interface ChartLimits {
  readonly rows?: number;
  readonly columns?: number;
  readonly colours?: number;
}

/** Small charts of any drawing. */
export function anyChart(most: ChartLimits = {}): fc.Arbitrary<Chart> {
  return fc
    .record({
      rows: fc.integer({ min: 1, max: most.rows ?? 9 }),
      columns: fc.integer({ min: 1, max: most.columns ?? 9 }),
      many: fc.integer({ min: 1, max: most.colours ?? 4 }),
    })
    .chain(({ rows, columns, many }) =>
      fc
        .uint8Array({ minLength: rows * columns, maxLength: rows * columns, max: many - 1 })
        .map((cells) => {
          let chart = blankChart('', { rows, columns }, [{ hex: '#000000', name: '' }]);
          for (let i = 1; i < many; i++) {
            chart = colourAdded(chart, `#0000${(16 + i).toString(16)}`, `blue ${i}`);
          }
          return { ...chart, cells };
        }),
    );
}

/** A number that fast-check draws afresh for each chart, from 0 to below `end`. */
export function below(seed: number, end: number): number {
  return seed % end;
}

export const seed = fc.nat({ max: 1_000_000 });
