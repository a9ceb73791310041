import { describe } from 'vitest';
import { expect, test } from '../../../../testing/browser.js';
import {
  BLANK,
  COLOURS,
  choose,
  cursorHasFocus,
  drag,
  drawIn,
  middleOf,
  openChart,
  openDraw,
  painted,
  rowsOf,
  type WithSession,
  worked,
} from './draw-page.js';

describe('the chart as a whole', () => {
  test('rows, columns, another size, a new chart', async ({ openPage }) => {
    const page = await openDraw(openPage, ['bo.', '.ob']);
    await drag(page, [2, 1]);
    await page.keyboard.press('Control+Z');
    const lines = (name: string) => page.getByRole('group', { name, exact: true });
    await lines('Rows').getByRole('button', { name: 'New above' }).click();
    expect(await rowsOf(page)).toEqual(['bo.', '...', '.ob']);
    await page.keyboard.press('Control+Z');
    await lines('Columns').getByRole('button', { name: 'Double' }).click();
    expect(await rowsOf(page)).toEqual(['bbo.', '..ob']);
    await lines('Rows').getByRole('button', { name: 'Take out' }).click();
    expect(await rowsOf(page)).toEqual(['bbo.']);
    await lines('Rows').getByRole('button', { name: 'Take out' }).click();
    expect(await page.locator('.draw-problem').textContent()).toContain('No rows would be left.');

    await choose(page, 'Again and again');
    await page.getByLabel('Times as long').fill('3');
    await page.getByRole('dialog').getByRole('button', { name: 'Repeat' }).click();
    expect(await rowsOf(page)).toEqual(['bbo.', 'bbo.', 'bbo.']);
    await choose(page, 'Another size');
    await page.getByRole('spinbutton', { name: 'Columns' }).fill('301');
    await choose(page, 'Change the size');
    expect(await page.getByRole('dialog').getByRole('alert').textContent()).toContain('column 301');
    await page.getByRole('spinbutton', { name: 'Columns' }).fill('2');
    await choose(page, 'Change the size');
    expect(await rowsOf(page)).toEqual(['bb', 'bb', 'bb']);
    expect(await page.getByRole('dialog').count()).toBe(0);

    await choose(page, 'New chart');
    await page.getByRole('dialog').getByLabel('Name').fill('Kittiwake <b>');
    await page.getByRole('spinbutton', { name: 'Columns' }).fill('5');
    await page.getByRole('spinbutton', { name: 'Rows' }).fill('2');
    await choose(page, 'Begin to draw');
    await page.getByRole('heading', { name: 'Kittiwake <b>' }).waitFor();
    expect((await rowsOf(page)).map((row) => row.length)).toEqual([5, 5]);
    await choose(page, 'Rename');
    await page.getByRole('dialog').getByLabel('Name').fill('Otter');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Otter' }).waitFor();
  });

  test('the legend: names, shades, order, merging', async ({ openPage }) => {
    const page = await openDraw(openPage, ['bo.', '.ob']);
    await drawIn(page, 'buoy orange');
    const legend = page.locator('halfhitch-palette');
    await legend.getByLabel('Name').fill('pennant red');
    await legend.getByLabel('Name').press('Enter');
    await page.locator('.chip', { hasText: 'pennant red' }).waitFor();
    await legend.getByLabel('Shade').evaluate((input: HTMLInputElement) => {
      input.value = '#b8323a';
      input.dispatchEvent(new Event('change'));
    });
    await worked(page);
    expect(await painted(page, 1, 2)).toBe('#b8323a');
    await legend.getByRole('button', { name: 'Earlier' }).click();
    expect(await page.locator('.chip-name').allTextContents()).toEqual([
      'chalk',
      'pennant red',
      'lake blue',
    ]);
    expect(await rowsOf(page)).toEqual(['bo.', '.ob']);
    await legend.getByRole('button', { name: 'Delete', exact: true }).focus();
    await page.keyboard.press('Enter');
    expect(await legend.getByRole('alert').textContent()).toContain('row 1, column 2');
    await legend.getByLabel('Draw all of it in').selectOption({ label: '3 lake blue' });
    await legend.getByRole('button', { name: 'Merge and delete' }).click();
    expect(await rowsOf(page)).toEqual(['bb.', '.bb']);
    await legend.getByRole('button', { name: 'Add a colour' }).click();
    expect(await page.locator('.chip').count()).toBe(3);
  });
});

test('letters come into the open chart where the cursor is, as one step', async ({ openPage }) => {
  const blank = Array.from({ length: 20 }, () => '.'.repeat(20));
  const page = await openDraw(openPage, blank);
  await drag(page, [3, 5]);
  await page.keyboard.press('Control+Z');
  await choose(page, 'Letters');
  await page.getByLabel('What to write').fill('H');
  await choose(page, 'Use this');
  await choose(page, 'Put into the open chart');
  await expect.poll(async () => (await rowsOf(page)).join('')).not.toBe(blank.join(''));
  const rows = await rowsOf(page);
  expect(rows).toHaveLength(20);
  expect(rows.slice(0, 2)).toEqual(blank.slice(0, 2));
  expect(rows.every((row) => row.startsWith('....'))).toBe(true);
  expect(await page.locator('.draw-here').textContent()).toContain('Selected: rows 3 to');
  await page.keyboard.press('Control+Z');
  expect(await rowsOf(page)).toEqual(blank);
  // In the last corner there is room for one knot of it, unless the chart grows.
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+End');
  await choose(page, 'Letters');
  await choose(page, 'Use this');
  await choose(page, 'Put in and make room');
  await expect.poll(async () => (await rowsOf(page)).length).toBeGreaterThan(20);
  await page.locator('.letterhead').getByRole('button', { name: 'Undo' }).click();
  expect(await rowsOf(page)).toEqual(blank);
});

