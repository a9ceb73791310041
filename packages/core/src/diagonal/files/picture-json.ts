import { optional, readColours, readName } from '../../chart/json.js';
import { colourList, rowList } from '../../chart/json-print.js';
import type { Legend } from '../../chart/legend.js';
import { checkHeader } from '../../document/header.js';
import { JsonText } from '../../document/json.js';
import { FILE_LIMITS } from '../../document/limits.js';
import { DIAGONAL_LIMITS } from '../lattice.js';
import type { DiagonalPicture } from '../picture.js';
import { tooLong } from './blocks.js';
import { readFirst, readLatticeTexts } from './json-parts.js';
import { printLatticeRows, readLatticeRows } from './lattice-rows.js';
import { pictureMark, pictureMarks, withFreeKeys } from './picture-marks.js';

export const DIAGONAL_PICTURE_FORMAT = 'halfhitch-diagonal-picture';
const DIAGONAL_PICTURE_VERSION = 1;

/**
 * Reads the document of a wanted picture, version 1; `schema/diagonal-picture-1.schema.json` of this
 * package describes it.
 *
 * @param text at most 32 MiB of it
 * @throws InputError with line, column and path
 */
export function readDiagonalPictureDocument(text: string): DiagonalPicture {
  if (text.length > FILE_LIMITS.text) throw tooLong('The document');
  const json = new JsonText(text);
  const outline = json.outline();
  checkHeader(json, outline, {
    format: DIAGONAL_PICTURE_FORMAT,
    noun: 'wanted picture',
    version: DIAGONAL_PICTURE_VERSION,
    required: ['format', 'version', 'strings', 'colours', 'rows'],
    optional: ['name', 'first'],
  });
  const { minStrings, maxStrings } = DIAGONAL_LIMITS;
  const name = optional(json, outline, 'name', () => readName(json)) ?? '';
  const first = optional(json, outline, 'first', () => readFirst(json)) ?? 0;
  const strings = optional(json, outline, 'strings', () =>
    json.integer(minStrings, maxStrings),
  ) as number;
  const legend = optional(json, outline, 'colours', () => readColours(json)) as Legend;
  const rows = optional(json, outline, 'rows', () => readLatticeTexts(json)) as string[];
  const lattice = { strings, rows: rows.length, first };
  const cells = readLatticeRows(
    rows,
    lattice,
    pictureMarks(legend, { path: 'colours' }),
    (row, place) => ({ row: row + 1, column: place + 1, path: `rows[${row}]` }),
  );
  return { name, ...lattice, colours: legend.colours, cells };
}

/** Prints a wanted picture as a document; a colour whose key is `?` or `.` gets another one. */
export function printDiagonalPictureDocument(picture: DiagonalPicture): string {
  const printed = withFreeKeys(picture);
  const parts = [
    `"format": ${JSON.stringify(DIAGONAL_PICTURE_FORMAT)}`,
    `"version": ${DIAGONAL_PICTURE_VERSION}`,
    `"name": ${JSON.stringify(printed.name)}`,
    `"strings": ${printed.strings}`,
    `"first": ${printed.first + 1}`,
    colourList(printed.colours),
    rowList('rows', printLatticeRows(printed, printed.cells, pictureMark(printed))),
  ];
  return `{\n  ${parts.join(',\n  ')}\n}\n`;
}
