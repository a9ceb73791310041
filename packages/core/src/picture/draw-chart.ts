import { type Chart, colourAt } from '../chart/chart.js';
import { directionOf, type Plan } from '../plan/plan.js';
import { escapeMarkup, safeColour, short } from './markup.js';

/** Side of a cell, and room on the left for the words of a row. */
const CELL = 14;
const LABELS = 132;
const TOP = 16;

/** Rows in one picture; longer charts are drawn in several, so that they can be printed. */
const ROWS_IN_PICTURE = 60;

/** Above this the keys of the colours are left out of the cells. */
const MOST_KEYS = 30_000;

/**
 * Draws a chart as its maker reads it: cells with their colour and its key, each row with its
 * number and the way it is knotted, in words. Pieces of HTML: one `svg` for every sixty rows.
 */
export function* drawChart(chart: Chart, plan: Plan): Generator<string, void, undefined> {
  const keyed = chart.rows * chart.columns <= MOST_KEYS;
  for (let from = 0; from < chart.rows; from += ROWS_IN_PICTURE) {
    yield drawRows(chart, plan, from, Math.min(chart.rows, from + ROWS_IN_PICTURE), keyed);
  }
}

function drawRows(chart: Chart, plan: Plan, from: number, end: number, keyed: boolean): string {
  const width = LABELS + chart.columns * CELL + 8;
  const height = TOP + (end - from) * CELL + 6;
  const label = `Chart, rows ${from + 1} to ${end}, ${chart.columns} columns`;
  const pieces = [
    `<svg xmlns="http://www.w3.org/2000/svg" class="chart" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-label="${label}">`,
    columnNumbers(chart.columns),
  ];
  for (let row = from; row < end; row++) {
    const y = TOP + (row - from) * CELL;
    const way = directionOf(plan.start, row) === 'right' ? 'left to right' : 'right to left';
    pieces.push(
      `<text x="${LABELS - 6}" y="${y + 10.5}" class="row">${row + 1}, ${way}</text>`,
      cells(chart, row, y),
    );
    if (keyed) pieces.push(keys(chart, row, y));
  }
  pieces.push(lines(chart.columns, end - from), '</svg>');
  return pieces.join('');
}

function columnNumbers(columns: number): string {
  const numbers: string[] = [];
  for (let column = 1; column <= columns; column++) {
    if (column !== 1 && column % 5 !== 0) continue;
    numbers.push(
      `<text x="${LABELS + (column - 0.5) * CELL}" y="${TOP - 5}" class="column">${column}</text>`,
    );
  }
  return numbers.join('');
}

/** One shape for each stretch of one colour. */
function cells(chart: Chart, row: number, y: number): string {
  const pieces: string[] = [];
  for (let column = 0; column < chart.columns; ) {
    const colour = colourAt(chart, row, column);
    let end = column + 1;
    while (end < chart.columns && colourAt(chart, row, end) === colour) end++;
    const x = LABELS + column * CELL;
    pieces.push(
      `<path d="M${x} ${y}h${(end - column) * CELL}v${CELL}h${(column - end) * CELL}Z" fill="${safeColour(colour.hex)}"/>`,
    );
    column = end;
  }
  return pieces.join('');
}

/** The keys, so that colour is not the only sign: one text for the dark cells, one for the light. */
function keys(chart: Chart, row: number, y: number): string {
  return (['dark', 'light'] as const)
    .map((ground) => {
      let text = '';
      const places: string[] = [];
      for (let column = 0; column < chart.columns; column++) {
        const { key, hex } = colourAt(chart, row, column);
        if (key.trim() === '' || isDark(hex) !== (ground === 'dark')) continue;
        text += key;
        // SVG places every UTF-16 unit of a text on its own.
        for (let unit = 0; unit < key.length; unit++) {
          places.push(short(LABELS + (column + 0.5) * CELL));
        }
      }
      return text === ''
        ? ''
        : `<text x="${places.join(' ')}" y="${y + 10}" class="on-${ground}">${escapeMarkup(text)}</text>`;
    })
    .join('');
}

function lines(columns: number, rows: number): string {
  let path = '';
  for (let column = 0; column <= columns; column++) {
    path += `M${LABELS + column * CELL} ${TOP}v${rows * CELL}`;
  }
  for (let row = 0; row <= rows; row++) path += `M${LABELS} ${TOP + row * CELL}h${columns * CELL}`;
  return `<path d="${path}" class="grid"/>`;
}

/** Whether white text reads better on a colour than black: relative luminance as WCAG 2 has it. */
export function isDark(hex: string): boolean {
  const linear = [1, 3, 5].map((at) => {
    const share = Number.parseInt(safeColour(hex).slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  const [r, g, b] = linear as [number, number, number];
  // At this luminance black and white have the same contrast: (L + 0.05)² = 1.05 x 0.05.
  return 0.2126 * r + 0.7152 * g + 0.0722 * b < 0.179;
}
