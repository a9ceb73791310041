// For the elements' types in scripts that run in the page.
import type {} from '@halfhitch/simulator';
import { describe } from 'vitest';
import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';
import { seriousFindings, smallTargets } from './axe.js';
import { inHand, keptIs, openTied, redraw, wordsOf } from './tie-page.js';
import { clickKnot, STILL } from './workbench.js';

const SMALL_PHONE = { ...PHONE, viewport: { width: 360, height: 780 } };

describe('following along', () => {
  test('goes knot by knot, by keys and by taps, to the finished piece', async ({ openPage }) => {
    const page = await openPage('#tie', STILL);
    await openTied(page);
    await inHand(page, 'Backward-forward knot on base string 1');
    expect(await page.locator('.tie-change').textContent()).toBe('Colour change');
    await page.keyboard.press('Space');
    await inHand(page, 'Forward knot on base string 2');
    expect(await page.locator('.tie-change').count()).toBe(0);
    expect(await page.locator('.tie-steps li').allTextContents()).toEqual([
      expect.stringContaining('Lay L1 over base string 2 from left to right, turn it behind'),
      expect.stringContaining('once more, below the first half'),
    ]);
    expect(await page.locator('.tie-next li').allTextContents()).toEqual([
      'forward knots on base strings 3 and 4',
      'a forward-backward knot on base string 5, the edge knot',
      'turn; row 2 goes from right to left',
    ]);
    await expect
      .poll(() => page.getByRole('status').filter({ hasText: 'Row 1, knot 2 of 5' }).textContent())
      .toBe('Row 1, knot 2 of 5: a forward knot on base string 2.');
    // The picture is at this knot of the row too.
    await expect
      .poll(() =>
        page
          .locator('halfhitch-row')
          .evaluate((row) => (row as HTMLElementTagNameMap['halfhitch-row']).knot),
      )
      .toBe(1);
    await page.keyboard.press('Enter');
    await inHand(page, 'Forward knot on base string 3');
    await page.keyboard.press('Backspace');
    await inHand(page, 'Forward knot on base string 2');
    await page.keyboard.press('r');
    await inHand(page, 'Forward-backward knot on base string 5');
    await keptIs(page, 4);
    await page.getByRole('button', { name: 'Tied', exact: true }).click();
    await page.locator('.tie-way').filter({ hasText: 'from right to left' }).waitFor();
    const bars = page.locator('.tie-bar');
    expect(await wordsOf(bars.nth(0))).toContain('Row 2 of 4 0 of 5');
    expect(await wordsOf(bars.nth(1))).toContain('5 of 20 knots, 25 %');
    // The key that presses a button that has the focus counts once.
    await page.keyboard.press('Space');
    await keptIs(page, 6);
    await page.getByRole('button', { name: 'The row is tied' }).click();
    await keptIs(page, 10);

    // By the row and string filled in, with what is wrong beside them.
    const row = page.getByLabel('Row of 4');
    await row.fill('5');
    await page.getByRole('button', { name: 'Go there' }).click();
    await page.getByText('Fill in a row from 1 to 4 and a base string from 1 to 5.').waitFor();
    expect(await row.getAttribute('aria-invalid')).toBe('true');
    await row.fill('2');
    await page.getByLabel('Base string of 5').fill('3');
    await page.getByRole('button', { name: 'Go there' }).click();
    await inHand(page, 'Backward knot on base string 3');
    expect(await page.locator('.tie-moved').textContent()).toContain(
      'The next knot is row 2, base string 3 now; it was row 3, base string 1.',
    );
    await page.getByRole('button', { name: 'Take that back' }).click();
    await keptIs(page, 10);

    // By a tap on the knot in the picture.
    await clickKnot(page, 4, 4);
    await page.getByText('Row 4, column 4: backward knot on base string 4').waitFor();
    await keptIs(page, 10);
    await page.getByRole('button', { name: 'I am here: this knot is next' }).click();
    await keptIs(page, 16);
    await inHand(page, 'Backward knot on base string 4');

    // Nothing is lost by loading the page anew, and the same piece is open.
    await page.reload();
    await inHand(page, 'Backward knot on base string 4');
    await keptIs(page, 16);
    for (let i = 0; i < 4; i++) await page.keyboard.press('Space');
    await inHand(page, 'All 20 knots are tied');
    expect(await page.locator('.tie-now').textContent()).toContain('Cut away from your fingers.');
    await keptIs(page, 20);
    // There is no knot after the last.
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'Tie another, from the first knot' }).click();
    await inHand(page, 'Backward-forward knot on base string 1');
    await page.getByRole('button', { name: 'Take that back' }).click();
    await inHand(page, 'All 20 knots are tied');
    await page.keyboard.press('Backspace');
    await inHand(page, 'Backward-forward knot on base string 1');
    await keptIs(page, 19);
  });

  test('a colour change leads to its lesson, and goes step by step on the big button', async ({
    openPage,
  }) => {
    const page = await openPage('#tie', STILL);
    await openTied(page);
    await page.getByLabel('Row of 4').fill('2');
    await page.getByLabel('Base string of 5').fill('4');
    await page.getByRole('button', { name: 'Go there' }).click();
    await inHand(page, 'Backward knot on base string 4');
    const steps = await page.locator('.tie-steps li').allTextContents();
    expect(steps.length).toBeGreaterThan(4);
    await keptIs(page, 6);
    await page.keyboard.press('b');
    const big = page.locator('dialog.big');
    for (const [i, step] of steps.entries()) {
      await big.getByText(`Step ${i + 1} of ${steps.length}`).waitFor();
      expect(await big.locator('.big-step').textContent()).toBe(step);
      if (i === 2) {
        await big.getByRole('button', { name: 'Back', exact: true }).click();
        await big.getByText('Step 2 of').waitFor();
        await page.keyboard.press('Space');
        await big.getByText('Step 3 of').waitFor();
      }
      await big.locator('.big-done').click();
    }
    await big.locator('.big-string', { hasText: 'base string 3' }).waitFor();
    expect(await big.locator('.big-done').textContent()).toContain('Backward knot');
    await big.getByRole('button', { name: 'Close' }).click();
    await keptIs(page, 7);
    expect(await big.count()).toBe(0);
    await page.keyboard.press('Backspace');
    await page.getByRole('button', { name: 'Practise this change' }).click();
    await page.locator('halfhitch-lesson').waitFor();
    expect(new URL(page.url()).hash).toContain('learn');
    await page.goBack();
    await inHand(page, 'Backward knot on base string 4');
    await keptIs(page, 6);
  });
});

