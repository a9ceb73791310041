import { describe } from 'vitest';
import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';
import { seriousFindings, smallTargets } from './axe.js';
import {
  BLANK,
  choose,
  cursorHasFocus,
  drag,
  drawIn,
  middleOf,
  openChart,
  openDraw,
  painted,
  rowsOf,
  worked,
} from './draw-page.js';

describe('drawing', () => {
  test('with the mouse: one stroke is one step, taken back and done again', async ({
    openPage,
  }) => {
    const page = await openDraw(openPage, BLANK);
    await drawIn(page, 'lake blue');
    await drag(page, [1, 1], [1, 4], [3, 4]);
    const stroke = ['bbbb..', '...b..', '...b..', '......', '......'];
    expect(await rowsOf(page)).toEqual(stroke);
    await worked(page);
    expect(await painted(page, 2, 4)).toBe('#1f6fb2');
    expect(await painted(page, 2, 3)).toBe('#f4f1e8');
    await page.locator('.letterhead').getByRole('button', { name: 'Undo' }).click();
    expect(await rowsOf(page)).toEqual(BLANK);
    await worked(page);
    expect(await painted(page, 2, 4)).toBe('#f4f1e8');
    await page.keyboard.press('Control+Shift+Z');
    expect(await rowsOf(page)).toEqual(stroke);
    await page.keyboard.press('Control+Z');

    await choose(page, 'Line');
    await drag(page, [5, 1], [2, 2], [1, 5]);
    expect(await rowsOf(page)).toEqual(['....b.', '...b..', '..b...', '.b....', 'b.....']);
    await page.keyboard.press('Control+Z');

    await choose(page, 'Frame');
    await drag(page, [5, 6], [1, 2]);
    expect(await rowsOf(page)).toEqual(['.bbbbb', '.b...b', '.b...b', '.b...b', '.bbbbb']);
    await choose(page, 'Fill');
    await drawIn(page, 'buoy orange');
    await drag(page, [3, 3]);
    expect(await rowsOf(page)).toEqual(['.bbbbb', '.booob', '.booob', '.booob', '.bbbbb']);
    await choose(page, 'Pick up');
    await drag(page, [1, 1]);
    await choose(page, 'Block');
    await drag(page, [2, 2], [3, 3]);
    expect(await rowsOf(page)).toEqual(['.bbbbb', '...oob', '...oob', '.booob', '.bbbbb']);
    await worked(page);
    expect(await painted(page, 4, 4)).toBe('#d9642a');
  });

  test('what is selected is moved, copied, mirrored, cut and pasted', async ({ openPage }) => {
    const chart = ['bo....', '.o....', '......', '....bb', '......'];
    const page = await openDraw(openPage, chart);
    await choose(page, 'Select');
    await drag(page, [1, 1], [2, 2]);
    await expect
      .poll(() => page.locator('.draw-here').textContent())
      .toContain('Selected: rows 1 to 2, columns 1 to 2.');
    await drag(page, [1, 1], [3, 4]);
    expect(await rowsOf(page)).toEqual(['......', '......', '...bo.', '....ob', '......']);
    // Moved on, it leaves what was under it.
    await drag(page, [3, 4], [4, 2]);
    expect(await rowsOf(page)).toEqual(['......', '......', '......', '.bo.bb', '..o...']);
    await page.keyboard.press('Alt+ArrowUp');
    expect(await rowsOf(page)).toEqual(['......', '......', '.bo...', '..o.bb', '......']);
    for (let i = 0; i < 3; i++) await page.keyboard.press('Control+Z');
    expect(await rowsOf(page)).toEqual(chart);

    await page.keyboard.press('Escape');
    await drag(page, [1, 1], [1, 2]);
    await choose(page, 'Mirror left to right');
    expect(await rowsOf(page)).toEqual(['ob....', '.o....', '......', '....bb', '......']);
    await choose(page, 'Copy');
    await page.keyboard.press('Control+Z');
    await drag(page, [5, 3]);
    await choose(page, 'Paste');
    expect(await rowsOf(page)).toEqual(['bo....', '.o....', '......', '....bb', '..ob..']);
    await choose(page, 'Cut');
    expect((await rowsOf(page))[4]).toBe('......');
    await choose(page, 'Select nothing');
    await choose(page, 'Turn by half');
    expect(await rowsOf(page)).toEqual(['......', 'bb....', '......', '....o.', '....ob']);
  });

  test('by keys alone, with every knot said', async ({ openPage }) => {
    const page = await openDraw(openPage, BLANK);
    await page.locator('.sheet-cell').focus();
    for (const key of ['ArrowDown', 'ArrowDown', 'ArrowRight', '3', ' ']) {
      await page.keyboard.press(key);
    }
    expect((await rowsOf(page))[2]).toBe('.o....');
    const cell = page.locator('.sheet-cell');
    expect(await cell.getAttribute('aria-label')).toBe('Row 3, column 2: buoy orange');
    expect(await page.locator('#sheet-about').textContent()).toContain(
      'Row 3 is knotted from left to right.',
    );
    expect(await cursorHasFocus(page)).toBe(true);
    // A line from here to the corner, begun and ended by a key.
    for (const key of ['l', '2', 'Enter', 'Control+End', 'Enter']) await page.keyboard.press(key);
    expect(await rowsOf(page)).toEqual(['......', '......', '.bb...', '...bb.', '.....b']);
    for (const key of ['Control+Home', 'Shift+ArrowRight', 'Shift+ArrowDown']) {
      await page.keyboard.press(key);
    }
    expect(await page.locator('.draw-here').textContent()).toContain('rows 1 to 2, columns 1 to 2');
    for (const key of ['Control+C', 'Escape', 'End', 'f', '3', 'Enter'])
      await page.keyboard.press(key);
    expect(await rowsOf(page)).toEqual(['oooooo', 'oooooo', 'obbooo', 'ooobbo', 'ooooob']);
    // Half of what was copied goes over the side.
    for (const key of ['Control+End', 'ArrowLeft', 'Control+V']) await page.keyboard.press(key);
    expect(await rowsOf(page)).toEqual(['oooooo', 'oooooo', 'obbooo', 'ooobbo', 'oooo..']);
    expect(await page.locator('.draw-said').textContent()).toContain('goes over the side');
    for (const key of ['Escape', 'Delete']) await page.keyboard.press(key);
    expect((await rowsOf(page))[4]).toBe('oooo..');
  });

  test('symmetry draws the other half; a repeat is only shown', async ({ openPage }) => {
    const page = await openDraw(openPage, BLANK);
    await drawIn(page, 'lake blue');
    await page.getByLabel('both sides').check();
    await drag(page, [1, 1], [3, 1]);
    expect(await rowsOf(page)).toEqual(['b....b', 'b....b', 'b....b', '......', '......']);
    await page.getByLabel('both ends').check();
    await drag(page, [2, 2]);
    expect(await rowsOf(page)).toEqual(['b....b', 'bb..bb', 'b....b', '.b..b.', '......']);
    const before = await rowsOf(page);
    await choose(page, 'Repeat');
    await worked(page);
    expect(await rowsOf(page)).toEqual(before);
    // Through mist: lighter than the lake blue that it stands for, and no chalk either.
    expect(['#1f6fb2', '#f4f1e8']).not.toContain(await painted(page, 6, 1));
    expect(await painted(page, 6, 1)).not.toBe(await painted(page, 6, 2));
    // A stroke below the chart draws nothing there.
    await drag(page, [6, 3]);
    expect(await rowsOf(page)).toEqual(before);
    await choose(page, 'Repeat');
    await choose(page, 'As thread');
    await page.locator('.sheet-threads img').first().waitFor();
    await expect
      .poll(() =>
        page.evaluate(() => {
          const image = document.querySelector<HTMLImageElement>('.sheet-threads img');
          return image?.complete === true && image.naturalWidth > 0;
        }),
      )
      .toBe(true);
    await choose(page, 'As thread');
    await worked(page);
    expect(await painted(page, 1, 1)).toBe('#1f6fb2');
    // A hatch that goes through the middle of a knot.
    await choose(page, 'Signs');
    await worked(page);
    expect(await painted(page, 1, 1)).not.toBe('#1f6fb2');
    expect(await painted(page, 1, 2)).toBe('#f4f1e8');
  });
});

