// A diagonal pattern from a free drawing to the cord, and back after the page is loaded anew.
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe } from 'vitest';
import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';
import { seriousFindings, smallTargets } from './axe.js';
import { keptIs } from './tie-page.js';
import { asText, choose } from './workbench.js';

const SIZES: readonly (readonly [string, BrowserContextOptions])[] = [
  ['on a desktop', { ...DESKTOP, reducedMotion: 'reduce' }],
  [
    'on a small phone',
    {
      ...PHONE,
      viewport: { width: 360, height: 780 },
      deviceScaleFactor: 1,
      reducedMotion: 'reduce',
      colorScheme: 'dark',
    },
  ],
];

async function sound(page: Page, view: string): Promise<void> {
  expect(await seriousFindings(page), view).toEqual([]);
  const { over, small } = await smallTargets(page);
  expect({ over, small }, view).toEqual({ over: 0, small: [] });
}

async function goTo(page: Page, view: string): Promise<void> {
  await page.getByRole('link', { name: view, exact: true }).click();
}

/** Begins a lattice of eight strings without a knot. */
async function begin(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'New diagonal pattern' }).click();
  const dialog = page.getByRole('dialog', { name: 'A new diagonal pattern' });
  await dialog.getByLabel('Name', { exact: true }).fill('Heron burgee');
  await dialog.getByRole('spinbutton', { name: 'Strings' }).fill('8');
  await dialog.getByRole('spinbutton', { name: 'Rows' }).fill('9');
  await dialog.getByRole('button', { name: 'Begin' }).click();
  await page.locator('halfhitch-diagonal-draw .sheet-cell').waitFor();
}

/** A stroke over the lattice, in shares of its width and height. */
async function stroke(page: Page, ...points: (readonly [number, number])[]): Promise<void> {
  const sheet = page.locator('halfhitch-lattice');
  await sheet.scrollIntoViewIfNeeded();
  const box = await sheet.boundingBox();
  if (box === null) throw new Error('There is no lattice.');
  for (const [i, [x, y]] of points.entries()) {
    await page.mouse.move(box.x + x * box.width, box.y + y * box.height, { steps: 6 });
    if (i === 0) await page.mouse.down();
  }
  await page.mouse.up();
}

describe('a diagonal pattern', () => {
  test.for(SIZES)(
    '%s: drawn freely, knotted by the search, checked, tied, looked into and kept',
    async ([, size], { openPage }) => {
      const page = await openPage('#draw', size);
      await begin(page);

      // Any colour was wanted; three strokes and one knot by keys say what is.
      await page.locator('.draw-colours .chip', { hasText: 'lake blue' }).click();
      await stroke(page, [0.5, 0.2], [0.4, 0.35], [0.55, 0.5]);
      await page.locator('.draw-colours .chip', { hasText: 'buoy orange' }).click();
      await stroke(page, [0.6, 0.3], [0.5, 0.45]);
      await page.locator('.sheet-cell').press('Home');
      await page.keyboard.press('1');
      await page.keyboard.press('Enter');
      expect(await page.locator('.sheet-cell').getAttribute('aria-label')).toMatch(/: chalk$/);
      expect(await page.locator('.solve-state').textContent()).toMatch(/Not knotted yet/);
      await sound(page, 'Draw');

      await page.getByRole('button', { name: 'Find a way to knot it' }).click();
      await page.locator('.solve-said').filter({ hasText: 'just what was drawn' }).waitFor();
      await page.locator('.solve-state.good').waitFor();

      await goTo(page, 'Check');
      await page.locator('.stamp').filter({ hasText: 'Knots out as drawn' }).waitFor();
      expect(await page.locator('.about .size').textContent()).toMatch(/9 rows\s+on 8 strings/);
      await page.locator('halfhitch-knot').waitFor();
      await sound(page, 'Check');

      await goTo(page, 'Cut');
      await page.locator('.cut-table').first().waitFor();
      expect(await page.locator('halfhitch-cut').textContent()).toContain('9 rows on 8 strings');

      await goTo(page, 'Tie');
      for (let knot = 0; knot < 5; knot++) {
        await page.getByRole('button', { name: 'Tied', exact: true }).click();
      }
      await keptIs(page, 5);
      await page.getByText('Something looks wrong?').click();
      await page.getByRole('button', { name: 'All as drawn' }).click();
      await page.locator('.wrong-card .seen-inks .chip').filter({ hasText: 'No knot' }).click();
      await page.locator('.wrong-card .sheet-cell').focus();
      await page.keyboard.press('Enter');
      await page.getByRole('button', { name: 'Find out what happened' }).click();
      const told = page.locator('.told .explanation').first();
      await told.waitFor();
      expect(await told.textContent()).toMatch(/The knot in row 1 at slots 1-2 is left out/);
      await sound(page, 'Tie');

      await goTo(page, 'Keep');
      const listed = page.locator('.library-item', { hasText: 'Heron burgee' });
      await listed.waitFor();
      expect(await listed.textContent()).toMatch(/Diagonal, 9 rows on 8 strings/);
      await page.goto(page.url().replace('#keep', '#tie'));
      await page.reload();
      await keptIs(page, 5);
    },
  );

  test('that cannot be knotted is offered as its nearest neighbour, with what differs marked', async ({
    openPage,
  }) => {
    const page = await openPage('#draw', { ...DESKTOP, reducedMotion: 'reduce' });
    await page.getByRole('button', { name: 'New diagonal pattern' }).waitFor();
    // Three strings show three colours at most, and here are four.
    const legend = ['o #d9642a', 'w #f4f1e8', 'b #1f6fb2', 'r #3f7d4e'];
    const rows = ['o', ' w', 'b', ' r'];
    const text = ['picture diagonal', ...legend, '', ...rows, ''].join('\n');
    await choose(page, asText(Buffer.from(text), 'four.txt'));
    await page.getByRole('button', { name: 'Find a way to knot it' }).click();
    const offer = page.locator('.solve-offer');
    await offer.waitFor();
    expect(await offer.textContent()).toMatch(/Proven.*differs in 1 knot, and no pattern comes/s);

    // Told of the knot itself, not by colour alone; which one differs is for the solver to say.
    const heard: string[] = [];
    await page.locator('.sheet-cell').focus();
    for (const _ of rows) {
      heard.push((await page.locator('#sheet-about').textContent()) ?? '');
      await page.keyboard.press('ArrowDown');
    }
    expect(heard.filter((words) => /^Wanted: .+ The knots show .+/.test(words))).toHaveLength(1);

    await page.getByLabel('What stands in the way').check();
    expect(await page.locator('#sheet-about').textContent()).toMatch(/can't be knotted together/);
    await page.getByRole('button', { name: 'Back to my drawing' }).click();
    expect(await page.locator('.solve-state').textContent()).toMatch(/Not knotted yet/);

    await page.getByRole('button', { name: 'Find a way to knot it' }).click();
    await page.getByRole('button', { name: 'Take the nearest pattern' }).click();
    await page.locator('.solve-state.good').waitFor();
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    expect(await page.locator('.solve-state').textContent()).toMatch(/Not knotted yet/);
  });
});
