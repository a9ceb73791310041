import type { Locator, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { describe } from 'vitest';
import { expect, PHONE, test } from '../../../../testing/browser.js';
import { seriousFindings, smallTargets } from './axe.js';
import { coloursShown, openMaker, plainShare, useAsPiece, watchPolicy } from './makers.js';
import type { ChosenFile } from './workbench.js';

const STILL = { viewport: { width: 900, height: 700 }, reducedMotion: 'reduce' } as const;

const PICTURE = ['From a picture', 'halfhitch-from-picture'] as const;

type Rgba = readonly [number, number, number, number];
const LAKE: Rgba = [0x1f, 0x6f, 0xb2, 255];
const CHALK: Rgba = [0xf4, 0xf1, 0xe8, 255];
const ORANGE: Rgba = [0xd9, 0x64, 0x2a, 255];
const CLEAR: Rgba = [0, 0, 0, 0];

function png(
  width: number,
  height: number,
  colourOf: (x: number, y: number) => Rgba,
  name = 'Heron.png',
): ChosenFile {
  const picture = new PNG({ width, height });
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) picture.data.set(colourOf(x, y), 4 * (y * width + x));
  }
  return { name, mimeType: 'image/png', buffer: PNG.sync.write(picture) };
}

/** Sky over a lake, with a sail: 300 x 200 px. */
const BOAT = png(300, 200, (x, y) => {
  if (x > 100 && x < 200 && y > 40 && y < 120) return ORANGE;
  return y < 100 ? CHALK : LAKE;
});

async function choose(maker: Locator, file: ChosenFile): Promise<void> {
  await maker.locator('input[type=file]').setInputFiles({ ...file });
}

async function workedOut(maker: Locator): Promise<string> {
  await maker.locator('button[type=submit][aria-disabled=false]').waitFor();
  return (await maker.locator('.preview-frame canvas').getAttribute('aria-label')) ?? '';
}

async function setFigures(
  maker: Locator,
  figures: Readonly<Record<string, string>>,
): Promise<void> {
  for (const [label, value] of Object.entries(figures)) await maker.getByLabel(label).fill(value);
}

