import { knotsInLattice } from '../diagonal/lattice.js';
import type { DiagonalPattern } from '../diagonal/pattern.js';
import type { DiagonalPlan } from '../diagonal/plan.js';
import { simulateDiagonal } from '../diagonal/simulate.js';
import { drawDiagonal } from '../diagonal-picture/draw-diagonal.js';
import { drawLattice } from '../diagonal-picture/draw-lattice.js';
import {
  checkPageSize,
  legendHtml,
  MOST_KNOTS_SHOWN,
  pageHead,
  rowSectionHtml,
  rowsAndEndHtml,
  sectionHtml,
  verdictHtml,
} from '../instructions/page.js';
import { findingsCounted } from '../instructions/summary.js';
import { titleOf } from '../instructions/text.js';
import { count } from '../instructions/wording.js';
import { escapeMarkup } from '../picture/markup.js';
import { closingDiagonalSection, openingDiagonalSections } from './opening.js';
import type { DiagonalRowInstructions } from './parts.js';
import { type DiagonalVerdict, diagonalFindingInWords, kindsInWords } from './summary.js';
import { diagonalRowsOf, sizeInWords } from './text.js';

/** Rows in one picture; longer patterns are drawn in several, so that they can be printed. */
const ROWS_IN_PICTURE = 60;

/**
 * The instructions of a diagonal piece as one page of HTML that needs nothing else, in pieces, a
 * row at a time. It is made to be printed and to be read aloud.
 *
 * @throws InputError above 300,000 knots
 */
export function* diagonalInstructionsHtml(
  plan: DiagonalPlan,
  pattern: DiagonalPattern,
  verdict: DiagonalVerdict,
): Generator<string, void, undefined> {
  const knots = knotsInLattice(pattern);
  checkPageSize(knots);
  const reading = simulateDiagonal(pattern);
  yield pageHead(titleOf(plan, pattern));
  yield `<p>${escapeMarkup(sizeInWords(plan))}</p>\n`;
  const counts = `${count(verdict.knots, 'knot')}, ${count(verdict.halfHitches, 'half hitch', 'half hitches')}. ${kindsInWords(pattern)}`;
  yield verdictHtml(verdict.ok, counts, findingsCounted(verdict.findings));
  yield `<h2>Pattern</h2>\n<p>Rows are numbered from the top, slots from the left. Each knot has the colour of the string that ties it.</p>\n${legendHtml(pattern.colours, new Set(pattern.start))}<div class="wide" role="region" aria-label="Pattern" tabindex="0">\n`;
  for (let from = 0; from < pattern.rows; from += ROWS_IN_PICTURE) {
    const end = Math.min(pattern.rows, from + ROWS_IN_PICTURE);
    yield drawLattice(reading.picture, { from, end, idPrefix: `hh-${from}-` });
  }
  yield '</div>\n';
  if (knots <= MOST_KNOTS_SHOWN) yield `<h2>The finished work</h2>\n${drawDiagonal(reading)}`;
  for (const part of openingDiagonalSections(plan)) yield sectionHtml(part);
  yield* rowsAndEndHtml(
    diagonalRowsOf(plan),
    rowHtml,
    closingDiagonalSection(plan),
    verdict.findings.map(diagonalFindingInWords),
  );
}

function rowHtml(row: DiagonalRowInstructions): string {
  const told = row.parts.filter(({ kind }) => kind === 'row').map(({ text }) => text);
  const todo = row.parts.filter(({ kind }) => kind !== 'row');
  return rowSectionHtml(row, told, todo);
}
