import { quotedCharacter, sentenceCase } from '../document/quote.js';
import { InputError, type Place } from '../errors.js';
import { KNOT_KINDS, KNOT_MARKS } from '../model/knot.js';
import { CHART_LIMITS } from './chart.js';
import { characters } from './legend.js';

interface GridWords {
  /** What to do about a character that stands for nothing. */
  readonly unknown: { readonly code: string; readonly remedy: string };
}

/** Place of a row, or of a knot of it; rows and columns from 0. */
export type Locate = (row: number, column?: number) => Place;

const CELL_WORDS: GridWords = {
  unknown: { code: 'unknown-key', remedy: 'Add it to the legend, or correct the row.' },
};
const MARK_WORDS: GridWords = {
  unknown: {
    code: 'unknown-mark',
    remedy: 'The marks are \\ forward, / backward, > forward-backward and < backward-forward.',
  },
};

const MARK_PLACES: ReadonlyMap<number, number> = new Map(
  KNOT_KINDS.map((kind, place) => [KNOT_MARKS[kind].charCodeAt(0), place]),
);

/**
 * Rows of characters as numbers, one a knot, row by row.
 *
 * @throws InputError when the rows are not equally long, or a character stands for nothing
 */
export function readCells(
  rows: readonly string[],
  placeOf: ReadonlyMap<number, number>,
  locate: Locate,
): { columns: number; cells: Uint8Array } {
  const columns = firstWidth(rows, locate);
  return { columns, cells: fill(rows, columns, placeOf, locate, CELL_WORDS) };
}

/** Rows of knot marks as indexes into KNOT_KINDS; as many of them as the chart has knots. */
export function readMarks(
  marks: readonly string[],
  rows: number,
  columns: number,
  locate: Locate,
): Uint8Array {
  if (marks.length !== rows) {
    throw new InputError(
      'marks-uneven',
      `There are ${marks.length} rows of knot marks for ${rows} rows of knots.`,
      locate(Math.min(marks.length, rows)),
      'Give one mark for each knot, or none at all.',
    );
  }
  return fill(marks, columns, MARK_PLACES, locate, MARK_WORDS);
}

function firstWidth(rows: readonly string[], locate: Locate): number {
  const first = rows[0] ?? '';
  const most = CHART_LIMITS.maxColumns;
  const columns = characters(first.slice(0, 2 * most + 2));
  if (columns > most) {
    throw new InputError(
      'too-many-columns',
      `The row has more than ${most} knots.`,
      locate(0, most),
      `A chart can have at most ${most} columns; a long band is drawn with its length down the page.`,
    );
  }
  return columns;
}

function fill(
  rows: readonly string[],
  columns: number,
  placeOf: ReadonlyMap<number, number>,
  locate: Locate,
  words: GridWords,
): Uint8Array {
  const cells = new Uint8Array(rows.length * columns);
  const places = new Int8Array(128).fill(-1);
  for (const [code, place] of placeOf) if (code < 128) places[code] = place;
  let cell = 0;
  for (let row = 0; row < rows.length; row++) {
    const text = rows[row] as string;
    let column = 0;
    for (let i = 0; i < text.length; i++) {
      const code = text.codePointAt(i) as number;
      if (code > 0xffff) i++;
      const place = code < 128 ? (places[code] as number) : (placeOf.get(code) ?? -1);
      if (place < 0) {
        throw new InputError(
          words.unknown.code,
          `${sentenceCase(quotedCharacter(String.fromCodePoint(code)))} stands for nothing.`,
          locate(row, column),
          words.unknown.remedy,
        );
      }
      if (column === columns) uneven(text, columns, locate(row, column));
      cells[cell++] = place;
      column++;
    }
    if (column < columns) uneven(text, columns, locate(row, column));
  }
  return cells;
}

function uneven(text: string, columns: number, place: Place): never {
  const length = characters(text.slice(0, 2 * CHART_LIMITS.maxColumns + 2));
  const count = length > CHART_LIMITS.maxColumns ? `more than ${CHART_LIMITS.maxColumns}` : length;
  throw new InputError(
    'rows-uneven',
    `The row has ${count} ${count === 1 ? 'knot' : 'knots'}, but the first row has ${columns}.`,
    place,
    'Give every row one character for each knot.',
  );
}