describe('the verdict', () => {
  test('findings are placed on the chart and gone to by their buttons', async ({ openPage }) => {
    const page = await openDraw(openPage, BLANK);
    const plain = await painted(page, 2, 5);
    // The edge knots of the second row are ordinary ones: the edge will not hold.
    await openChart(page, ['bbbbb', 'bbbbb'], '1000012223');
    await page.locator('.verdict.bad').waitFor();
    const finding = page.locator('.finding').last();
    const place = /Row (\d+), column (\d+)/.exec((await finding.textContent()) ?? '');
    expect(place).not.toBeNull();
    const [row, column] = [Number(place?.[1]), Number(place?.[2])];
    await finding.click();
    const cell = page.locator('.sheet-cell');
    expect(await cell.getAttribute('aria-label')).toContain(`Row ${row}, column ${column}:`);
    expect(await cursorHasFocus(page)).toBe(true);
    const about = (await page.locator('#sheet-about').textContent()) ?? '';
    expect(about.length).toBeGreaterThan('Row 2 is knotted from right to left.'.length + 10);
    // Hatched: not all of the knot has its colour any more.
    const shades = await page.evaluate(() => {
      const canvas = document.querySelector('.sheet-canvas') as HTMLCanvasElement;
      const box = (document.querySelector('.sheet-cell') as HTMLElement).getBoundingClientRect();
      const { left, top, width } = canvas.getBoundingClientRect();
      const scale = canvas.width / width;
      const data = canvas
        .getContext('2d')
        ?.getImageData(
          (box.left - left + 4) * scale,
          (box.top - top + 4) * scale,
          (box.width - 8) * scale,
          (box.height - 8) * scale,
        ).data;
      return new Set(new Uint32Array(data?.buffer ?? new ArrayBuffer(0))).size;
    });
    expect(shades).toBeGreaterThan(3);
    expect(plain).toBe('#f4f1e8');
    // Drawn over, the chart is proven anew; a chart without findings has no marks.
    await openChart(page, BLANK);
    await page.locator('.verdict.good').waitFor();
    expect(await painted(page, 2, 5)).toBe('#f4f1e8');
  });
});

describe('large charts', () => {
  test('with the mouse and the space bar the sheet is pushed, with Ctrl and the wheel zoomed', async ({
    openPage,
  }) => {
    const page = await openDraw(
      openPage,
      Array.from({ length: 60 }, () => '.'.repeat(80)),
    );
    const scrolled = (): Promise<number[]> =>
      page.locator('halfhitch-sheet').evaluate((sheet) => [sheet.scrollLeft, sheet.scrollTop]);
    const width = (): Promise<number> =>
      page.locator('.sheet-cell').evaluate((cell) => cell.getBoundingClientRect().width);
    // The panels beside the sheet come later than it does, and leave it another width.
    await page.waitForLoadState('networkidle');
    await worked(page);
    await page.locator('.sheet-cell').focus();
    const { x, y } = await middleOf(page, 10, 10);
    await page.mouse.move(x, y);
    await page.keyboard.down('Space');
    await page.mouse.down();
    await page.mouse.move(x - 60, y - 90);
    await page.mouse.up();
    await page.keyboard.up('Space');
    expect(await scrolled()).toEqual([60, 90]);
    const before = await width();
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -120);
    await page.keyboard.up('Control');
    await expect.poll(width).toBeGreaterThan(before);
    // The knot below the pointer stays there.
    const off = async (): Promise<number> => Math.abs((await middleOf(page, 10, 10)).x - (x - 60));
    await expect.poll(off).toBeLessThan(before / 2);
    // Nothing was drawn on the way.
    expect(new Set((await rowsOf(page)).join(''))).toEqual(new Set('.'));
    await choose(page, 'Whole width');
    await expect.poll(width).toBe(before);
  });

  test('the largest is drawn on, and only what is in sight is painted', async ({ openPage }) => {
    const page = await openDraw(openPage, BLANK);
    await page.evaluate((colours) => {
      const { session } = document.querySelector<WithSession>('halfhitch-workbench') as WithSession;
      session.openChart({
        name: 'Regatta',
        rows: 10_000,
        columns: 300,
        colours,
        cells: new Uint8Array(3_000_000),
      });
    }, COLOURS);
    await page.getByRole('heading', { name: 'Regatta' }).waitFor();
    await page.locator('.sheet-cell').focus();
    for (const key of ['Control+End', '2', 'Enter']) await page.keyboard.press(key);
    expect(await page.locator('.sheet-cell').getAttribute('aria-label')).toBe(
      'Row 10000, column 300: lake blue',
    );
    await expect.poll(() => painted(page, 10_000, 300)).toBe('#1f6fb2');
    const last = await page.evaluate(() => {
      const { session } = document.querySelector<WithSession>('halfhitch-workbench') as WithSession;
      const cells = session.project?.chart.cells as Uint8Array;
      return { last: cells.at(-1), drawn: cells.reduce((sum, cell) => sum + cell, 0) };
    });
    expect(last).toEqual({ last: 1, drawn: 1 });
    // Small enough to see much of it, large enough for one knot.
    const heights = await page.evaluate(async () => {
      const sheet = document.querySelector('halfhitch-sheet') as HTMLElement;
      const canvas = document.querySelector('.sheet-canvas') as HTMLCanvasElement;
      return [canvas.height / devicePixelRatio, sheet.clientHeight];
    });
    expect(heights[0]).toBeCloseTo(heights[1] as number, -1);
    for (let i = 0; i < 12; i++) await page.keyboard.press('-');
    await page.keyboard.press('Control+Z');
    await expect.poll(() => painted(page, 10_000, 300)).not.toBe('#1f6fb2');
  });
});
