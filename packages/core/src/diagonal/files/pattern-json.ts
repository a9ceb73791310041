import { optional, readColours, readName } from '../../chart/json.js';
import { colourList, rowList } from '../../chart/json-print.js';
import type { Legend } from '../../chart/legend.js';
import { checkHeader } from '../../document/header.js';
import { JsonText } from '../../document/json.js';
import { FILE_LIMITS } from '../../document/limits.js';
import type { DiagonalPattern } from '../pattern.js';
import { tooLong } from './blocks.js';
import { readFirst, readLatticeTexts } from './json-parts.js';
import { KNOT_ROW_MARKS, knotMark, printLatticeRows, readLatticeRows } from './lattice-rows.js';
import { startKeys } from './pattern-text.js';
import { readStart } from './start-colours.js';

export const DIAGONAL_FORMAT = 'halfhitch-diagonal';
const DIAGONAL_VERSION = 1;

/**
 * Reads the document of a diagonal pattern, version 1. Its JSON Schema is
 * `schema/diagonal-1.schema.json` of this package; this reader also checks what a schema cannot say.
 *
 * @param text at most 32 MiB of it
 * @throws InputError with line, column and path
 */
export function readDiagonalDocument(text: string): DiagonalPattern {
  if (text.length > FILE_LIMITS.text) throw tooLong('The document');
  const json = new JsonText(text);
  const outline = json.outline();
  checkHeader(json, outline, {
    format: DIAGONAL_FORMAT,
    noun: 'diagonal pattern',
    version: DIAGONAL_VERSION,
    required: ['format', 'version', 'colours', 'start', 'rows'],
    optional: ['name', 'first'],
  });
  const name = optional(json, outline, 'name', () => readName(json)) ?? '';
  const first = optional(json, outline, 'first', () => readFirst(json)) ?? 0;
  const legend = optional(json, outline, 'colours', () => readColours(json)) as Legend;
  const start = readStart(
    optional(json, outline, 'start', () => json.string()) as string,
    legend.placeOf,
    (character) => ({ path: 'start', column: character + 1 }),
  );
  const rows = optional(json, outline, 'rows', () => readLatticeTexts(json)) as string[];
  const lattice = { strings: start.length, rows: rows.length, first };
  const knots = readLatticeRows(rows, lattice, KNOT_ROW_MARKS, (row, place) => ({
    row: row + 1,
    column: place + 1,
    path: `rows[${row}]`,
  }));
  return { name, ...lattice, colours: legend.colours, start, knots };
}

/** Prints a diagonal pattern as a document, one row a line. */
export function printDiagonalDocument(pattern: DiagonalPattern): string {
  const parts = [
    `"format": ${JSON.stringify(DIAGONAL_FORMAT)}`,
    `"version": ${DIAGONAL_VERSION}`,
    `"name": ${JSON.stringify(pattern.name)}`,
    `"first": ${pattern.first + 1}`,
    colourList(pattern.colours),
    `"start": ${JSON.stringify(startKeys(pattern))}`,
    rowList('rows', printLatticeRows(pattern, pattern.knots, knotMark)),
  ];
  return `{\n  ${parts.join(',\n  ')}\n}\n`;
}
