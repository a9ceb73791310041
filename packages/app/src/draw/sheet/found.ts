import type { Piece } from '../../work/messages.js';
import type { Mark } from './marks.js';

/** What was found in a piece, as the sheet marks it; what is of no row is not marked. */
export function marksOf({ findings }: Piece): Mark[] {
  return findings.flatMap(({ grade, row, column, message }): Mark[] => {
    if (row === null) return [];
    return [{ grade, row: row - 1, column: column === null ? null : column - 1, message }];
  });
}
