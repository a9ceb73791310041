import type { Chart } from './chart.js';
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
  parts.push(
    list(
      'colours',
      chart.colours.map(
        ({ key, hex, name }) =>
          `{ "key": ${JSON.stringify(key)}, "hex": ${JSON.stringify(hex)}, "name": ${JSON.stringify(name)} }`,
      ),
    ),
    list(
      'rows',
      keyRows(chart).map((row) => JSON.stringify(row)),
    ),
  );
  const marks = markRows(chart);
  if (marks !== undefined) {
    parts.push(
      list(
        'knots',
        marks.map((row) => JSON.stringify(row)),
      ),
    );
  }
  return `{\n  ${parts.join(',\n  ')}\n}\n`;
}

function list(name: string, items: readonly string[]): string {
  return `"${name}": [\n    ${items.join(',\n    ')}\n  ]`;
}