describe('a picture', () => {
  test('becomes a chart at the true proportions of a knot', async ({ openPage }) => {
    const page = await openPage('#draw', STILL);
    const refused = await watchPolicy(page);
    const maker = await openMaker(page, ...PICTURE);
    await choose(maker, BOAT);
    await setFigures(maker, { 'Columns, knots wide': '60' });
    // 60 columns of a picture 3 : 2, in knots about 1.36 times as high as wide.
    await expect
      .poll(async () => Number(await maker.getByLabel('Rows, knots long').inputValue()))
      .toBeLessThan(32);
    const rows = Number(await maker.getByLabel('Rows, knots long').inputValue());
    expect(rows).toBeGreaterThan(26);
    expect(await workedOut(maker)).toContain(`${rows} rows of 60 knots`);
    // As thread.
    const canvas = maker.locator('.preview-frame canvas');
    await expect
      .poll(() => plainShare(canvas, ['#f4f1e8', '#1f6fb2', '#d9642a']))
      .toBeLessThan(0.1);
    expect(await coloursShown(canvas)).toBeGreaterThan(100);
    expect(await refused()).toEqual([]);

    const chart = await useAsPiece(page, maker);
    expect(chart).toMatchObject({ name: 'Heron', rows, columns: 60 });
    const hexAt = (row: number, column: number): string | undefined =>
      chart.colours[chart.cells[row * 60 + column] as number]?.hex;
    expect(hexAt(0, 0)).toBe('#f4f1e8');
    expect(hexAt(rows - 1, 59)).toBe('#1f6fb2');
    expect(hexAt(Math.round(rows * 0.4), 30)).toBe('#d9642a');
  });

  test('is cropped by fields and by hand, and matched to the threads that are ticked', async ({
    openPage,
  }) => {
    const page = await openPage('#draw', STILL);
    const maker = await openMaker(page, ...PICTURE);
    await choose(maker, BOAT);
    await workedOut(maker);
    await setFigures(maker, {
      'From the left': '110',
      'From the top': '50',
      Width: '80',
      Height: '60',
    });
    await expect
      .poll(async () => {
        await workedOut(maker);
        return maker.locator('.legend li').count();
      })
      .toBe(1);
    // Its right lower corner is dragged to the middle of the picture, and then it is moved back.
    await maker.getByRole('button', { name: 'The whole picture' }).click();
    const area = maker.locator('.crop-area');
    await area.scrollIntoViewIfNeeded();
    const box = await area.boundingBox();
    if (box === null) throw new Error('There is no picture.');
    const drag = async (from: readonly [number, number], to: readonly [number, number]) => {
      await page.mouse.move(box.x + box.width * from[0], box.y + box.height * from[1]);
      await page.mouse.down();
      await page.mouse.move(box.x + box.width * to[0], box.y + box.height * to[1], { steps: 4 });
      await page.mouse.up();
    };
    const cropped = async (): Promise<number[]> =>
      Promise.all(
        ['From the left', 'From the top', 'Width', 'Height'].map(async (label) =>
          Number(await maker.getByLabel(label).inputValue()),
        ),
      );
    await drag([0.995, 0.99], [0.5, 0.5]);
    const [left, top, width, height] = await cropped();
    expect([left, top]).toEqual([0, 0]);
    expect(Math.abs((width as number) - 150)).toBeLessThanOrEqual(3);
    expect(Math.abs((height as number) - 100)).toBeLessThanOrEqual(3);
    await drag([0.25, 0.25], [0.95, 0.95]);
    const moved = await cropped();
    expect(moved.slice(2)).toEqual([width, height]);
    expect((moved[0] as number) + (moved[2] as number)).toBe(300);
    expect((moved[1] as number) + (moved[3] as number)).toBe(200);

    // Only chosen threads, of which one is new.
    await maker.getByRole('button', { name: 'The whole picture' }).click();
    await setFigures(maker, { 'Colours, at most': '3' });
    await maker.getByLabel('Use my threads').check();
    for (const box of await maker.locator('.thread-list input').all()) await box.uncheck();
    await expect
      .poll(() => maker.getByRole('alert').textContent())
      .toBe('Tick at least one thread.');
    await maker.getByLabel('Another thread').fill('#14181d');
    await maker.getByLabel('Its name').fill('peat');
    await maker.getByRole('button', { name: 'Add', exact: true }).click();
    await expect
      .poll(async () => {
        await workedOut(maker);
        return maker.locator('.legend').textContent();
      })
      .toContain('peat');
    await maker.locator('.thread-list').getByText('chalk', { exact: true }).click();
    await expect.poll(() => maker.locator('.match-table tbody tr').count()).toBe(3);
    const chart = await useAsPiece(page, maker);
    expect(chart.colours.map(({ name }) => name).sort()).toEqual(['chalk', 'peat']);
  });

  test('that can be seen through is laid on a colour, and one that lies on its side is put upright', async ({
    openPage,
  }) => {
    const page = await openPage('#draw', STILL);
    const maker = await openMaker(page, ...PICTURE);
    await choose(
      maker,
      png(60, 60, (x) => (x < 30 ? CLEAR : ORANGE), 'Otter.png'),
    );
    await workedOut(maker);
    await expect
      .poll(() => maker.locator('.notices').textContent())
      .toContain('can be seen through');
    await maker.getByLabel('Behind what can be seen through').fill('#2f7d4f');
    await expect
      .poll(async () => {
        await workedOut(maker);
        return maker
          .locator('halfhitch-swatch')
          .evaluateAll((all) => all.map((one) => getComputedStyle(one).backgroundColor));
      })
      .toContain('rgb(47, 125, 79)');

    // A camera that was turned notes it in the picture.
    await choose(maker, await turnedJpeg(page));
    await workedOut(maker);
    await expect
      .poll(() => maker.locator('.making-first').textContent())
      .toMatch(/40\s*×\s*80\s*pixels/);
  });

  test('is worked out for the last wish only, and stays when the next cannot be used', async ({
    openPage,
  }) => {
    const page = await openPage('#draw', STILL);
    const maker = await openMaker(page, ...PICTURE);
    await choose(maker, await largeJpeg(page));
    const columns = maker.getByLabel('Columns, knots wide');
    await columns.waitFor();
    for (const wish of ['12', '25', '50', '75']) await columns.fill(wish);
    await expect.poll(() => workedOut(maker)).toContain('rows of 75 knots');
    await maker.getByLabel('Mix colours by dots').check();
    await maker.getByLabel('Take out stray').uncheck();
    await expect.poll(() => workedOut(maker)).toContain('rows of 75 knots');

    // Another that cannot be used changes nothing of it.
    const alert = maker.locator('.problem');
    const huge = png(1, 1, () => LAKE, 'huge.png');
    huge.buffer.writeUInt32BE(40_000, 16);
    huge.buffer.writeUInt32BE(40_000, 20);
    await choose(maker, huge);
    await expect.poll(() => alert.textContent()).toContain('1600.0 megapixels');
    const svg = '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>';
    await choose(maker, { name: '<b>Tarn.png', mimeType: 'image/png', buffer: Buffer.from(svg) });
    await expect.poll(() => alert.textContent()).toContain('<b>Tarn.png');
    const broken = { ...BOAT, name: 'broken.png', buffer: Buffer.from(BOAT.buffer) };
    broken.buffer.fill(0xff, 40);
    await choose(maker, broken);
    await expect.poll(() => alert.textContent()).toContain('damaged');
    expect(await workedOut(maker)).toContain('rows of 75 knots');
    await choose(maker, BOAT);
    await expect.poll(() => alert.count()).toBe(0);
  });

  test('can be made one on a phone, by everybody', async ({ openPage }) => {
    const page = await openPage('#draw', {
      ...PHONE,
      viewport: { width: 360, height: 760 },
      reducedMotion: 'reduce',
    });
    const maker = await openMaker(page, ...PICTURE);
    await choose(maker, BOAT);
    await workedOut(maker);
    await maker.getByLabel('Use my threads').check();
    await maker.locator('.match-table').waitFor();
    const { over, small } = await smallTargets(page);
    expect(over).toBeLessThanOrEqual(0);
    expect(small).toEqual([]);
    expect(await seriousFindings(page)).toEqual([]);
    const wide = await maker.evaluate((element) => element.scrollWidth - element.clientWidth);
    expect(wide).toBeLessThanOrEqual(0);
  });
});

