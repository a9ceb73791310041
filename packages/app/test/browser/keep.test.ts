import { readFileSync } from 'node:fs';
import { readChart, readChartDocument } from '@halfhitch/core';
import validator from 'gltf-validator';
import type { Download, Page } from 'playwright-core';
import { describe, inject } from 'vitest';
import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';
import { readProjectDocument } from '../../src/keep/project-document.js';
import { fitsProjectSchema } from '../keep/project-schemas.js';
import { seriousFindings, smallTargets } from './axe.js';
import { asText, type ChosenFile, choose, drop, STILL, textChart } from './workbench.js';

const FLAG = ['bbbbbb', 'bboobb', 'bowwob', 'bboobb'];

async function open(page: Page, file: ChosenFile, name: string): Promise<void> {
  await choose(page, file);
  await page.getByRole('heading', { name: `Export ${name}`, exact: true }).waitFor();
}

/** The names of the projects in their order. */
const listed = (page: Page): Promise<string[]> => page.locator('.library h3').allTextContents();

const item = (page: Page, name: string) =>
  page.locator('.library-item').filter({ has: page.getByRole('heading', { name, exact: true }) });

async function exported(
  page: Page,
  kind: string,
): Promise<{ name: string; bytes: Buffer; path: string }> {
  const [download] = (await Promise.all([
    page.waitForEvent('download'),
    page.locator('.exports').getByRole('button', { name: kind, exact: true }).click(),
  ])) as [Download, unknown];
  const path = await download.path();
  return { name: download.suggestedFilename(), bytes: readFileSync(path), path };
}

