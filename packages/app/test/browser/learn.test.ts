import type { Page } from 'playwright-core';
import { describe } from 'vitest';
import { expect, test } from '../../../../testing/browser.js';
import { seriousFindings } from './axe.js';
import { STILL } from './workbench.js';

const PHONE_360 = { ...STILL, viewport: { width: 360, height: 740 } };

async function listShown(page: Page): Promise<void> {
  await page.getByRole('heading', { name: 'In your chart' }).waitFor();
  await page.locator('[data-from^="chart-"]').first().waitFor();
}

const over = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe('the view of the lessons', () => {
  test('lists all, opens one at a time, and remembers what has been gone through', async ({
    openPage,
  }) => {
    const page = await openPage('#learn', PHONE_360);
    await listShown(page);
    expect(await page.locator('.lessons').first().locator('.lesson-card').count()).toBe(3);
    expect(await page.locator('.lesson-card:not([data-from^="chart-"])').count()).toBe(20);
    expect(await over(page)).toBe(0);
    expect(await seriousFindings(page)).toEqual([]);
    const card = page.locator('[data-from=turn]');
    await card.click();
    const lesson = page.locator('halfhitch-lesson');
    await lesson.locator('h2', { hasText: 'The turn' }).waitFor();
    expect(
      await page.locator('.learn-back').evaluate((one) => one === document.activeElement),
    ).toBe(true);
    expect(await over(page)).toBe(0);
    await lesson.getByRole('button', { name: 'Next page' }).click();
    await lesson.getByRole('button', { name: 'Next page' }).click();
    await lesson.getByRole('button', { name: /^Forward:/ }).click();
    expect(await page.locator('.learn-end').textContent()).not.toContain('all of this lesson');
    await lesson.getByRole('button', { name: /^Forward-backward:/ }).click();
    await page.locator('.learn-end', { hasText: 'That was all of this lesson.' }).waitFor();
    expect(await page.getByRole('button', { name: /^Next lesson: Wrapped/ }).isVisible()).toBe(
      true,
    );
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'All lessons' }).click();
    await card.locator('.lesson-learned').waitFor();
    expect(await card.evaluate((one) => one === document.activeElement)).toBe(true);
    await page.reload();
    await listShown(page);
    expect(await page.locator('.lesson-learned').count()).toBe(1);
  });

  test('speaks German when asked to, and mirrors for the left hand', async ({ openPage }) => {
    const page = await openPage('#learn', STILL);
    await listShown(page);
    await page.getByLabel('Language').selectOption('de');
    await page.getByRole('heading', { name: 'Lernen' }).waitFor();
    expect(await page.locator('halfhitch-learn > section').getAttribute('lang')).toBe('de');
    await page.getByLabel('Ich knüpfe mit links').check();
    await page.locator('[data-from=edge-right]').click();
    await page.locator('halfhitch-lesson h2', { hasText: 'Ein gerader Rand links' }).waitFor();
    expect(await seriousFindings(page)).toEqual([]);
  });

  test('opens the lesson of any knot of the chart, also when another view asks', async ({
    openPage,
  }) => {
    const page = await openPage('#learn', STILL);
    await listShown(page);
    const lesson = page.locator('halfhitch-lesson');
    await page.locator('[data-from=chart-turn]').click();
    await lesson.locator('h2', { hasText: 'The turn' }).waitFor();
    await page.getByRole('button', { name: 'All lessons' }).click();
    await page.locator('.learn-chooser input[name=row]').fill('2');
    await page.locator('.learn-chooser input[name=column]').fill('1');
    await page.getByRole('button', { name: 'Show me this one' }).click();
    await page.locator('.learn-place', { hasText: 'row 2, column 1' }).waitFor();
    await page.goto(new URL('#check', page.url()).href);
    await page.locator('halfhitch-check').waitFor();
    await page.getByRole('button', { name: 'Show me this one as a lesson' }).click();
    await page.locator('.learn-place', { hasText: 'row 1, column 1' }).waitFor();
    await lesson.locator('h2').waitFor();
    await page.getByRole('button', { name: 'Back to where you were' }).click();
    await page.locator('halfhitch-check').waitFor();
  });
});
