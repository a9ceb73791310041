// For the elements' types in scripts that run in the page.
import type {} from '@halfhitch/simulator';
import type { Locator, Page } from 'playwright-core';
import { asText, choose, textChart } from './workbench.js';

/** Five knots wide, with a change within the second row. */
export const ROWS = ['bbbbb', 'bboob', 'bbbbb', 'ooooo'];

/** Opens a chart of the club's in a page that is at the Tie view. */
export async function openTied(page: Page, rows: readonly string[] = ROWS): Promise<void> {
  await page.locator('.tie-done').waitFor();
  await choose(page, asText(textChart(rows)));
  const columns = `of ${rows[0]?.length}`;
  await page.locator('.tie-field:nth-of-type(2) .of', { hasText: columns }).waitFor();
}

/** Waits until a knot is in hand: "Forward knot on base string 4". */
export async function inHand(page: Page, heading: string): Promise<void> {
  await page.getByRole('heading', { name: heading, exact: true }).waitFor();
}

/** Waits until so many knots are kept. */
export async function keptIs(page: Page, knots: number): Promise<void> {
  await page.locator(`.tie-kept.kept[data-kept="${knots}"]`).waitFor();
}

/** The colour change of the session: what another view would do to the drawing. */
export async function redraw(
  page: Page,
  change: { readonly cell?: readonly [number, number]; readonly columns?: number },
): Promise<void> {
  await page.evaluate(({ cell, columns }) => {
    const { session } = document.querySelector('halfhitch-workbench') as unknown as {
      session: {
        project: { chart: { columns: number; rows: number; cells: Uint8Array } };
        edit(change: object, what: string): void;
      };
    };
    const { chart } = session.project;
    const cells = chart.cells.slice();
    if (cell !== undefined) {
      const at = cell[0] * chart.columns + cell[1];
      cells[at] = cells[at] === 0 ? 1 : 0;
      session.edit({ chart: { ...chart, cells } }, 'Draw a cell');
    }
    if (columns !== undefined) {
      const next = { ...chart, columns, cells: new Uint8Array(chart.rows * columns) };
      session.edit({ chart: next }, 'Change the columns');
    }
  }, change);
}

/** Text as it is read, without the breaks of its source. */
export async function wordsOf(part: Locator): Promise<string> {
  return ((await part.textContent()) ?? '').replace(/\s+/g, ' ').trim();
}
