import { quotedCharacter, sentenceCase } from '../../document/quote.js';
import { InputError, type Place } from '../../errors.js';
import { KNOT_KINDS, KNOT_MARKS } from '../../model/knot.js';
import { firstSlotOf, knotsAcross, knotsInRow, type Lattice } from '../lattice.js';
import { NO_KNOT } from '../pattern.js';

/** The entry of a place without a knot, of a pattern and of a picture alike. */
const NOTHING = NO_KNOT;
export const BARE_MARK = '.';

/** Where the place for a knot stands in its file: the row, the place and the character, from 0. */
export type LocatePlace = (row: number, place: number, character: number) => Place;

export interface RowMarks {
  /** Entry that each character stands for. */
  readonly entryOf: ReadonlyMap<number, number>;
  /** What to do about a character that stands for nothing. */
  readonly remedy: string;
}

/** The marks of a pattern's knots. */
export const KNOT_ROW_MARKS: RowMarks = {
  entryOf: new Map([
    ...KNOT_KINDS.map((kind, entry) => [KNOT_MARKS[kind].charCodeAt(0), entry] as const),
    [BARE_MARK.charCodeAt(0), NOTHING],
  ]),
  remedy:
    'The marks are \\ forward, / backward, > forward-backward, < backward-forward and . for no knot.',
};

const UNKNOWN = -1;
const BLANK = -2;

/**
 * Rows of characters as entries of the lattice. Blanks are for the eye and passed over, so that a
 * program that drops or adds some on the way does no harm.
 *
 * @returns `rows x knotsAcross` entries
 * @throws InputError when a row has not one character for each place, or one stands for nothing
 */
export function readLatticeRows(
  rows: readonly string[],
  lattice: Lattice,
  marks: RowMarks,
  locate: LocatePlace,
): Uint8Array {
  const across = knotsAcross(lattice);
  const entries = new Uint8Array(rows.length * across).fill(NOTHING);
  for (let row = 0; row < rows.length; row++) {
    const text = rows[row] as string;
    const room = knotsInRow(lattice, row);
    let place = 0;
    let character = 0;
    for (let i = 0; i < text.length; i++, character++) {
      const code = text.codePointAt(i) as number;
      if (code > 0xffff) i++;
      const entry = entryOf(code, marks);
      if (entry === BLANK) continue;
      if (entry === UNKNOWN) {
        throw new InputError(
          'unknown-mark',
          `${sentenceCase(quotedCharacter(String.fromCodePoint(code)))} stands for nothing.`,
          locate(row, place, character),
          marks.remedy,
        );
      }
      // A row without any place still needs a character, or its line would be blank.
      if (room === 0 && place === 0 && entry === NOTHING) continue;
      if (place === room) uneven(text, lattice, row, locate(row, place, character));
      entries[row * across + place++] = entry;
    }
    if (place < room) uneven(text, lattice, row, locate(row, place, character));
  }
  return entries;
}

function entryOf(code: number, marks: RowMarks): number {
  const entry = marks.entryOf.get(code);
  if (entry !== undefined) return entry;
  return isBlank(code) ? BLANK : UNKNOWN;
}

function isBlank(code: number): boolean {
  return code === 0x20 || /\s/.test(String.fromCodePoint(code));
}

/** How many characters a row has that are no blanks; counts up to twice the room for knots. */
export function marksInRow(text: string, most: number): number {
  let count = 0;
  for (const character of text) {
    if (!isBlank(character.codePointAt(0) as number) && ++count > most) break;
  }
  return count;
}

function uneven(text: string, lattice: Lattice, row: number, place: Place): never {
  const room = knotsInRow(lattice, row);
  const most = 2 * knotsAcross(lattice) + 2;
  const count = marksInRow(text, most);
  const has = count > most ? `more than ${most}` : count;
  const slot = firstSlotOf(lattice, row) + 1;
  const begins =
    room === 0
      ? `${lattice.strings} strings have no place for a knot in row ${row + 1}; it is written as one full stop`
      : `${lattice.strings} strings have ${room} ${room === 1 ? 'place' : 'places'} for knots in row ${row + 1}, which begins at string ${slot}`;
  throw new InputError(
    'row-uneven',
    `The row has ${has} ${count === 1 ? 'mark' : 'marks'}, but ${begins}.`,
    place,
    'Write one for each place, and . where no knot is; "first 2" lets the first row begin at the second string.',
  );
}

/**
 * The rows of a lattice as they are printed, in brick position: a character for each knot in the
 * column of its left string.
 *
 * @param marks character of each entry
 */
export function printLatticeRows(
  lattice: Lattice,
  entries: Uint8Array,
  marks: (entry: number) => string,
): string[] {
  const across = knotsAcross(lattice);
  const printed: string[] = [];
  for (let row = 0; row < lattice.rows; row++) {
    const places = knotsInRow(lattice, row);
    const parts: string[] = [];
    for (let place = 0; place < places; place++) {
      parts.push(marks(entries[row * across + place] as number));
    }
    printed.push(
      places === 0 ? BARE_MARK : `${' '.repeat(firstSlotOf(lattice, row))}${parts.join(' ')}`,
    );
  }
  return printed;
}

export function knotMark(entry: number): string {
  const kind = KNOT_KINDS[entry];
  return kind === undefined ? BARE_MARK : KNOT_MARKS[kind];
}
