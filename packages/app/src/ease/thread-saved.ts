import {
  type Chart,
  type KnottingChoice,
  planAlpha,
  rowsOf,
  type Suggestion,
  withCells,
} from '@halfhitch/core';
import { type Lengths, usageOf } from '@halfhitch/geometry/thread';

/**
 * Thread that a suggestion saves in the leads, mm, by following both plans knot by knot through
 * the rows it touches. A lead that is not needed any more saves its tails too.
 *
 * @param tail at each end of a lead, mm
 */
export function threadSaved(
  chart: Chart,
  choice: KnottingChoice,
  suggestion: Suggestion,
  lengths: Lengths,
  tail: number,
): number {
  const { first, end } = suggestion.rows;
  const part = rowsOf(chart, first, end);
  const edits = suggestion.cells.map((edit) => ({ ...edit, row: edit.row - first }));
  const before = inLeads(part, choice, lengths);
  const after = inLeads(withCells(part, edits), suggestion.choice, lengths);
  return before - after + 2 * tail * suggestion.gain.leads;
}

function inLeads(chart: Chart, choice: KnottingChoice, lengths: Lengths): number {
  return usageOf(planAlpha(chart, choice), lengths).reduce(
    (sum, { knots, travel, floats }) => sum + knots + travel + floats,
    0,
  );
}
