import { InputError } from '../errors.js';

/** @param row the first row that the steps do not reach, from 0 */
export function rowMissing(row: number): InputError {
  return new InputError(
    'row-missing',
    `The steps of the plan end before row ${row + 1}.`,
    { row: row + 1 },
    'Verify the plan to see what is missing.',
  );
}
