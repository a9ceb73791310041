import { type Chart, printable, printChartDocument } from '@halfhitch/core';
import { figures } from '../view/figures.js';
import { WorkError } from '../work/work-error.js';
import { EMBEDDED_ID, jsonForMarkup } from './embedded.js';

/** Most knots of a piece that a page can show. */
const MOST_KNOTS_IN_PAGE = 100_000;

/** Beside the app's other files; made by build/tutorial-page.ts. */
const FILE = './tutorial-page.html';

const SLOT = `<script type="application/json" id="${EMBEDDED_ID}">`;

/**
 * A web page of its own that shows how a chart is knotted: one file that needs no other.
 *
 * @param chart with its edge and start
 * @throws WorkError when the piece is too large, or the empty page can't be had
 */
export async function tutorialOf(chart: Chart): Promise<string> {
  const knots = chart.rows * chart.columns;
  if (knots > MOST_KNOTS_IN_PAGE) {
    throw new WorkError(
      `A page can show at most ${figures(MOST_KNOTS_IN_PAGE)} knots; this piece has ${figures(knots)}. Export a piece with fewer rows, or the written instructions as print sheets.`,
    );
  }
  return filled(await emptyPage(), chart);
}

async function emptyPage(): Promise<string> {
  try {
    const response = await fetch(new URL(FILE, document.baseURI));
    const page = response.ok ? await response.text() : '';
    if (page.includes(SLOT)) return page;
  } catch {
    // Told of below.
  }
  throw new WorkError(
    'The parts for the page could not be fetched. Check the connection, and try again.',
  );
}

/** Only a title and JSON are put in; both hold nothing that means something in markup. */
function filled(page: string, chart: Chart): string {
  const title = (printable(chart.name) || 'Halfhitch').replace(
    /[&<>"']/g,
    (mark) => `&#${mark.charCodeAt(0)};`,
  );
  const held = jsonForMarkup(printChartDocument(chart));
  return page
    .replace('<title>Halfhitch</title>', () => `<title>${title}</title>`)
    .replace(SLOT, () => SLOT + held);
}
