import type { ThreadString } from '../model/strings.js';
import type { Plan } from '../plan/plan.js';
import type { Follower } from './follower.js';
import type { FindingLog } from './log.js';
import * as say from './messages.js';
import { NO_KNOT } from './standing.js';
import type { Technique } from './technique.js';

/** What can only be said once every step has been followed. */

/** Rows that the steps never reach lack every knot. */
export function reportUnreached(follower: Follower, rows: number): void {
  if (follower.row >= rows) return;
  follower.missRest();
  for (let row = follower.row + 1; row < rows; row++) {
    follower.row = row;
    follower.order = 0;
    follower.missRest();
  }
}

/** At each turn on the inner side both edge knots must be there, or the edge pulls in. */
export function reportSingleEdges(
  follower: Follower,
  technique: Technique,
  rows: number,
  log: FindingLog,
): void {
  const { columns } = technique;
  const tied = (row: number, column: number): boolean =>
    follower.tying[row * columns + column] !== NO_KNOT;
  for (let row = 0; row + 1 < rows; row++) {
    const column = technique.columnAt(row, columns - 1);
    if (!technique.turnsInside(column)) continue;
    const above = tied(row, column);
    const below = tied(row + 1, column);
    if (above === below) continue;
    log.add('weak', 'single-edge-knot', above ? row + 1 : row, column, () =>
      say.singleEdge(`B${column + 1}`),
    );
  }
}

/**
 * Says what keeps the pattern from being knotted again right below itself. Only leads tie, so base
 * strings keep their order in a piece without anything wrong.
 */
export function reportRepeat(
  plan: Plan,
  follower: Follower,
  technique: Technique,
  log: FindingLog,
): void {
  const { rows, columns } = plan;
  const last = (rows - 1) * columns + technique.columnAt(rows - 1, columns - 1);
  const colourOf = (cell: number): string =>
    (plan.strings[follower.tying[cell] as number] as ThreadString).colour;
  const note = (text: () => string): unknown =>
    log.add('note', 'repeat-does-not-close', -1, -1, text);
  if (rows % 2 === 1) note(say.sidesDiffer);
  else if (colourOf(technique.columnAt(0, 0)) !== colourOf(last)) note(say.coloursDiffer);
}
