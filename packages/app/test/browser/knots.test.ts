import { describe } from 'vitest';
import { expect, test } from '../../../../testing/browser.js';
import { asText, choose, clickKnot, demoShown, kindPlayed, STILL, textChart } from './workbench.js';

const ROWS = ['bbbbbb', 'bboobb', 'bowwob', 'bboobb'];

/** Kinds by the straight edge technique from the left: the table, not the planner, says so. */
const EXPECTED = [
  ['backward-forward', 'forward', 'forward', 'forward', 'forward', 'forward-backward'],
  ['backward-forward', 'backward', 'backward', 'backward', 'backward', 'forward-backward'],
  ['backward-forward', 'forward', 'forward', 'forward', 'forward', 'forward-backward'],
];

describe('knots', () => {
  test('a click on a knot plays its kind in its colour', async ({ openPage }) => {
    const page = await openPage();
    await demoShown(page);
    await choose(page, asText(textChart(ROWS)));
    await page.getByRole('heading', { name: 'Kittiwake' }).waitFor();
    for (const [row, column] of [
      [1, 6],
      [2, 3],
      [3, 4],
      [2, 1],
      [1, 2],
    ] as const) {
      await clickKnot(page, row, column);
      const which = page.locator('.which');
      await which.filter({ hasText: `Row ${row}, column ${column}:` }).waitFor();
      expect(await kindPlayed(page)).toBe(EXPECTED[row - 1]?.[column - 1]);
      const name = { b: 'lake blue', o: 'buoy orange', w: 'chalk' }[
        ROWS[row - 1]?.[column - 1] as 'b'
      ];
      expect(await which.textContent()).toContain(name);
      await page.waitForFunction(() => {
        const knot = document.querySelector('halfhitch-knot');
        return knot?.playing === true && knot.position > 0 && knot.position < 1;
      });
    }
  });

  test('every knot can be reached by keys, and its label says what it is', async ({ openPage }) => {
    const page = await openPage();
    await demoShown(page);
    await choose(page, asText(textChart(ROWS)));
    await page.getByRole('heading', { name: 'Kittiwake' }).waitFor();
    const grid = page.getByRole('grid');
    expect(await grid.getAttribute('aria-rowcount')).toBe('4');
    expect(await grid.getAttribute('aria-colcount')).toBe('6');
    const cell = page.locator('.fabric-cell');
    await cell.focus();
    const labelAfter = async (key: string): Promise<string> => {
      await page.keyboard.press(key);
      expect(await cell.evaluate((node) => node === document.activeElement)).toBe(true);
      return (await cell.getAttribute('aria-label')) ?? '';
    };
    expect(await labelAfter('ArrowRight')).toBe(
      'Row 1, column 2: forward knot on base string 2 in lake blue',
    );
    expect(await labelAfter('ArrowDown')).toContain('Row 2, column 2: backward knot');
    expect(await labelAfter('ArrowRight')).toContain('on base string 3 in buoy orange');
    expect(await labelAfter('End')).toContain('Row 2, column 6: forward-backward knot');
    expect(await labelAfter('ArrowRight')).toContain('Row 2, column 6');
    expect(await labelAfter('Control+End')).toContain('Row 4, column 6');
    expect(await labelAfter('Control+Home')).toContain('Row 1, column 1: backward-forward');
    await labelAfter('ArrowDown');
    await labelAfter('ArrowRight');
    await page.keyboard.press('Enter');
    await page.locator('.which').filter({ hasText: 'Row 2, column 2' }).waitFor();
    await page.waitForFunction(() => document.querySelector('halfhitch-knot')?.playing === true);
    expect(await kindPlayed(page)).toBe('backward');
  });

  test('the row is written out, turned over by buttons, and watched from its parts', async ({
    openPage,
  }) => {
    const page = await openPage('', STILL);
    await demoShown(page);
    await choose(page, asText(textChart(ROWS)));
    await page.getByRole('heading', { name: 'Row 1, from left to right' }).waitFor();
    await page.getByRole('button', { name: 'Next row' }).click();
    await page.getByRole('heading', { name: 'Row 2, from right to left' }).waitFor();
    const parts = page.locator('.parts > .part');
    expect(await parts.count()).toBeGreaterThan(3);
    expect(await page.locator('.cases').first().textContent()).toMatch(/^Colour change: /);
    const change = parts.filter({ has: page.locator('.cases') }).first();
    await change.getByRole('button', { name: /^Watch/ }).click();
    await page.locator('.part[aria-current=step] .cases').waitFor();
    expect(await page.locator('.which').textContent()).toContain('Row 2, column 4');
    await page.getByRole('button', { name: 'Previous row' }).click();
    await page.getByRole('heading', { name: 'Row 1, from left to right' }).waitFor();
    await page.getByRole('button', { name: 'Previous row', disabled: true }).click({ force: true });
    expect(await page.locator('#row-name').textContent()).toBe('Row 1, from left to right');
  });

  test('a whole row is played with its change of colour, and the picture follows', async ({
    openPage,
  }) => {
    const page = await openPage();
    await demoShown(page);
    await choose(page, asText(textChart(['bbbooo', 'bbbbbb'])));
    await page.getByRole('heading', { name: 'Kittiwake' }).waitFor();
    await page.getByLabel('Whole row').check();
    const row = page.locator('halfhitch-row');
    await row.locator('canvas').waitFor();
    const said = async (): Promise<string> =>
      ((await row.locator('[part=live]').textContent()) ?? '').replace(/\s+/g, ' ').trim();
    await row.locator('[part=stage]').focus();
    await page.keyboard.press('Home');
    const heard = [await said()];
    // Five knots of two moves, and one of four.
    for (let i = 0; i < 14; i++) {
      await page.keyboard.press('ArrowRight');
      await expect.poll(said).not.toBe(heard.at(-1));
      heard.push(await said());
    }
    expect(heard.some((text) => /Lay L1 \(lake blue\) under L2 \(buoy orange\)/.test(text))).toBe(
      true,
    );
    expect(heard.at(-1)).toContain('The row is done.');
    expect(
      await row.evaluate((element: HTMLElement & { position: number }) => element.position),
    ).toBe(14);
    expect(await page.locator('.fabric-cell').getAttribute('aria-colindex')).toBe('6');
    await page.getByLabel('One knot').check();
    await page.locator('.which').filter({ hasText: 'Row 1, column 6' }).waitFor();
  });

  test('the mirror image is shown for left-handed makers, and said to be one', async ({
    openPage,
  }) => {
    const page = await openPage('', STILL);
    await demoShown(page);
    const stage = page.locator('halfhitch-knot [part=stage]');
    const rows = await page.locator('.row-card').textContent();
    expect(await stage.getAttribute('aria-label')).toContain('A backward-forward knot');
    expect(await page.getByText('Shown for the left hand').count()).toBe(0);
    await page.getByLabel('Left-handed').check();
    await expect.poll(() => stage.getAttribute('aria-label')).toContain('A forward-backward knot');
    expect(await page.locator('.hand').textContent()).toMatch(
      /Shown for the left hand: mirror image\..*rows stay as drawn/s,
    );
    expect(await page.locator('.which').textContent()).toMatch(
      /backward-forward knot, lake blue; mirrored: forward-backward/,
    );
    expect(await page.locator('.row-card').textContent()).toBe(rows);
  });
});
