// For the elements' types in scripts that run in the page.
import type {} from '@halfhitch/simulator';
import type { Page } from 'playwright-core';
import { describe } from 'vitest';
import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';
import { seriousFindings, smallTargets } from './axe.js';
import { asText, choose, clickKnot, demoShown, STILL, textChart } from './workbench.js';

const ROWS = ['bbbooobb', 'bboooobb', 'bbbooobb', 'bboooobb', 'bbbooobb', 'bbbbbbbb'];

async function openPiece(page: Page): Promise<void> {
  await demoShown(page);
  await choose(page, asText(textChart(ROWS)));
  await page.getByRole('heading', { name: 'Kittiwake' }).waitFor();
}

/** Rows of the picture, from 1, in which the two pictures beside each other differ. */
async function rowsThatDiffer(page: Page, within: string): Promise<number[]> {
  await page.waitForFunction(
    (selector) =>
      [...document.querySelectorAll<HTMLImageElement>(`${selector} .picture img`)].filter(
        (image) => image.complete && image.naturalWidth > 0,
      ).length === 2,
    within,
  );
  return page.evaluate((selector) => {
    const images = [...document.querySelectorAll<HTMLImageElement>(`${selector} .picture img`)];
    const width = images[0]?.naturalWidth ?? 0;
    const height = images[0]?.naturalHeight ?? 0;
    const [one, other] = images.map((image) => {
      const canvas = document.createElement('canvas');
      canvas.width = width;
      canvas.height = height;
      const context = canvas.getContext('2d');
      context?.drawImage(image, 0, 0, width, height);
      return context?.getImageData(0, 0, width, height).data;
    });
    if (!one || !other) throw new Error('There are not two pictures.');
    // A knot is 22 high, and above the first row there are numbers and the strings' loose ends.
    const rows = new Set<number>();
    for (let y = 0; y < height; y++) {
      let differing = 0;
      for (let x = 0; x < width; x++) {
        const at = 4 * (y * width + x);
        const by = [0, 1, 2].map((c) => Math.abs((one[at + c] ?? 0) - (other[at + c] ?? 0)));
        if (Math.max(...by) > 40) differing++;
      }
      if (differing > 3) rows.add(Math.floor((y - 20 - 44) / 22) + 1);
    }
    return [...rows];
  }, within);
}

describe('a mistake tried', () => {
  test('is knotted on beside what was drawn, named by its place, and put right', async ({
    openPage,
  }) => {
    const page = await openPage('', STILL);
    await openPiece(page);
    await page.locator('summary', { hasText: 'Try a mistake' }).click();
    await clickKnot(page, 3, 2);
    const panel = page.locator('halfhitch-try');
    await panel.getByText('At row 3, column 2:').waitFor();
    const status = panel.getByRole('status').first();
    const skip = panel.getByRole('button', { name: 'Skip this string' });
    await skip.click();
    await panel.getByRole('button', { name: 'Put it right' }).waitFor();
    const differing = await rowsThatDiffer(page, 'halfhitch-try');
    expect(differing).toContain(3);
    // The heavy line lies a little over its neighbours; no row beyond them is touched.
    expect(differing.every((row) => row >= 2 && row <= 4)).toBe(true);
    expect(await skip.getAttribute('aria-pressed')).toBe('true');
    expect(await panel.textContent()).toContain(
      'Row 3: column 2 is a bare string; columns 4 and 7 have another colour; 7 knots in place of 8.',
    );
    expect(await panel.textContent()).toContain('back to base string 2 in row 3');
    await expect.poll(() => status.textContent()).toContain('Base string 2 is skipped in row 3');
    expect(await panel.locator('.picture img').nth(1).getAttribute('alt')).toContain(
      'Base string 2 is skipped in row 3',
    );
    // The first picture is of the piece as it was drawn.
    await panel.getByRole('button', { name: 'Put it right' }).click();
    await expect.poll(() => status.textContent()).toBe('Put right: the piece is as drawn.');
    expect(await panel.locator('halfhitch-compare').count()).toBe(0);
    expect(await skip.evaluate((button) => button === document.activeElement)).toBe(true);
    expect(await skip.getAttribute('aria-pressed')).toBe('false');
  });

  test('is of the knot that is chosen, and can be watched in 3D as it was tied', async ({
    openPage,
  }) => {
    const page = await openPage('', STILL);
    await openPiece(page);
    await page.locator('summary', { hasText: 'Try a mistake' }).click();
    const panel = page.locator('halfhitch-try');
    await panel.getByRole('button', { name: 'Tie a backward-forward knot' }).waitFor({
      state: 'detached',
    });
    await clickKnot(page, 1, 2);
    await panel.getByText('At row 1, column 2:').waitFor();
    await panel.getByRole('button', { name: 'Tie a backward knot' }).click();
    await panel.getByText('in row 1, where a forward knot belongs').first().waitFor();
    await panel.locator('summary', { hasText: 'in 3D' }).click();
    const kinds = (): Promise<(string | null)[]> =>
      panel
        .locator('halfhitch-knot')
        .evaluateAll((knots) => knots.map((knot) => knot.getAttribute('kind')));
    await expect.poll(kinds).toEqual(['forward', 'backward']);
    // Another knot, and what was tried at this one is gone.
    await clickKnot(page, 2, 3);
    await panel.getByText('At row 2, column 3:').waitFor();
    expect(await panel.locator('halfhitch-compare').count()).toBe(0);
  });
});

