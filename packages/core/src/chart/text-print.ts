import { KNOT_KINDS, KNOT_MARKS } from '../model/knot.js';
import type { Chart, ChartColour } from './chart.js';

/**
 * Prints a chart as text. Reading it gives the same chart, but for names that hold line breaks,
 * which are printed as blanks.
 */
export function printTextChart(chart: Chart): string {
  const lines = nameLines(chart.name);
  if (chart.edge !== undefined) lines.push(`edge ${chart.edge}`);
  if (chart.start !== undefined) lines.push(`start ${chart.start}`);
  lines.push(...colourLines(chart.colours), '', ...keyRows(chart));
  const marks = markRows(chart);
  if (marks !== undefined) lines.push('', ...marks);
  return `${lines.join('\n')}\n`;
}

/** The line of a legend that gives the name, or none where there is no name. */
export function nameLines(name: string): string[] {
  const given = onOneLine(name);
  return given === '' ? [] : [`name ${guarded(given)}`];
}

/** The lines of a legend that give the colours. */
export function colourLines(colours: readonly ChartColour[]): string[] {
  return colours.map(({ key, hex, name }) => `${key} ${hex} ${guarded(onOneLine(name))}`.trimEnd());
}

/** The chart's rows, one key for each knot. */
export function keyRows(chart: Chart): string[] {
  return rowsOf(
    chart,
    chart.cells,
    chart.colours.map((colour) => colour.key),
  );
}

/** Rows of knot marks, when the knots were worked out by hand. */
export function markRows(chart: Chart): string[] | undefined {
  if (chart.knots === undefined) return undefined;
  return rowsOf(
    chart,
    chart.knots,
    KNOT_KINDS.map((kind) => KNOT_MARKS[kind]),
  );
}

function rowsOf(chart: Chart, cells: Uint8Array, marks: readonly string[]): string[] {
  const { rows, columns } = chart;
  const printed: string[] = [];
  for (let row = 0; row < rows; row++) {
    let text = '';
    for (let cell = row * columns; cell < (row + 1) * columns; cell++) {
      text += marks[cells[cell] as number];
    }
    printed.push(text);
  }
  return printed;
}

/** The reader drops one equals sign or colon in front of a name, so such a name gets another. */
function guarded(name: string): string {
  return /^[=:]/.test(name) ? `: ${name}` : name;
}

function onOneLine(name: string): string {
  return name.replace(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]+/gu, ' ').trim();
}
