import { checkHeader, unknownProperty } from '../document/header.js';
import { JsonText, type Properties } from '../document/json.js';
import { FILE_LIMITS, sizeInWords } from '../document/limits.js';
import { InputError } from '../errors.js';
import { CHART_LIMITS, type ChartReading, EDGE_TECHNIQUES, START_SIDES } from './chart.js';
import { readCells, readMarks } from './grid.js';
import { badHex, badKey, badName, Legend, readHex, tidyName } from './legend.js';

export { printChartDocument } from './json-print.js';

export const CHART_FORMAT = 'halfhitch-chart';
export const CHART_VERSION = 1;

const REQUIRED = ['format', 'version', 'colours', 'rows'];
const OPTIONAL = ['name', 'edge', 'start', 'knots'];
const COLOUR_KEYS = ['key', 'hex', 'name'];

/**
 * Reads a chart document, version 1. Its JSON Schema is `schema/chart-1.schema.json` of this
 * package; this reader also checks what a schema cannot say.
 *
 * @param text at most 32 MiB of it
 * @throws InputError with line, column and path
 */
export function readChartDocument(text: string): ChartReading {
  if (text.length > FILE_LIMITS.text) {
    throw new InputError(
      'file-too-large',
      `The document has ${sizeInWords(text.length)}.`,
      {},
      `A chart document can have at most ${sizeInWords(FILE_LIMITS.text)}.`,
    );
  }
  const json = new JsonText(text);
  const outline = json.outline();
  checkHeader(json, outline, {
    format: CHART_FORMAT,
    noun: 'chart',
    version: CHART_VERSION,
    required: REQUIRED,
    optional: OPTIONAL,
  });
  const name = optional(json, outline, 'name', () => readName(json)) ?? '';
  const edge = optional(json, outline, 'edge', () => json.word(EDGE_TECHNIQUES));
  const start = optional(json, outline, 'start', () => json.word(START_SIDES));
  const legend = optional(json, outline, 'colours', () => readColours(json)) as Legend;
  const rows = optional(json, outline, 'rows', () => readRows(json)) as string[];
  const marks = optional(json, outline, 'knots', () => readRows(json));
  const { columns, cells } = readCells(rows, legend.placeOf, (row, column) =>
    placeIn('rows', row, column),
  );
  const chart = {
    name,
    rows: rows.length,
    columns,
    colours: legend.colours,
    cells,
    ...(edge === undefined ? {} : { edge }),
    ...(start === undefined ? {} : { start }),
    ...(marks === undefined
      ? {}
      : {
          knots: readMarks(marks, rows.length, columns, (row, column) =>
            placeIn('knots', row, column),
          ),
        }),
  };
  return { chart, notices: [] };
}

/** Reads the value of a property that the document may be without. */
export function optional<T>(
  json: JsonText,
  outline: Properties,
  key: string,
  read: () => T,
): T | undefined {
  const at = outline.get(key);
  return at === undefined ? undefined : json.property(key, at, read);
}

function placeIn(property: string, row: number, column?: number) {
  const place = { row: row + 1, path: `${property}[${row}]` };
  return column === undefined ? place : { ...place, column: column + 1 };
}

/** Reads a name, for a chart or a string. */
export function readName(json: JsonText): string {
  const at = json.mark;
  const given = json.string();
  const breach = badName(given);
  if (breach !== undefined) json.fail(breach.code, breach.what, breach.remedy, at);
  return tidyName(given);
}

/** Reads a colour as `#rrggbb`. */
export function readColour(json: JsonText): string {
  const at = json.mark;
  const given = json.string();
  const hex = readHex(given);
  if (hex !== undefined) return hex;
  const breach = badHex(given);
  return json.fail(breach.code, breach.what, breach.remedy, at);
}

/** Reads the list of colours, each with its key. */
export function readColours(json: JsonText): Legend {
  const legend = new Legend();
  json.array(() => {
    const at = json.mark;
    let key: string | undefined;
    let hex: string | undefined;
    let name = '';
    json.object((property) => {
      if (property === 'key') key = json.string();
      else if (property === 'hex') hex = readColour(json);
      else if (property === 'name') name = readName(json);
      else unknownProperty(json, property, COLOUR_KEYS);
    });
    if (key === undefined || hex === undefined) {
      const missing = key === undefined ? 'key' : 'hex';
      json.fail(
        'property-missing',
        `The colour has no property "${missing}".`,
        'Write it as {"key": "b", "hex": "#1f6fb2", "name": "lake blue"}.',
        at,
      );
      return;
    }
    const breach = badKey(key) ?? legend.add({ key, hex, name });
    if (breach !== undefined) json.fail(breach.code, breach.what, breach.remedy, at);
  });
  if (legend.colours.length === 0) {
    json.fail('no-colours', 'There are no colours.', 'Give at least one.');
  }
  return legend;
}

function readRows(json: JsonText): string[] {
  const rows: string[] = [];
  const { maxRows, maxColumns } = CHART_LIMITS;
  json.array((index) => {
    const at = json.mark;
    if (index === maxRows) {
      json.fail(
        'too-many-rows',
        `There are more than ${maxRows} rows.`,
        `A chart can have at most ${maxRows} rows.`,
      );
    }
    const row = json.string('a row of knots in double quotes');
    if (row === '') {
      json.fail('row-empty', 'The row has no knots.', 'Remove it, or draw it.', at);
    }
    if (row.length > 2 * maxColumns) {
      json.fail(
        'too-many-columns',
        `The row has more than ${maxColumns} knots.`,
        `A chart can have at most ${maxColumns} columns; a long band is drawn with its length down the page.`,
        at,
      );
    }
    rows.push(row);
  });
  if (rows.length === 0) json.fail('no-rows', 'There are no rows.', 'Draw at least one.');
  return rows;
}