async function markShift(page: Page): Promise<void> {
  const panel = page.locator('halfhitch-wrong');
  await panel.getByLabel('Row of your piece').fill('3');
  await panel.getByRole('button', { name: 'All as drawn' }).click();
  // Seen: b b o o o b b b in place of b b b o o o b b.
  await panel.getByRole('button', { name: 'Column 3: lake blue' }).click();
  await panel.getByRole('button', { name: 'Column 3: buoy orange' }).waitFor();
  await panel.getByRole('button', { name: 'Column 6: buoy orange' }).click();
  await panel.getByRole('button', { name: 'Column 6: lake blue' }).waitFor();
}

describe('what went wrong', () => {
  test('is found from a shift of colours, and shown in the picture and in 3D', async ({
    openPage,
  }) => {
    const page = await openPage('', STILL);
    await openPiece(page);
    await page.locator('summary', { hasText: 'What went wrong?' }).click();
    await markShift(page);
    const panel = page.locator('halfhitch-wrong');
    await panel.getByRole('button', { name: 'Find what went wrong' }).click();
    const found = panel.locator('.explanation');
    await found.first().waitFor();
    const firstThree = (await found.allTextContents()).slice(0, 3).join(' ');
    expect(firstThree.replace(/\s+/g, ' ')).toContain(
      'In row 3 a run is counted one knot short: from base string 3 on, the colours come one column early.',
    );
    await expect
      .poll(() => panel.getByRole('status').first().textContent())
      .toMatch(/explanations? (was|were) found/);
    const short = found
      .locator('.alternatives > li', { hasText: 'a run is counted one knot short' })
      .first();
    await short.getByRole('button', { name: 'Show it' }).click();
    await panel.locator('halfhitch-compare').waitFor();
    expect(await rowsThatDiffer(page, 'halfhitch-wrong')).toContain(3);
    const text = ((await panel.textContent()) ?? '').replace(/\s+/g, ' ');
    expect(text).toContain('back to base string 3 in row 3');
    expect(text).toContain('Row 3: columns 3 and 6 have another colour.');
    // Chosen in the piece as well, and there in 3D.
    const cell = page.locator('.fabric-cell');
    await expect.poll(() => cell.getAttribute('aria-label')).toContain('Row 3, column 3');
    await page.locator('.watch .which').filter({ hasText: 'Row 3, column 3' }).waitFor();
    expect(await panel.locator('halfhitch-knot').count()).toBe(2);
  });

  test('is found from what a file says, and errors stand beside their fields', async ({
    openPage,
  }) => {
    const page = await openPage('', STILL);
    await openPiece(page);
    await page.locator('summary', { hasText: 'What went wrong?' }).click();
    const panel = page.locator('halfhitch-wrong');
    const find = panel.getByRole('button', { name: 'Find what went wrong' });
    await find.click();
    await panel.getByRole('alert').filter({ hasText: 'Nothing is marked yet' }).waitFor();
    const knots = panel.getByLabel('Knots counted');
    await knots.fill('seven');
    await panel.locator('#wrong-knots-error').waitFor();
    expect(await knots.getAttribute('aria-invalid')).toBe('true');
    expect(await knots.getAttribute('aria-describedby')).toBe('wrong-knots-error');
    await knots.fill('');
    await panel.locator('#wrong-knots-error').waitFor({ state: 'detached' });
    const row = panel.getByLabel('Row of your piece');
    await row.fill('70');
    await panel.getByText('Give a row from 1 to 6.').waitFor();
    await row.fill('2');
    await panel.getByText('Give a row from 1 to 6.').waitFor({ state: 'detached' });
    const file = panel.getByLabel('Open a file of what you see');
    await file.setInputFiles({
      name: 'seen.txt',
      mimeType: 'text/plain',
      buffer: Buffer.from('row 3 right edge wobbles\n'),
    });
    await panel.locator('#wrong-file-error').filter({ hasText: 'seen.txt' }).waitFor();
    await file.setInputFiles({
      name: 'seen.txt',
      mimeType: 'text/plain',
      buffer: Buffer.from('row 3 right edge pulls in\n'),
    });
    const found = panel.locator('.explanation');
    await found.first().waitFor();
    expect((await found.first().textContent())?.replace(/\s+/g, ' ')).toContain(
      'At the turn after row 3, at the right edge, there is one edge knot in place of two',
    );
    expect(await panel.locator('#wrong-file-error').count()).toBe(0);
    // What the file says is marked, and can be marked otherwise.
    expect(await row.inputValue()).toBe('3');
    await panel.getByLabel('The right edge').selectOption('straight');
    await panel.getByText('Ask again to take it in').waitFor();
    await find.click();
    await panel.getByRole('heading', { name: 'Nothing that you marked differs' }).waitFor();
  });

  test('can be gone through by keys alone', async ({ openPage }) => {
    const page = await openPage('', STILL);
    await openPiece(page);
    const summary = page.locator('summary', { hasText: 'What went wrong?' });
    await summary.focus();
    await page.keyboard.press('Enter');
    const panel = page.locator('halfhitch-wrong');
    await panel.getByLabel('Row of your piece').waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('3');
    await panel.getByText('Colours in row 3').waitFor();
    for (let i = 0; i < 3; i++) await page.keyboard.press('Tab');
    const focused = (): Promise<string | null> =>
      page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? null);
    expect(await focused()).toBe('Column 1: not looked at');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await expect.poll(focused).toBe('Column 3: not looked at');
    await page.keyboard.press('ArrowDown');
    await expect.poll(focused).toBe('Column 3: lake blue');
    await page.keyboard.press('Space');
    await expect.poll(focused).toBe('Column 3: buoy orange');
    await page.keyboard.press('ArrowUp');
    await expect.poll(focused).toBe('Column 3: lake blue');
    await page.keyboard.press('ArrowDown');
    await expect
      .poll(() => panel.getByRole('status').first().textContent())
      .toBe('Column 3: buoy orange.');
    const find = panel.getByRole('button', { name: 'Find what went wrong' });
    for (let i = 0; i < 20; i++) {
      await page.keyboard.press('Tab');
      if (await find.evaluate((button) => button === document.activeElement)) break;
    }
    await page.keyboard.press('Enter');
    await panel.locator('.explanation').first().waitFor();
    expect(await panel.locator('.explanation').first().textContent()).toContain('base string 3');
    const show = panel.getByRole('button', { name: 'Show it' }).first();
    for (let i = 0; i < 20; i++) {
      await page.keyboard.press('Tab');
      if (await show.evaluate((button) => button === document.activeElement)) break;
    }
    await page.keyboard.press('Enter');
    await panel.locator('halfhitch-compare').waitFor();
    expect(await show.evaluate((button) => button === document.activeElement)).toBe(true);
  });
});