describe('a drawing that is changed while it is tied', () => {
  test('keeps the place, and says so when what is tied no longer matches', async ({ openPage }) => {
    const page = await openPage('#tie', STILL);
    await openTied(page);
    await page.getByRole('button', { name: 'The row is tied' }).click();
    await keptIs(page, 5);
    const alert = page.locator('.tie-notice');
    // A row that is not tied yet.
    await redraw(page, { cell: [2, 2] });
    await expect
      .poll(() => page.locator('.tie-next').textContent())
      .toContain('backward knot on base string 4');
    expect(await alert.count()).toBe(0);
    await redraw(page, { cell: [0, 1] });
    await alert.filter({ hasText: 'differs from what you have tied, from row 1 on' }).waitFor();
    expect(await wordsOf(alert)).toContain('Your place is kept at 5 knots');
    await alert.getByRole('button', { name: 'Undo the change' }).click();
    await alert.waitFor({ state: 'detached' });
    await redraw(page, { cell: [0, 1] });
    await alert.getByRole('button', { name: 'It is right as it is now' }).click();
    await alert.waitFor({ state: 'detached' });
    await keptIs(page, 5);
    await redraw(page, { columns: 4 });
    await alert.filter({ hasText: 'in rows of 5, and the drawing has rows of 4 now' }).waitFor();
    await page.keyboard.press('Space');
    await alert.getByRole('button', { name: 'Go on at row 2' }).click();
    await alert.waitFor({ state: 'detached' });
    await keptIs(page, 4);
    await inHand(page, 'Forward-backward knot on base string 4');
  });
});

