import { describe } from 'vitest';
import { expect, test } from '../../../../testing/browser.js';
import {
  asText,
  choose,
  clickKnot,
  demoShown,
  drop,
  pngChart,
  STILL,
  textChart,
} from './workbench.js';

const ROWS = ['bbbbbb', 'bboobb', 'bowwob', 'bboobb'];

describe('charts', () => {
  test('the demo is opened, proven and played', async ({ openPage }) => {
    const page = await openPage();
    await demoShown(page);
    expect(await page.locator('.stamp').textContent()).toBe('Knots out as drawn');
    const counts = (await page.locator('.verdict').textContent()) ?? '';
    expect(counts).toMatch(/336 knots,\s+672 half hitches/);
    await page.waitForFunction(
      () => (document.querySelector('halfhitch-knot')?.position ?? 0) > 0.01,
    );
    await page.locator('.fabric-sheet img').first().waitFor();
    const drawn = await page
      .locator('.fabric-sheet img')
      .first()
      .evaluate((image: HTMLImageElement) => image.decode().then(() => image.naturalWidth));
    expect(drawn).toBeGreaterThan(100);
  });

  test('a text chart is opened through the file button', async ({ openPage }) => {
    const page = await openPage('', STILL);
    await demoShown(page);
    await choose(page, asText(textChart(ROWS)));
    await page.getByRole('heading', { name: 'Kittiwake' }).waitFor();
    expect(await page.locator('.size').textContent()).toMatch(/4\s+rows of 6\s+knots/);
    expect(await page.locator('.stamp').textContent()).toBe('Knots out as drawn');
    expect(await page.locator('.legend li').allTextContents()).toHaveLength(3);
  });

  test('a PNG is opened through the file button, and another is dropped', async ({ openPage }) => {
    const page = await openPage('', STILL);
    await demoShown(page);
    const stripes = pngChart(9, 5, (row) => (row % 2 === 0 ? [31, 111, 178] : [244, 241, 232]));
    await choose(page, { name: 'pennant.png', mimeType: 'image/png', buffer: stripes });
    await page.getByRole('heading', { name: 'pennant' }).waitFor();
    expect(await page.locator('.size').textContent()).toMatch(/5\s+rows of 9/);
    const bands = pngChart(7, 3, (_, column) => (column < 3 ? [31, 111, 178] : [217, 100, 42]));
    await drop(page, { name: 'bands.png', mimeType: 'image/png', buffer: bands });
    await page.getByRole('heading', { name: 'bands' }).waitFor();
    expect(await page.locator('.size').textContent()).toMatch(/3\s+rows of 7/);
    expect(await page.locator('.verdict').textContent()).toContain('21 knots');
  });

  test('a broken chart is told of and the work is kept', async ({ openPage }) => {
    const page = await openPage('', STILL);
    await demoShown(page);
    await choose(page, asText(textChart(ROWS)));
    await page.getByRole('heading', { name: 'Kittiwake' }).waitFor();
    await clickKnot(page, 2, 3);
    await page.getByRole('heading', { name: /^Row 2/ }).waitFor();
    await page.locator('.which').filter({ hasText: 'Row 2, column 3' }).waitFor();
    const before = (await page.locator('main').textContent()) ?? '';
    const broken = [
      asText(textChart(['bbbbbb', 'bbxbbb']), 'unknown-colour.txt'),
      asText(textChart(['bbbbbb', 'bbb']), 'ragged.txt'),
      asText(Buffer.from('{"format": "halfhitch-chart", "version": 99}'), 'later.json'),
      {
        name: 'cut.png',
        mimeType: 'image/png',
        buffer: pngChart(8, 8, () => [1, 2, 3]).subarray(0, 50),
      },
      asText(Buffer.alloc(0), 'nothing.txt'),
    ];
    for (const file of broken) {
      await choose(page, file);
      const alert = page.getByRole('alert');
      await alert.filter({ hasText: file.name }).waitFor();
      const text = (await alert.textContent()) ?? '';
      expect(text).toContain('Kittiwake is still open, as it was.');
      expect(text).not.toMatch(/undefined|\bat .*:\d+:\d+/);
      expect(await page.getByRole('heading', { name: 'Kittiwake' }).count()).toBe(1);
      expect(await page.locator('.size').textContent()).toMatch(/4\s+rows/);
    }
    // The worker's work is kept too: a row not yet shown can still be asked for.
    await page.getByRole('button', { name: 'Next row' }).click();
    await page.getByRole('heading', { name: /^Row 3/ }).waitFor();
    await page.getByRole('button', { name: 'Previous row' }).click();
    await page.getByRole('heading', { name: /^Row 2/ }).waitFor();
    await page.getByRole('button', { name: 'Close this message' }).click();
    expect(await page.getByRole('alert').count()).toBe(0);
    expect(stripMoving((await page.locator('main').textContent()) ?? '')).toBe(stripMoving(before));
  });

  test('a file too large to be a chart is refused unread', async ({ openPage }) => {
    const page = await openPage('', STILL);
    await demoShown(page);
    await choose(page, asText(Buffer.alloc(32 * 1024 * 1024 + 1, 'b'), 'huge.txt'));
    await page.getByRole('alert').filter({ hasText: 'huge.txt' }).waitFor();
    expect(await page.getByRole('alert').textContent()).toContain('32 MiB');
    expect(await page.getByRole('heading', { name: 'Otter' }).count()).toBe(1);
  });

  test('edges and the side of the start are chosen and worked out anew', async ({ openPage }) => {
    const page = await openPage('', STILL);
    await demoShown(page);
    await choose(page, asText(textChart(ROWS)));
    await page.getByRole('heading', { name: 'Kittiwake' }).waitFor();
    await page.getByRole('heading', { name: 'Row 1, from left to right' }).waitFor();
    expect(await page.locator('halfhitch-knot').getAttribute('kind')).toBe('backward-forward');
    await page.getByLabel('Edges').selectOption('wrapped');
    await page.waitForFunction(
      () => document.querySelector('halfhitch-knot')?.getAttribute('kind') === 'forward',
    );
    await page.getByLabel('First row from the').selectOption('right');
    await page.getByRole('heading', { name: 'Row 1, from right to left' }).waitFor();
    await page.waitForFunction(
      () => document.querySelector('halfhitch-knot')?.getAttribute('kind') === 'backward',
    );
    expect(await page.locator('.stamp').textContent()).toBe('Knots out as drawn');
  });

  test('a plan worked out by hand that goes wrong shows its findings in place', async ({
    openPage,
  }) => {
    const page = await openPage('', STILL);
    await demoShown(page);
    const marks = ['', '<\\\\\\\\>', '<////>', '<\\//\\>', '<////>'].join('\n');
    await choose(page, asText(textChart(ROWS, 'Heron', marks), 'by-hand.txt'));
    await page.getByRole('heading', { name: 'Heron' }).waitFor();
    expect(await page.locator('.stamp').textContent()).toBe('Does not knot out as drawn');
    const finding = page.locator('.findings.wrong .finding').first();
    const place = /Row (\d+), column (\d+)/.exec((await finding.textContent()) ?? '');
    expect(Number(place?.[1])).toBe(3);
    await finding.click();
    const cell = page.locator('.fabric-cell');
    expect(await cell.getAttribute('aria-label')).toContain(
      `Row ${place?.[1]}, column ${place?.[2]}:`,
    );
    await expect.poll(() => cell.evaluate((node) => node === document.activeElement)).toBe(true);
    expect(await page.locator('.fabric-mark').count()).toBeGreaterThan(0);
  });
});

/** Without the words that go on changing while a knot is played. */
function stripMoving(text: string): string {
  return text.replace(/\b(Play|Pause)\b/g, '').replace(/(Ready|First half|Second half)[^\n]*/g, '');
}
