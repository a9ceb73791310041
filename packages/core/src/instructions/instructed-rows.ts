import { InputError } from '../errors.js';

/**
 * Instructions row by row; in place of a row that cannot be read, the error, as the last.
 *
 * @param read reads a row, counted from 0
 */
export function* instructedRows<Row, Instructions>(
  rows: number,
  read: (row: number) => Row,
  instruct: (row: Row) => Instructions,
): Generator<Instructions | InputError, void, undefined> {
  for (let at = 0; at < rows; at++) {
    let row: Row;
    try {
      row = read(at);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      yield error;
      return;
    }
    yield instruct(row);
  }
}
