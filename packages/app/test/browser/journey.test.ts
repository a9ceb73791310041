// The whole job as a new user does it: from typing a boat's name to a sheet of paper.
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe } from 'vitest';
import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';
import { inHand, keptIs } from './tie-page.js';
import { demoShown } from './workbench.js';

const SIZES: readonly (readonly [string, BrowserContextOptions])[] = [
  ['on a desktop', { ...DESKTOP, reducedMotion: 'reduce' }],
  [
    'on a small phone',
    {
      ...PHONE,
      viewport: { width: 360, height: 780 },
      deviceScaleFactor: 1,
      reducedMotion: 'reduce',
    },
  ],
];

async function goTo(page: Page, view: string): Promise<void> {
  await page.getByRole('link', { name: view, exact: true }).click();
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth),
    `${view} goes over the side`,
  ).toBe(true);
}

describe('the whole way', () => {
  test.for(SIZES)(
    '%s: words, verdict, thread, two rows tied, a sheet printed',
    async ([, size], { openPage }) => {
      const page = await openPage('', size);
      await demoShown(page);

      await goTo(page, 'Draw');
      await page.getByRole('button', { name: 'Letters' }).click();
      await page.getByLabel('What to write').fill('Kittiwake');
      await page.getByRole('button', { name: 'Use this' }).click();
      await page.getByRole('button', { name: 'Open as a new piece' }).click();
      await page.getByRole('heading', { name: 'Kittiwake' }).waitFor();
      await page.locator('.stamp').filter({ hasText: 'Knots out as drawn' }).waitFor();

      await goTo(page, 'Check');
      const inWords = (await page.locator('.about .size').textContent()) ?? '';
      const [rows, columns] = (inWords.match(/\d+/g) ?? []).map(Number) as [number, number];
      // The letters go along the band.
      expect(rows).toBeGreaterThan(2 * columns);

      await goTo(page, 'Cut');
      await page.locator('.cut-table').first().waitFor();
      const cut = (await page.locator('halfhitch-cut').textContent())?.replace(/\s+/g, ' ');
      expect(cut).toContain(`${rows} rows of ${columns} knots`);

      await goTo(page, 'Tie');
      await inHand(page, 'Backward-forward knot on base string 1');
      for (let knot = 0; knot < columns; knot++) {
        await page.getByRole('button', { name: 'Tied', exact: true }).click();
      }
      await inHand(page, `Forward-backward knot on base string ${columns}`);
      await page.getByRole('button', { name: 'The row is tied' }).click();
      await inHand(page, 'Backward-forward knot on base string 1');
      const piece = page.locator('.tie-bar').nth(1);
      expect(await piece.textContent()).toContain(`${2 * columns} of`);

      // Nothing of it is lost when the page is loaded anew.
      await keptIs(page, 2 * columns);
      await page.reload();
      await expect.poll(() => piece.textContent()).toContain(`${2 * columns} of`);

      await goTo(page, 'Keep');
      await page.getByRole('button', { name: 'Show the sheets' }).click();
      await page.locator('.sheets').waitFor();
      expect(await page.locator('.sheets').textContent()).toContain('Kittiwake');
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
      expect(pdf.slice(0, 5)).toBe('%PDF-');
      expect(pdf.match(/\/Type\s*\/Page\b/g)?.length).toBeGreaterThan(1);
    },
  );
});
