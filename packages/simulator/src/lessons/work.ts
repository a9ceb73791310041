import {
  type Chart,
  type EdgeTechnique,
  type Join,
  type KnotReading,
  type Plan,
  PlanReader,
  planAlpha,
  type RowReading,
} from '@halfhitch/core';
import type { LessonWords } from '../messages/lesson-words.js';
import type { Words } from '../messages/words.js';

/** A plan to be taught from, what it is to look like, and the words to do it in. */
export interface Work {
  readonly plan: Plan;
  readonly chart: Chart;
  readonly reader: PlanReader;
  readonly say: LessonWords;
  readonly words: Words;
}

export type Hand = 'right' | 'left';

/** The words of one language, and the hand that is taught. */
export interface Teaching {
  readonly say: LessonWords;
  readonly words: Words;
  readonly hand: Hand;
}

export const COLOURS = [
  { key: 'a', hex: '#1f6fb2', name: 'colour.lake' },
  { key: 'b', hex: '#d9642a', name: 'colour.buoy' },
  { key: 'c', hex: '#4f7f4a', name: 'colour.reed' },
] as const;

/**
 * A small chart of lines of `a`, `b` and `c`, planned. For the left hand all of it is mirrored,
 * by drawing it mirrored and starting on the other side.
 */
export function workOf(
  teaching: Teaching,
  lines: readonly string[],
  options: { readonly edge?: EdgeTechnique; readonly joins?: readonly Join[] } = {},
): Work {
  const { say, hand } = teaching;
  const left = hand === 'left';
  const rows = left ? lines.map((line) => [...line].reverse().join('')) : lines;
  const columns = rows[0]?.length ?? 0;
  const chart: Chart = {
    name: '',
    rows: rows.length,
    columns,
    colours: COLOURS.map(({ key, hex, name }) => ({ key, hex, name: say(name) })),
    cells: Uint8Array.from(
      [...rows.join('')].map((key) => COLOURS.findIndex((c) => c.key === key)),
    ),
  };
  const joins = (options.joins ?? []).map(({ row, column }) => ({
    row,
    column: left ? columns - 1 - column : column,
  }));
  const plan = planAlpha(chart, {
    start: left ? 'right' : 'left',
    edge: options.edge ?? 'straight',
    joins,
  });
  return { plan, chart, reader: new PlanReader(plan), say, words: teaching.words };
}

export function rowOf(
  work: Work,
  row: number,
): { reading: RowReading; previous: RowReading | null } {
  return {
    reading: work.reader.row(row),
    previous: row > 0 ? work.reader.row(row - 1) : null,
  };
}

export function knotOf(work: Work, row: number, order: number): KnotReading {
  const knot = work.reader.row(row).knots[order];
  if (knot === undefined) throw new RangeError(`Row ${row + 1} has no knot ${order + 1}.`);
  return knot;
}