/** A JPEG drawn by the browser. */
async function jpeg(page: Page, width: number, height: number): Promise<Buffer> {
  const base64 = await page.evaluate(
    ([width, height]) => {
      const canvas = document.createElement('canvas');
      canvas.width = width as number;
      canvas.height = height as number;
      const context = canvas.getContext('2d') as CanvasRenderingContext2D;
      const sky = context.createLinearGradient(0, 0, 0, canvas.height);
      sky.addColorStop(0, '#9cc7e8');
      sky.addColorStop(1, '#123a5c');
      context.fillStyle = sky;
      context.fillRect(0, 0, canvas.width, canvas.height);
      context.fillStyle = '#d9642a';
      context.fillRect(canvas.width / 3, canvas.height / 4, canvas.width / 4, canvas.height / 2);
      return canvas.toDataURL('image/jpeg', 0.9).split(',')[1] as string;
    },
    [width, height],
  );
  return Buffer.from(base64, 'base64');
}

async function largeJpeg(page: Page): Promise<ChosenFile> {
  return { name: 'Kittiwake.jpg', mimeType: 'image/jpeg', buffer: await jpeg(page, 2000, 1500) };
}

/** 80 x 40 px as stored, with the note (Exif 2.32, orientation 6) that it is to be turned. */
async function turnedJpeg(page: Page): Promise<ChosenFile> {
  const stored = await jpeg(page, 80, 40);
  const exif = Buffer.from([
    ...[0xff, 0xe1, 0x00, 0x22, ...Buffer.from('Exif\0\0', 'latin1')],
    ...[0x4d, 0x4d, 0x00, 0x2a, 0x00, 0x00, 0x00, 0x08, 0x00, 0x01],
    ...[0x01, 0x12, 0x00, 0x03, 0x00, 0x00, 0x00, 0x01, 0x00, 0x06, 0x00, 0x00],
    ...[0x00, 0x00, 0x00, 0x00],
  ]);
  const buffer = Buffer.concat([stored.subarray(0, 2), exif, stored.subarray(2)]);
  return { name: 'Otter.jpg', mimeType: 'image/jpeg', buffer };
}
