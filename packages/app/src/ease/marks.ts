import type { Grade } from '@halfhitch/core';
import type { Piece } from '../work/messages.js';

/** A place on the chart where something was found; rows and columns from 0. */
export interface Mark {
  readonly row: number;
  readonly column: number;
  readonly grade: Grade;
  /** All that was found there, the gravest first. */
  readonly messages: readonly string[];
}

const GRAVITY: Readonly<Record<Grade, number>> = { wrong: 0, weak: 1, note: 2 };

/** Where on its chart a piece has findings, once for each place, with the gravest grade. */
export function marksOf({ findings, rows, columns }: Pick<Piece, 'findings' | 'rows' | 'columns'>) {
  const marks = new Map<number, Mark>();
  const gravest = [...findings].sort((one, other) => GRAVITY[one.grade] - GRAVITY[other.grade]);
  for (const { row, column, grade, message } of gravest) {
    if (row === null || column === null || row > rows || column > columns) continue;
    const place = (row - 1) * columns + column - 1;
    const mark = marks.get(place) ?? { row: row - 1, column: column - 1, grade, messages: [] };
    marks.set(place, { ...mark, messages: [...mark.messages, message] });
  }
  return [...marks.values()].sort((one, other) => one.row - other.row || one.column - other.column);
}
