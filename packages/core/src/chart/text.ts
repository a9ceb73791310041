import { FILE_LIMITS, sizeInWords } from '../document/limits.js';
import { InputError } from '../errors.js';
import { CHART_LIMITS, type Chart, type ChartReading } from './chart.js';
import { readCells, readMarks } from './grid.js';
import { type BlockLimits, blocksOf } from './text-blocks.js';
import { readLegend } from './text-legend.js';
import type { Line } from './text-lines.js';

export { printTextChart } from './text-print.js';

const BLOCKS: BlockLimits = {
  blocks: 3,
  rows: CHART_LIMITS.maxRows,
  noun: 'A chart',
  parts: 'legend, rows and knot marks',
};

/**
 * Reads a text chart: a legend, a blank line, the rows of knots from the top, and, if the knots
 * were worked out by hand, another blank line and one mark for each knot.
 *
 * @param text at most 32 MiB of it
 * @throws InputError with line and column
 */
export function readTextChart(text: string): ChartReading {
  if (text.length > FILE_LIMITS.text) {
    throw new InputError(
      'file-too-large',
      `The text has ${sizeInWords(text.length)}.`,
      {},
      `A text chart can have at most ${sizeInWords(FILE_LIMITS.text)}.`,
    );
  }
  const [head, rows, marks] = blocksOf(text, BLOCKS);
  if (head === undefined) {
    throw new InputError(
      'empty',
      'The file is empty.',
      { line: 1 },
      'A text chart has a legend such as "b #1f6fb2 lake blue", a blank line, and rows.',
    );
  }
  const { legend, settings } = readLegend(head);
  if (rows === undefined) {
    const last = head.at(-1) as Line;
    throw new InputError(
      'no-rows',
      'There are no rows after the legend.',
      { line: last.number },
      'Leave one line blank after the legend, then write one line for each row of knots.',
    );
  }
  const { columns, cells } = readCells(
    rows.map((line) => line.text),
    legend.placeOf,
    (row, column) => placeOf(rows, row, column),
  );
  const chart: Chart = {
    name: settings.name ?? '',
    rows: rows.length,
    columns,
    colours: legend.colours,
    cells,
    ...(settings.edge === undefined ? {} : { edge: settings.edge }),
    ...(settings.start === undefined ? {} : { start: settings.start }),
    ...(marks === undefined
      ? {}
      : {
          knots: readMarks(
            marks.map((line) => line.text),
            rows.length,
            columns,
            (row, column) => placeOf(marks, row, column),
          ),
        }),
  };
  return { chart, notices: [] };
}

function placeOf(lines: readonly Line[], row: number, column?: number) {
  const line = lines[row] ?? (lines.at(-1) as Line);
  return column === undefined ? { line: line.number } : { line: line.number, column: column + 1 };
}
