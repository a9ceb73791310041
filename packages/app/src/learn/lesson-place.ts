/**
 * Lessons made from the open chart: about one knot of it, and the list of what it can teach. Works
 * on plain values and needs no page; planning is done anew here, since the answers of a lesson are
 * worked out as they are chosen and so cannot come from a worker.
 */

import { type Chart, InputError, type Plan, PlanReader, planAlpha } from '@halfhitch/core';
import {
  caseOf,
  type Lesson,
  type LessonName,
  type LessonOptions,
  lessonFor,
} from '@halfhitch/simulator/lessons';
import { figures } from '../view/figures.js';
import type { KnotChoice } from '../work/messages.js';
import type { LessonPlace } from './show-lesson.js';

/** What of a piece a lesson is made from. */
export interface TaughtPiece {
  readonly chart: Chart;
  readonly choice: KnotChoice;
}

/** A case that the chart has, and the first place at which it comes in the order of knotting. */
export interface TaughtCase extends LessonPlace {
  readonly name: LessonName;
  /** How many knots of the chart are such a case. */
  readonly knots: number;
}

/** Largest piece that lessons are made from, in knots: above it the page would stand still. */
export const MOST_TAUGHT = 100_000;

/** Largest piece that is searched for all its cases. */
export const MOST_SEARCHED = 30_000;

/**
 * The lesson about a knot of a piece: its turn, its change of lead, its edge or its knot.
 *
 * @throws InputError when the piece has no such knot, cannot be planned, or has over 100,000 knots
 */
export function lessonPlace(
  piece: TaughtPiece,
  { row, column }: LessonPlace,
  options: LessonOptions = {},
): Lesson {
  const { rows, columns } = piece.chart;
  if (rows * columns > MOST_TAUGHT) {
    throw new InputError(
      'piece-too-large',
      `The chart has ${figures(rows * columns)} knots; a lesson is made of charts up to ${figures(MOST_TAUGHT)}.`,
      {},
      'Make a chart of the rows you want to see, and open that.',
    );
  }
  if (!isPlace(row, rows) || !isPlace(column, columns)) {
    throw new InputError(
      'no-such-knot',
      `The chart has no knot in row ${row + 1}, column ${column + 1}.`,
      {},
      `Choose a row from 1 to ${rows} and a column from 1 to ${columns}.`,
    );
  }
  return lessonFor(planOf(piece), row, column, options);
}

/** What the piece can teach, in the order in which it comes; null for one too large to search. */
export function taughtCases(piece: TaughtPiece): readonly TaughtCase[] | null {
  const { rows, columns } = piece.chart;
  if (rows * columns > MOST_SEARCHED) return null;
  const plan = planOf(piece);
  const reader = new PlanReader(plan);
  const found = new Map<LessonName, TaughtCase>();
  for (let row = 0; row < rows; row++) {
    for (const knot of reader.row(row).knots) {
      const name = caseOf(knot);
      const first = found.get(name);
      const knots = (first?.knots ?? 0) + 1;
      found.set(name, { ...(first ?? { name, row, column: knot.column }), knots });
    }
  }
  return [...found.values()];
}

function planOf({ chart, choice }: TaughtPiece): Plan {
  return planAlpha(chart, choice);
}

function isPlace(at: number, many: number): boolean {
  return Number.isInteger(at) && at >= 0 && at < many;
}