describe('access to mistakes', () => {
  for (const [size, options] of [
    ['desktop', DESKTOP],
    ['phone', PHONE],
  ] as const) {
    for (const colorScheme of ['light', 'dark'] as const) {
      test(`axe finds nothing serious: ${size}, ${colorScheme}`, async ({ openPage }) => {
        const page = await openPage('', { ...options, colorScheme, reducedMotion: 'reduce' });
        await openPiece(page);
        await page.locator('summary', { hasText: 'Try a mistake' }).click();
        await page.getByRole('button', { name: 'Tie only half the knot' }).click();
        await page.locator('halfhitch-try halfhitch-compare').waitFor();
        await page.locator('summary', { hasText: 'What went wrong?' }).click();
        await page.getByLabel('Knots counted').fill('x');
        expect(await seriousFindings(page)).toEqual([]);
        await page.getByLabel('Knots counted').fill('7');
        await markShift(page);
        await page.getByRole('button', { name: 'Find what went wrong' }).click();
        await page.getByRole('button', { name: 'Show it' }).first().click();
        await page.locator('halfhitch-wrong halfhitch-compare').waitFor();
        expect(await seriousFindings(page)).toEqual([]);
        const { over, small } = await smallTargets(page);
        expect(over).toBeLessThanOrEqual(0);
        if (size === 'phone') expect(small).toEqual([]);
        // Side by side where there is room, and one above the other where there is not.
        const boxes = await page
          .locator('halfhitch-wrong .pictures figure')
          .evaluateAll((figures) => figures.map((figure) => figure.getBoundingClientRect().top));
        expect(boxes).toHaveLength(2);
        const apart = Math.abs((boxes[1] ?? 0) - (boxes[0] ?? 0));
        if (size === 'phone') expect(apart).toBeGreaterThan(50);
        else expect(apart).toBeLessThan(1);
      });
    }
  }
});
