import {
  type Chart,
  closingSection,
  instructRow,
  KNOT_KINDS,
  openingSections,
  PlanReader,
  planAlpha,
  type RowInstructions,
  type Section,
  verifyPlan,
} from '@halfhitch/core';
import type { KnotChoice } from '../work/messages.js';

/** What the sheets say in words, and the edge knots beside the chart. */
export interface Written {
  /** Whether it knots out as drawn. */
  readonly ok: boolean;
  readonly opening: readonly Section[];
  readonly closing: Section;
  readonly rows: readonly RowInstructions[];
  /** Kinds of the edge knots, left and right of each row of the whole chart. */
  readonly edges: Uint8Array;
}

/** @param rows first row and end of those to be written out, from 0 */
export function written(
  chart: Chart,
  choice: KnotChoice,
  rows: { readonly first: number; readonly end: number },
): Written {
  const plan = planAlpha(chart, choice);
  const { ok, kinds } = verifyPlan(plan, chart);
  const reader = new PlanReader(plan);
  const told: RowInstructions[] = [];
  for (let row = rows.first; row < rows.end; row++) told.push(instructRow(reader.row(row), plan));
  const edges = new Uint8Array(2 * chart.rows).fill(KNOT_KINDS.length);
  for (let row = 0; row < chart.rows; row++) {
    edges[2 * row] = kinds[row * chart.columns] ?? KNOT_KINDS.length;
    edges[2 * row + 1] = kinds[(row + 1) * chart.columns - 1] ?? KNOT_KINDS.length;
  }
  return { ok, opening: openingSections(plan), closing: closingSection(plan), rows: told, edges };
}
