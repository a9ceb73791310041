import type { Chart } from '../chart/chart.js';
import { drawChart } from '../picture/draw-chart.js';
import { drawFabric } from '../picture/draw-fabric.js';
import type { Plan } from '../plan/plan.js';
import type { Verification } from '../verify/verification.js';
import { closingSection, openingSections } from './opening.js';
import {
  checkPageSize,
  legendHtml,
  MOST_KNOTS_SHOWN,
  pageHead,
  rowSectionHtml,
  rowsAndEndHtml,
  sectionHtml,
  verdictHtml,
} from './page.js';
import type { RowInstructions } from './parts.js';
import { changesInWords, findingInWords, findingsCounted } from './summary.js';
import { rowsOf, titleOf } from './text.js';
import { count } from './wording.js';

/**
 * The instructions of a whole piece as one page of HTML that needs nothing else, in pieces, a row
 * at a time. It is made to be printed and to be read aloud.
 *
 * @throws InputError above 300,000 knots
 */
export function* instructionsHtml(
  plan: Plan,
  chart: Chart,
  verification: Verification,
): Generator<string, void, undefined> {
  checkPageSize(plan.rows * plan.columns);
  yield pageHead(titleOf(plan, chart));
  yield `<p>${count(plan.rows, 'row')} of ${count(plan.columns, 'knot')}, ${plan.edge} edges.</p>
`;
  const { ok, knots, halfHitches, changes, findings } = verification;
  const counts = `${count(knots, 'knot')}, ${count(halfHitches, 'half hitch', 'half hitches')}. ${changesInWords(changes)}`;
  yield verdictHtml(ok, counts, findingsCounted(findings));
  yield `<h2>Chart</h2>\n<p>Rows are numbered from the top. Beside each row stands the way it is knotted.</p>\n${legendHtml(chart.colours, new Set(chart.cells))}<div class="wide" role="region" aria-label="Chart" tabindex="0">\n`;
  for (const piece of drawChart(chart, plan)) yield `${piece}\n`;
  yield '</div>\n';
  if (plan.rows * plan.columns <= MOST_KNOTS_SHOWN) {
    yield `<h2>The finished work</h2>\n${drawFabric({ plan, verification })}`;
  }
  for (const part of openingSections(plan)) yield sectionHtml(part);
  yield* rowsAndEndHtml(rowsOf(plan), rowHtml, closingSection(plan), findings.map(findingInWords));
}

function rowHtml(row: RowInstructions): string {
  const told = row.parts.filter((part) => part.kind === 'direction').map((part) => part.text);
  const todo = row.parts.filter((part) => part.kind !== 'direction');
  return rowSectionHtml(row, told, todo);
}
