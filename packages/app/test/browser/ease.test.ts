import type { Page } from 'playwright-core';
import { describe } from 'vitest';
import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';
import { seriousFindings, smallTargets } from './axe.js';
import { asText, choose, demoShown, STILL, textChart } from './workbench.js';

/** Stray knots, and a first row that is better started from the right. */
const STREWN = textChart(['bbbbbbo', 'bbobbbb', 'bbbbbbb', 'bbbbwbb', 'bbbbbbb', 'bbbbbbb']);

const items = (page: Page): Promise<string[]> =>
  page.locator('.ease-list li').evaluateAll((list) => list.map((item) => item.textContent ?? ''));

async function changes(page: Page): Promise<number> {
  const text = (await page.locator('halfhitch-ease').textContent()) ?? '';
  return Number(/As it is:\s+(\d+|no) colour change/.exec(text)?.[1]);
}

async function opened(page: Page): Promise<void> {
  await demoShown(page);
  await choose(page, asText(STREWN));
  await page.getByRole('heading', { name: 'Kittiwake' }).waitFor();
  await expect.poll(() => changes(page)).toBe(6);
}

describe('what would be easier', () => {
  test('is listed with what it saves, applied with one click, and undone', async ({ openPage }) => {
    const page = await openPage('', STILL);
    await opened(page);
    const before = await items(page);
    const what = 'Row 2, column 3: tie the lone knot of buoy orange in lake blue.';
    const item = page.locator('.ease-list li').filter({ hasText: what });
    expect(await item.textContent()).toMatch(
      /Saves 2 colour changes.*about \d+ cm of thread and about 40 seconds\./,
    );
    await item.getByRole('button', { name: `Apply: ${what}` }).click();
    await expect.poll(() => changes(page)).toBe(4);
    expect((await items(page)).some((text) => text.includes(what))).toBe(false);
    await page.locator('.ease-done').getByText('recolour a knot').waitFor();
    await page.getByRole('button', { name: 'Undo it' }).click();
    await expect.poll(() => changes(page)).toBe(6);
    expect(await items(page)).toEqual(before);

    await page.getByRole('button', { name: /^Apply: Tie all 3 stray knots/ }).click();
    await page.getByText('Nothing small was found').waitFor();
    expect(await changes(page)).toBeNaN();
  });

  test('is shown on the chart', async ({ openPage }) => {
    const page = await openPage('', STILL);
    await opened(page);
    await page.getByRole('button', { name: /^Show: Row 4, column 5/ }).click();
    const cell = page.locator('.fabric-cell');
    await expect.poll(() => cell.getAttribute('aria-colindex')).toBe('5');
    expect(await cell.locator('..').getAttribute('aria-rowindex')).toBe('4');
  });

  test('has the best way to start, and mirrored ones when they are allowed', async ({
    openPage,
  }) => {
    const page = await openPage('', STILL);
    await opened(page);
    const panel = page.locator('halfhitch-ease');
    await panel.getByText('All ways, and what each costs').click();
    expect(await panel.locator('.ease-ways tbody tr').count()).toBe(2);
    await panel.getByLabel('The drawing may be mirrored').check();
    await expect.poll(() => panel.locator('.ease-ways tbody tr').count()).toBe(8);
    await panel.getByLabel('The drawing may be mirrored').uncheck();
    await panel.getByRole('button', { name: 'Start from the right', exact: true }).click();
    await expect.poll(() => page.getByLabel('First row from the').inputValue()).toBe('right');
    await panel.getByText('As it is now, from the right, is the best').waitFor();
  });

  test('goes by the pace that is filled in, and says what cannot be one', async ({ openPage }) => {
    const page = await openPage('', STILL);
    await opened(page);
    await page.getByText('How fast you knot').click();
    await page.getByLabel('Seconds more for a colour change').fill('33');
    await page.getByText('about 66 seconds').first().waitFor();
    await page.getByLabel('Seconds for a half hitch').fill('fast');
    await page.getByText('Give a number from 0.5 to 60.').waitFor();
  });

  for (const [name, options] of [
    ['phone, light', { ...PHONE, colorScheme: 'light' }],
    ['desktop, dark', { ...DESKTOP, colorScheme: 'dark' }],
  ] as const) {
    test(`axe finds nothing serious, nothing goes over the side: ${name}`, async ({ openPage }) => {
      const page = await openPage('', { ...options, reducedMotion: 'reduce' });
      await demoShown(page);
      await page.locator('.ease-list li').first().waitFor();
      await page.getByText('All ways, and what each costs').click();
      await page.getByText('How fast you knot').click();
      expect(await seriousFindings(page)).toEqual([]);
      expect(await smallTargets(page)).toEqual({ over: 0, small: [] });
    });
  }
});

test('on a phone the picture and the knot come right after the verdict', async ({ openPage }) => {
  const parts = (page: Page): Promise<string[]> =>
    page
      .locator('main section')
      .evaluateAll((sections) => sections.map((section) => section.classList[1] ?? ''));
  const page = await openPage('', PHONE);
  await demoShown(page);
  const asides = ['ease-card', 'try-card', 'wrong-card'];
  expect(await parts(page)).toEqual(['about', 'result', 'watch', 'row-card', ...asides, 'setup']);
  // Seen in the order in which they are read out.
  const tops = await page
    .locator('main section')
    .evaluateAll((sections) => sections.map((section) => section.getBoundingClientRect().top));
  expect(tops).toEqual([...tops].sort((a, b) => a - b));
  await page.setViewportSize({ width: 1300, height: 800 });
  const onDesk = ['about', 'setup', 'result', 'watch', 'row-card', ...asides];
  await expect.poll(() => parts(page)).toEqual(onDesk);
});