describe('two windows', () => {
  test('count the same piece, and none goes back behind the other', async ({ openPage }) => {
    const one = await openPage('#tie', STILL);
    await openTied(one);
    await one.keyboard.press('Space');
    await keptIs(one, 1);
    const other = await one.context().newPage();
    await other.goto(one.url());
    await inHand(other, 'Forward knot on base string 2');
    await keptIs(other, 1);
    await other.keyboard.press('r');
    await keptIs(other, 4);
    await keptIs(one, 4);
    await one.getByText('counted on in another window').waitFor();
    await one.keyboard.press('Space');
    await keptIs(other, 5);
    await redraw(one, { cell: [3, 3] });
    // The drawing goes along too.
    const third = (): Promise<number> =>
      other.evaluate(
        () =>
          (
            document.querySelector('halfhitch-workbench') as unknown as {
              session: { project: { chart: { cells: Uint8Array } } };
            }
          ).session.project.chart.cells[18] as number,
      );
    await expect.poll(third).toBe(0);
  });
});

describe('access to tying', () => {
  for (const [size, options] of [
    ['desktop', DESKTOP],
    ['phone', SMALL_PHONE],
  ] as const) {
    test(`axe finds nothing serious, and all can be hit: ${size}`, async ({ openPage }) => {
      const page = await openPage('#tie', { ...options, reducedMotion: 'reduce' });
      await openTied(page);
      await page.getByRole('button', { name: 'The row is tied' }).click();
      await keptIs(page, 5);
      await page.locator('summary', { hasText: 'Hands-free' }).click();
      await page.getByLabel('Row of 4').fill('9');
      await page.getByRole('button', { name: 'Go there' }).click();
      await page.locator('#tie-jump-error').waitFor();
      await redraw(page, { cell: [0, 1] });
      await page.locator('.tie-notice').waitFor();
      await page.locator('halfhitch-row').scrollIntoViewIfNeeded();
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await seriousFindings(page), colorScheme).toEqual([]);
      }
      const { over, small } = await smallTargets(page);
      expect(over).toBeLessThanOrEqual(0);
      if (size === 'phone') {
        expect(small).toEqual([]);
        // What counts is at the thumb, wherever one is on the page.
        const box = await page.locator('.tie-done').boundingBox();
        expect((box?.y ?? 0) + (box?.height ?? 0)).toBeGreaterThan(740);
        expect(box?.height).toBeGreaterThanOrEqual(60);
      }
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Big buttons' }).click();
      const big = page.locator('dialog.big');
      await big.locator('.big-done').waitFor();
      expect(await big.locator('.big-done').evaluate((it) => it === document.activeElement)).toBe(
        true,
      );
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await seriousFindings(page), colorScheme).toEqual([]);
      }
      await big.getByRole('button', { name: 'It is right as it is now' }).click();
      await big.locator('.tie-notice').waitFor({ state: 'detached' });
      const wide = await big.evaluate((it) => [it.scrollWidth - it.clientWidth, it.clientWidth]);
      expect(wide[0]).toBeLessThanOrEqual(0);
      // Read at arm's length: the words of the knot are far larger than the page's.
      const pixels = await big
        .locator('.big-kind')
        .evaluate((it) => Number.parseFloat(getComputedStyle(it).fontSize));
      expect(pixels).toBeGreaterThanOrEqual(32);
      const button = await big.locator('.big-done').boundingBox();
      const height = options.viewport?.height ?? 0;
      expect(button?.height ?? 0).toBeGreaterThan(height / 2);
      await page.keyboard.press('Escape');
      await big.waitFor({ state: 'detached' });
    });
  }
});