describe('on a phone', () => {
  test('one finger draws or pushes, two push and zoom; all is in reach', async ({ openPage }) => {
    const page = await openDraw(openPage, BLANK, {
      ...PHONE,
      viewport: { width: 360, height: 780 },
    });
    await drawIn(page, 'lake blue');
    await page.locator('halfhitch-sheet').scrollIntoViewIfNeeded();
    const touch = await page.context().newCDPSession(page);
    type Point = { x: number; y: number };
    const send = (
      type: 'touchStart' | 'touchMove' | 'touchEnd',
      ...points: readonly Point[]
    ): Promise<unknown> =>
      touch.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: points.map((point, id) => ({ ...point, id })),
      });
    const [from, to] = [await middleOf(page, 2, 1), await middleOf(page, 2, 4)];
    await send('touchStart', from);
    await send('touchMove', to);
    await send('touchEnd');
    await expect.poll(async () => (await rowsOf(page))[1]).toBe('bbbb..');

    // Two fingers, apart: larger, and the stroke that the first began is given up.
    const width = (): Promise<number> =>
      page.locator('.sheet-cell').evaluate((cell) => cell.getBoundingClientRect().width);
    const before = await width();
    const drawn = await rowsOf(page);
    const one = await middleOf(page, 3, 2);
    const two = await middleOf(page, 4, 4);
    await send('touchStart', one);
    await send('touchStart', one, two);
    await send('touchMove', { x: one.x - 40, y: one.y - 40 }, { x: two.x + 40, y: two.y + 40 });
    await send('touchEnd');
    await expect.poll(width).toBeGreaterThan(before * 1.2);
    expect(await rowsOf(page)).toEqual(drawn);

    await choose(page, 'Move view');
    const place = (): Promise<number> =>
      page.locator('halfhitch-sheet').evaluate((sheet) => sheet.scrollLeft + sheet.scrollTop);
    const start = await place();
    const sheet = (await page.locator('halfhitch-sheet').boundingBox()) as {
      x: number;
      y: number;
    };
    await send('touchStart', { x: sheet.x + 150, y: sheet.y + 150 });
    await send('touchMove', { x: sheet.x + 110, y: sheet.y + 150 });
    await send('touchEnd');
    await expect.poll(place).toBeGreaterThan(start);
    expect(await rowsOf(page)).toEqual(drawn);
    expect(await smallTargets(page)).toEqual({ over: 0, small: [] });
  });
});

describe('access', () => {
  for (const [size, options, schemes] of [
    ['desktop', DESKTOP, ['light', 'dark']],
    ['phone', PHONE, ['light']],
  ] as const) {
    test(`axe finds nothing serious: ${size}`, async ({ openPage }) => {
      const page = await openDraw(openPage, BLANK, options);
      await openChart(page, ['bbbbb', 'bbbbb'], '1000012223');
      await page.locator('.verdict.bad').waitFor();
      await choose(page, 'Signs');
      for (const colorScheme of schemes) {
        await page.emulateMedia({ colorScheme });
        expect(await seriousFindings(page)).toEqual([]);
      }
      await choose(page, 'New chart');
      await choose(page, 'Begin to draw');
      await worked(page);
      await choose(page, 'Another size');
      expect(await seriousFindings(page)).toEqual([]);
    });
  }
});
