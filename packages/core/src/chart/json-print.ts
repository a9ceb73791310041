import type { Chart, ChartColour } from './chart.js';
import { CHART_FORMAT, CHART_VERSION } from './json.js';
import { keyRows, markRows } from './text-print.js';

/** Prints a chart as a document; one row a line, so that it can be drawn on by hand. */
export function printChartDocument(chart: Chart): string {
  const parts = [
    `"format": ${JSON.stringify(CHART_FORMAT)}`,
    `"version": ${CHART_VERSION}`,
    `"name": ${JSON.stringify(chart.name)}`,
  ];
  if (chart.edge !== undefined) parts.push(`"edge": ${JSON.stringify(chart.edge)}`);
  if (chart.start !== undefined) parts.push(`"start": ${JSON.stringify(chart.start)}`);
  parts.push(colourList(chart.colours), rowList('rows', keyRows(chart)));
  const marks = markRows(chart);
  if (marks !== undefined) parts.push(rowList('knots', marks));
  return `{\n  ${parts.join(',\n  ')}\n}\n`;
}

/** The property that lists the colours of a document. */
export function colourList(colours: readonly ChartColour[]): string {
  return list(
    'colours',
    colours.map(
      ({ key, hex, name }) =>
        `{ "key": ${JSON.stringify(key)}, "hex": ${JSON.stringify(hex)}, "name": ${JSON.stringify(name)} }`,
    ),
  );
}

/** A property that holds rows of characters, one a line. */
export function rowList(name: string, rows: readonly string[]): string {
  return list(
    name,
    rows.map((row) => JSON.stringify(row)),
  );
}

function list(name: string, items: readonly string[]): string {
  return `"${name}": [\n    ${items.join(',\n    ')}\n  ]`;
}
