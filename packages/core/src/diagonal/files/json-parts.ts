import { characters } from '../../chart/legend.js';
import type { JsonText } from '../../document/json.js';
import { DIAGONAL_LIMITS } from '../lattice.js';

/** Characters of a row at the most: a place for every string and a blank beside it. */
const LONGEST_ROW = 2 * DIAGONAL_LIMITS.maxStrings;

/** Reads the slot of the first knot of the first row, which counts from 1 in a file. */
export function readFirst(json: JsonText): 0 | 1 {
  return (json.integer(1, 2) - 1) as 0 | 1;
}

/** Reads the rows of a lattice as texts. */
export function readLatticeTexts(json: JsonText): string[] {
  const { maxRows } = DIAGONAL_LIMITS;
  const rows: string[] = [];
  json.array((index) => {
    const at = json.mark;
    if (index === maxRows) {
      json.fail(
        'too-many-rows',
        `There are more than ${maxRows} rows.`,
        `A diagonal pattern can have at most ${maxRows} rows.`,
      );
    }
    const row = json.string('a row of knots in double quotes');
    if (row.length > LONGEST_ROW && characters(row) > LONGEST_ROW) {
      json.fail(
        'row-too-long',
        `The row has more than ${LONGEST_ROW} characters.`,
        `A diagonal pattern can have at most ${DIAGONAL_LIMITS.maxStrings} strings.`,
        at,
      );
    }
    rows.push(row);
  });
  if (rows.length === 0) json.fail('no-rows', 'There are no rows.', 'Write at least one.');
  return rows;
}