describe('keep', () => {
  test('projects are listed with pictures, opened, copied, renamed, removed and brought back', async ({
    openPage,
  }) => {
    const page = await openPage('#keep', { ...DESKTOP, reducedMotion: 'reduce' });
    await page.getByText('Nothing is kept yet.').waitFor();
    for (const name of ['Heron', 'Otter', 'Kittiwake']) {
      await open(page, asText(textChart(FLAG, name)), name);
      await expect.poll(() => listed(page)).toContain(name);
    }
    await expect.poll(() => listed(page)).toEqual(['Kittiwake', 'Otter', 'Heron']);
    await expect.poll(() => page.locator('.library img').count()).toBe(3);
    const sizes = await page.locator('.library img').evaluateAll((images) =>
      Promise.all(
        images.map(async (image) => {
          await (image as HTMLImageElement).decode();
          return (image as HTMLImageElement).naturalWidth;
        }),
      ),
    );
    for (const size of sizes) expect(size).toBeGreaterThan(100);
    expect(await seriousFindings(page)).toEqual([]);

    await item(page, 'Heron').getByRole('button', { name: /^Open/ }).click();
    await page.getByRole('heading', { name: 'Export Heron', exact: true }).waitFor();
    // Looking at a project is no change to it.
    expect(await listed(page)).toEqual(['Kittiwake', 'Otter', 'Heron']);
    await item(page, 'Heron').getByText('Open now.').waitFor();

    await item(page, 'Otter').getByRole('button', { name: /^Copy/ }).click();
    await expect.poll(() => listed(page)).toEqual(['Otter (copy)', 'Kittiwake', 'Otter', 'Heron']);
    await page.getByRole('button', { name: 'Take it back' }).click();
    await expect.poll(() => listed(page)).toEqual(['Kittiwake', 'Otter', 'Heron']);

    await item(page, 'Otter')
      .getByRole('button', { name: /^Rename/ })
      .click();
    await page.getByLabel('New name').fill('Otter II');
    await page.getByLabel('New name').press('Enter');
    await expect.poll(() => listed(page)).toEqual(['Otter II', 'Kittiwake', 'Heron']);
    // The open one is renamed as an edit, which can be undone.
    await item(page, 'Heron')
      .getByRole('button', { name: /^Rename/ })
      .click();
    await page.getByLabel('New name').fill('Grey heron');
    await page.getByRole('button', { name: 'Keep the name' }).click();
    await page.getByRole('heading', { name: 'Export Grey heron' }).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('heading', { name: 'Export Heron', exact: true }).waitFor();
    await expect.poll(() => listed(page)).toEqual(['Heron', 'Otter II', 'Kittiwake']);

    await item(page, 'Kittiwake')
      .getByRole('button', { name: /^Remove/ })
      .click();
    await expect.poll(() => listed(page)).toEqual(['Heron', 'Otter II']);
    await page.getByRole('button', { name: 'Take it back' }).click();
    await expect.poll(() => listed(page)).toEqual(['Heron', 'Otter II', 'Kittiwake']);
    await item(page, 'Heron')
      .getByRole('button', { name: /^Remove/ })
      .click();
    await page.getByText('It stays open here').waitFor();
    await page.reload();
    await expect.poll(() => listed(page)).toEqual(['Otter II', 'Kittiwake']);
    await page.getByText('Removed: 1').click();
    await page.getByRole('button', { name: 'Bring back Heron' }).click();
    await expect.poll(() => listed(page)).toContain('Heron');
    await item(page, 'Heron')
      .getByRole('button', { name: /^Remove/ })
      .click();
    await page.getByText('Removed: 1').click();
    await page.getByRole('button', { name: 'Erase Heron' }).click();
    await page.getByRole('button', { name: 'Erase it for good? Heron' }).click();
    await expect.poll(() => page.getByText('Removed: 1').count()).toBe(0);
  });

  test('a damaged project is told of, saved as it is and erased, and keeps no other from being opened', async ({
    openPage,
  }) => {
    const page = await openPage('#keep', STILL);
    for (const name of ['Heron', 'Kittiwake']) {
      await open(page, asText(textChart(FLAG, name)), name);
      await expect.poll(() => listed(page)).toContain(name);
    }
    await page.evaluate(async () => {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const asked = indexedDB.open('halfhitch');
        asked.onsuccess = () => resolve(asked.result);
        asked.onerror = () => reject(asked.error);
      });
      const shelf = database.transaction('projects', 'readwrite').objectStore('projects');
      await new Promise<void>((resolve) => {
        const walk = shelf.openCursor();
        walk.onsuccess = () => {
          const cursor = walk.result;
          if (cursor === null) return resolve();
          if (cursor.value.name === 'Heron') cursor.update({ ...cursor.value, rows: 'four' });
          cursor.continue();
        };
      });
      database.close();
    });
    await page.reload();
    await page.getByRole('heading', { name: 'One project is damaged' }).waitFor();
    expect(await listed(page)).toEqual(['Kittiwake']);
    expect(await seriousFindings(page)).toEqual([]);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save what is left' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('heron-damaged.json');
    expect(readFileSync(await download.path(), 'utf8')).toContain('"four"');
    await page.getByRole('button', { name: 'Erase Heron' }).click();
    await page.getByRole('button', { name: 'Erase it for good? Heron' }).click();
    await expect.poll(() => page.getByText('One project is damaged').count()).toBe(0);
    expect(await listed(page)).toEqual(['Kittiwake']);
  });

  test('everything that is exported is what it says, and is opened again', async ({ openPage }) => {
    const page = await openPage('#keep', { ...STILL, acceptDownloads: true });
    const marks = { edge: 'wrapped', start: 'right' };
    await open(
      page,
      asText(
        Buffer.from(
          JSON.stringify({
            format: 'halfhitch-chart',
            version: 1,
            name: 'Heron',
            ...marks,
            colours: [
              { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
              { key: 'o', hex: '#d9642a', name: 'buoy orange' },
              { key: 'w', hex: '#f4f1e8', name: 'chalk' },
            ],
            rows: FLAG,
          }),
        ),
        'heron.json',
      ),
      'Heron',
    );
    const colours = (bytes: Buffer, name: string): string[] => {
      const { cells, colours: legend } = readChart(bytes, name).chart;
      return Array.from(cells, (cell) => legend[cell]?.hex ?? '');
    };

    const chart = await exported(page, 'Chart document');
    expect(chart.name).toBe('heron.json');
    const read = readChartDocument(chart.bytes.toString()).chart;
    expect(read).toMatchObject({ name: 'Heron', ...marks });

    const png = await exported(page, 'PNG chart');
    expect(png.name).toBe('heron.png');
    expect(colours(png.bytes, png.name)).toEqual(colours(chart.bytes, chart.name));

    const project = await exported(page, 'Project');
    expect(project.name).toBe('heron.halfhitch.json');
    const kept = readProjectDocument(project.bytes.toString()).project;
    expect(kept).toMatchObject({ kind: 'alpha', chart: read });
    expect(fitsProjectSchema(JSON.parse(project.bytes.toString()))).toBe(true);

    const svg = await exported(page, 'SVG picture');
    const seen = await page.evaluate(async (text) => {
      const image = new Image();
      image.src = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
      await image.decode();
      return image.naturalWidth;
    }, svg.bytes.toString());
    expect(seen).toBeGreaterThan(100);

    const web = await exported(page, 'Web page');
    const model = await exported(page, '3D model');
    const report = await validator.validateBytes(new Uint8Array(model.bytes));
    expect(report.issues.messages).toEqual([]);
    expect(report.info.totalTriangleCount).toBeGreaterThan(1000);

    // Each is opened by the same button, or dropped; a project that is here already as a copy of its own.
    for (const [file, name] of [
      [{ ...svg, mimeType: 'image/svg+xml' }, 'SVG'],
      [{ ...web, mimeType: 'text/html' }, 'web page'],
      [{ ...project, mimeType: 'application/json' }, 'project'],
    ] as const) {
      await open(page, asText(textChart(['bob'], name)), name);
      const chosen = { name: file.name, mimeType: file.mimeType, buffer: file.bytes };
      if (name === 'SVG') await drop(page, chosen);
      else await choose(page, chosen);
      await page.getByRole('heading', { name: 'Export Heron', exact: true }).waitFor();
      const again = await exported(page, 'Chart document');
      expect(readChartDocument(again.bytes.toString()).chart).toEqual(read);
    }
    const copy = readProjectDocument((await exported(page, 'Project')).bytes.toString()).project;
    expect(copy.id).not.toBe(kept.id);
    expect(copy.cut).toEqual(kept.cut);

    // On another device the count of knots tied comes along.
    const begun = {
      ...JSON.parse(project.bytes.toString()),
      id: 'a-device-of-its-own',
      progress: { done: 7, columns: 6, seconds: 90, marks: [1, 2] },
    };
    await choose(page, asText(Buffer.from(JSON.stringify(begun)), 'begun.json'));
    await page.locator('.library-item').filter({ hasText: '7 of 24 tied' }).waitFor();

    // What can't be opened is told, with its name, and what is open stays.
    const later = project.bytes.toString().replace('"version": 1', '"version": 2');
    await choose(page, asText(Buffer.from(later), 'later.json'));
    await page
      .getByRole('alert')
      .filter({ hasText: 'later.json' })
      .filter({ hasText: 'update' })
      .waitFor();
    await choose(page, asText(svg.bytes.subarray(0, svg.bytes.indexOf('rows')), 'cut.svg'));
    await page.getByRole('alert').filter({ hasText: 'cut.svg' }).waitFor();
    await choose(page, asText(model.bytes, 'heron.glb'));
    await page.getByRole('alert').filter({ hasText: 'heron.glb' }).waitFor();
    expect(await page.getByRole('heading', { name: 'Export Heron', exact: true }).count()).toBe(1);
  });

  test('a link carries the pattern to another browser, and nothing that was tampered with', async ({
    openPage,
  }) => {
    const page = await openPage('#keep', {
      ...STILL,
      permissions: ['clipboard-read', 'clipboard-write'],
    });
    await open(page, asText(textChart(FLAG, 'Heron')), 'Heron');
    await page.getByRole('button', { name: 'Link', exact: true }).click();
    const address = await page.locator('#link').inputValue();
    expect(address).toMatch(/#pattern=1\.[\w-]+$/);
    await page.getByRole('button', { name: 'Copy the link' }).click();
    await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toBe(address);
    const hash = new URL(address).hash;

    const other = await openPage(hash, STILL);
    await other.getByRole('heading', { name: 'Heron', exact: true }).waitFor();
    expect(new URL(other.url()).hash).not.toContain('pattern');
    await other.reload();
    await other.getByRole('heading', { name: 'Heron', exact: true }).waitFor();
    // Broken, at first and in an open page: told of, and what there is is shown.
    const broken = await openPage(`${hash.slice(0, -9)}AAAAAAAA`, STILL);
    await broken.getByRole('alert').filter({ hasText: 'The link cannot be opened.' }).waitFor();
    await broken.getByRole('heading', { name: 'Otter', exact: true }).waitFor();
    expect(await broken.getByRole('alert').count()).toBe(1);
    await broken.evaluate(() => {
      location.hash = '#pattern=7.AAAA';
    });
    await broken.getByRole('alert').filter({ hasText: 'later version' }).waitFor();
    await broken.evaluate((good) => {
      location.hash = good;
    }, hash);
    await broken.getByRole('heading', { name: 'Heron', exact: true }).waitFor();
    expect(await broken.getByRole('alert').count()).toBe(0);
  });

  test('a file chosen while the page still opens something by itself is what is opened', async ({
    openPage,
  }) => {
    const page = await openPage('about:blank', STILL);
    let late = (): void => {};
    const waited = new Promise<void>((resolve) => {
      late = resolve;
    });
    await page.route('**/assets/otter-*.js', async (route) => {
      await waited;
      await route.continue();
    });
    const demo = page.waitForRequest('**/assets/otter-*.js');
    await page.goto(new URL('#keep', inject('appAddress')).href);
    await demo;
    await open(page, asText(textChart(FLAG, 'Heron')), 'Heron');
    const come = page.waitForResponse('**/assets/otter-*.js');
    late();
    await come;
    await expect.poll(() => listed(page)).toEqual(['Heron']);
    expect(await page.getByRole('heading', { name: 'Export Heron', exact: true }).count()).toBe(1);
  });

  test('on a phone everything is in reach, in the dark too', async ({ openPage }) => {
    const page = await openPage('#keep', {
      ...PHONE,
      viewport: { width: 360, height: 740 },
      colorScheme: 'dark',
      reducedMotion: 'reduce',
    });
    await open(page, asText(textChart(FLAG, 'Heron'.repeat(30))), 'Heron'.repeat(30));
    await expect.poll(() => page.locator('.library img').count()).toBe(1);
    await page.getByRole('button', { name: 'Link', exact: true }).click();
    await page.getByRole('button', { name: /^Rename/ }).click();
    await page.getByRole('button', { name: 'Show the sheets' }).click();
    await page.locator('.sheet-cut').waitFor();
    const { over, small } = await smallTargets(page);
    expect(over).toBeLessThanOrEqual(0);
    expect(small).toEqual([]);
    // Nothing of the sheets makes the page longer than what is seen of it.
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThan(8_000);
    expect(await seriousFindings(page)).toEqual([]);
  });
});
