import { describe } from 'vitest';
import { expect, test } from '../../../../testing/browser.js';
import { choose, demoShown, pngChart } from './workbench.js';

const PALETTE = [
  [31, 111, 178],
  [244, 241, 232],
  [217, 100, 42],
] as const;

describe('the largest chart', () => {
  test('three million knots are proven while the page goes on answering, and drawn in part', async ({
    openPage,
  }) => {
    const page = await openPage('', {
      reducedMotion: 'reduce',
      viewport: { width: 1280, height: 800 },
    });
    await demoShown(page);
    const chart = pngChart(300, 10_000, (row, column) => {
      return PALETTE[(Math.floor(row / 25) + Math.floor(column / 60)) % 3] ?? PALETTE[0];
    });
    await choose(page, { name: 'longest.png', mimeType: 'image/png', buffer: chart });
    // Asked of the page at once: were the chart worked out in the page, this would wait for it.
    await page
      .getByRole('status')
      .filter({ hasText: 'Working the chart out.' })
      .waitFor({ state: 'attached' });
    await page.getByRole('heading', { name: 'longest' }).waitFor();
    expect(await page.locator('.verdict').textContent()).toContain('3,000,000 knots');
    const tiles = (): Promise<number> => page.locator('.fabric-sheet img').count();
    await expect.poll(tiles).toBeGreaterThan(0);
    await page.locator('.fabric-cell').focus();
    await page.keyboard.press('Control+End');
    await page.getByRole('heading', { name: /^Row 10,?000/ }).waitFor();
    await expect
      .poll(() =>
        page.evaluate(() => {
          const fabric = document.querySelector('halfhitch-fabric');
          if (!fabric) return false;
          const sight = fabric.getBoundingClientRect();
          return [...fabric.querySelectorAll('img')].some((image) => {
            const box = image.getBoundingClientRect();
            return image.complete && box.bottom > sight.top && box.top < sight.bottom;
          });
        }),
      )
      .toBe(true);
    expect(await tiles()).toBeLessThan(40);
    await page.getByRole('link', { name: 'Cut', exact: true }).click();
    // A cut list of so much is worked out when it is asked for, and not before.
    await page.getByRole('button', { name: 'Work out the cut list' }).waitFor();
    expect(await page.locator('.cut-table').count()).toBe(0);
    expect(await page.locator('*').count()).toBeLessThan(5000);
  });
});
