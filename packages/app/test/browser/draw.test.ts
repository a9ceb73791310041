import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe } from 'vitest';
import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';
import { seriousFindings, smallTargets } from './axe.js';

interface DrawnChart {
  readonly name: string;
  readonly rows: number;
  readonly columns: number;
  readonly colours: readonly { key: string; hex: string; name: string }[];
  readonly cells: Uint8Array;
}

interface PageSession {
  readonly project: { readonly chart: DrawnChart } | null;
  readonly piece: { readonly chart: DrawnChart } | null;
  openChart(chart: DrawnChart): void;
}

type WithSession = HTMLElement & { readonly session: PageSession };

const COLOURS = [
  { key: '.', hex: '#f4f1e8', name: 'chalk' },
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#d9642a', name: 'buoy orange' },
];

/** Opens the view with a chart: `.` chalk, `b` lake blue, `o` buoy orange; all else is as it is set up. */
async function openDraw(
  openPage: (path?: string, options?: BrowserContextOptions) => Promise<Page>,
  rows: readonly string[],
  options: BrowserContextOptions = DESKTOP,
): Promise<Page> {
  const page = await openPage('#draw', { reducedMotion: 'reduce', ...options });
  await page.locator('.sheet-cell').waitFor();
  await openChart(page, rows);
  return page;
}

async function openChart(page: Page, rows: readonly string[], knots?: string): Promise<void> {
  await page.evaluate(
    ({ rows, colours, knots }) => {
      const { session } = document.querySelector<WithSession>('halfhitch-workbench') as WithSession;
      const keys = colours.map(({ key }) => key);
      session.openChart({
        name: 'Heron',
        rows: rows.length,
        columns: rows[0]?.length ?? 0,
        colours,
        cells: Uint8Array.from([...rows.join('')], (key) => keys.indexOf(key)),
        ...(knots === undefined ? {} : { knots: Uint8Array.from([...knots], Number) }),
      });
    },
    { rows, colours: COLOURS, knots },
  );
  await worked(page);
}

/** Waits until the chart as it stands is worked out and painted. */
async function worked(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const { session } = document.querySelector<WithSession>('halfhitch-workbench') as WithSession;
    return session.project !== null && session.piece?.chart === session.project.chart;
  });
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
  );
}

/** The chart as rows of keys. */
async function rowsOf(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const { session } = document.querySelector<WithSession>('halfhitch-workbench') as WithSession;
    const chart = session.project?.chart as DrawnChart;
    return Array.from({ length: chart.rows }, (_, row) =>
      Array.from(
        chart.cells.subarray(row * chart.columns, (row + 1) * chart.columns),
        (cell) => chart.colours[cell]?.key,
      ).join(''),
    );
  });
}

/** The middle of a knot in the page's window, rows and columns from 1. */
async function middleOf(
  page: Page,
  row: number,
  column: number,
): Promise<{ x: number; y: number }> {
  return page.evaluate(
    ([r, c]) => {
      const cell = document.querySelector('.sheet-cell') as HTMLElement;
      const box = cell.getBoundingClientRect();
      const fromRow = Number(cell.parentElement?.getAttribute('aria-rowindex'));
      const fromColumn = Number(cell.getAttribute('aria-colindex'));
      return {
        x: box.left + box.width * ((c as number) - fromColumn + 0.5),
        y: box.top + box.height * ((r as number) - fromRow + 0.5),
      };
    },
    [row, column],
  );
}

/** Drags the mouse from knot to knot. */
async function drag(page: Page, ...knots: readonly (readonly [number, number])[]): Promise<void> {
  const points = [];
  for (const [row, column] of knots) points.push(await middleOf(page, row, column));
  const [first] = points;
  if (first === undefined) return;
  await page.mouse.move(first.x, first.y);
  await page.mouse.down();
  for (const { x, y } of points) await page.mouse.move(x, y);
  await page.mouse.up();
}

async function choose(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).click();
}

/** A colour of the legend to draw with. */
async function drawIn(page: Page, name: string): Promise<void> {
  await page.locator('.chip', { hasText: name }).click();
}

/** The colour of the canvas at the middle of a knot, a little aside of its signs. */
async function painted(page: Page, row: number, column: number): Promise<string> {
  const { x, y } = await middleOf(page, row, column);
  return page.evaluate(
    ([x, y]) => {
      const canvas = document.querySelector('.sheet-canvas') as HTMLCanvasElement;
      const box = canvas.getBoundingClientRect();
      const scale = canvas.width / box.width;
      const data = canvas
        .getContext('2d')
        ?.getImageData((x - box.left) * scale, (y - box.top) * scale, 1, 1).data;
      return `#${[...(data ?? [])]
        .slice(0, 3)
        .map((value) => value.toString(16).padStart(2, '0'))
        .join('')}`;
    },
    [x, y] as const,
  );
}

async function cursorHasFocus(page: Page): Promise<boolean> {
  return page.evaluate(() => document.activeElement?.classList.contains('sheet-cell') === true);
}

const BLANK = ['......', '......', '......', '......', '......'];

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
