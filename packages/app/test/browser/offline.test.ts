import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, inject } from 'vitest';
import { expect, test } from '../../../../testing/browser.js';
import { asText, choose, demoShown, STILL, textChart } from './workbench.js';

const DIST = join(import.meta.dirname, '..', '..', 'dist');
const WITH_WORKER = { ...STILL, serviceWorkers: 'allow' } as const;

/** Waits until all files are put by and the page is served from them. */
async function ready(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (navigator.serviceWorker.controller === null) {
      await new Promise((resolve) => {
        navigator.serviceWorker.addEventListener('controllerchange', resolve, { once: true });
      });
    }
  });
}

describe('without a connection', () => {
  test('after the first load everything works: every view, a knot in motion, files of every kind', async ({
    openPage,
  }) => {
    const page = await openPage('', WITH_WORKER);
    await demoShown(page);
    await ready(page);
    await page.context().setOffline(true);
    const failed: string[] = [];
    page.on('requestfailed', (request) => failed.push(request.url()));
    await page.reload();
    await demoShown(page);
    await page.locator('halfhitch-knot').scrollIntoViewIfNeeded();
    await page.locator('halfhitch-knot canvas').waitFor();
    await page.locator('halfhitch-knot').getByRole('button', { name: 'Play' }).first().click();
    await page.waitForFunction(
      () => (document.querySelector('halfhitch-knot')?.position ?? 0) > 0.1,
    );
    for (const view of await page.locator('.views a').all()) {
      await view.click();
      await page.waitForFunction(
        () =>
          document.querySelector('main > *') !== null &&
          document.querySelector('main > .welcome') === null,
      );
      expect(await page.locator('.problem').count()).toBe(0);
    }
    await page.evaluate(() => {
      location.hash = '#keep';
    });
    await choose(page, asText(textChart(['bob', 'obo'], 'Heron')));
    await page.getByRole('heading', { name: 'Export Heron', exact: true }).waitFor();
    for (const kind of ['Web page', '3D model', 'SVG picture']) {
      await Promise.all([
        page.waitForEvent('download'),
        page.locator('.exports').getByRole('button', { name: kind, exact: true }).click(),
      ]);
    }
    await page.getByRole('button', { name: 'Show the sheets' }).click();
    await page.locator('.sheet-cut .cut-table').first().waitFor();
    expect(failed).toEqual([]);
  });

  test('the web app can be installed', async ({ openPage }) => {
    const page = await openPage('', STILL);
    const manifest = await page.evaluate(async () => {
      const link = document.querySelector<HTMLLinkElement>('link[rel=manifest]');
      const response = await fetch(link?.href ?? '');
      return (await response.json()) as {
        name: string;
        start_url: string;
        display: string;
        icons: { src: string; sizes: string; purpose?: string }[];
      };
    });
    expect(manifest).toMatchObject({ name: 'Halfhitch', start_url: './', display: 'standalone' });
    expect(manifest.icons.some(({ purpose }) => purpose === 'maskable')).toBe(true);
    for (const { src, sizes } of manifest.icons) {
      const size = await page.evaluate(async (address) => {
        const image = new Image();
        image.src = address;
        await image.decode();
        return `${image.naturalWidth}x${image.naturalHeight}`;
      }, src);
      expect(size).toBe(sizes);
    }
  });
});

describe('a newer version', () => {
  const copy = mkdtempSync(join(tmpdir(), 'halfhitch-newer-'));
  let address = '';
  let close = (): void => {};

  // A server of its own, whose files can be replaced by newer ones.
  beforeAll(async () => {
    cpSync(DIST, copy, { recursive: true });
    const types: Record<string, string> = {
      '.html': 'text/html',
      '.js': 'text/javascript',
      '.css': 'text/css',
      '.svg': 'image/svg+xml',
      '.png': 'image/png',
      '.webmanifest': 'application/manifest+json',
    };
    const server = createServer((request, response) => {
      const { pathname } = new URL(request.url ?? '/', 'http://localhost');
      const file = pathname === '/' ? '/index.html' : pathname;
      try {
        const bytes = readFileSync(join(copy, ...file.split('/').filter((part) => part !== '..')));
        response.setHeader('Content-Type', types[extname(file)] ?? 'application/octet-stream');
        response.end(bytes);
      } catch {
        response.statusCode = 404;
        response.end();
      }
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
    close = () => server.close();
    expect(inject('appAddress')).toBeTruthy();
  });

  afterAll(() => {
    close();
    rmSync(copy, { recursive: true, force: true });
  });

  test('is offered, and loaded only when the maker says so, with the work kept', async ({
    openPage,
  }) => {
    const page = await openPage('about:blank', WITH_WORKER);
    await page.goto(address);
    await demoShown(page);
    await ready(page);
    await choose(page, asText(textChart(['bob', 'obo'], 'Heron')));
    await page.getByRole('heading', { name: 'Heron', exact: true }).waitFor();
    expect(await page.locator('.updates').count()).toBe(0);

    const index = join(copy, 'index.html');
    const html = readFileSync(index, 'utf8');
    writeFileSync(
      index,
      html.replace('<title>Halfhitch</title>', '<title>Halfhitch, newer</title>'),
    );
    const worker = join(copy, 'sw.js');
    // The list of files names what each holds: the build would have given the page another mark.
    const script = readFileSync(worker, 'utf8');
    const marked = script.replace(
      /(url:\s*["']index\.html["'],\s*revision:\s*["'])[0-9a-f]+|(revision:\s*["'])[0-9a-f]+(["'],\s*url:\s*["']index\.html["'])/,
      (found) => found.replace(/[0-9a-f]{32}/, '0'.repeat(32)),
    );
    expect(marked).not.toBe(script);
    writeFileSync(worker, marked);
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    const offer = page.locator('.updates');
    await offer.getByText('A newer version is ready').waitFor();
    expect(await page.title()).toBe('Halfhitch');
    expect(await page.getByRole('heading', { name: 'Heron', exact: true }).count()).toBe(1);

    await offer.getByRole('button', { name: 'Load the newer version' }).click();
    await page.waitForFunction(() => document.title === 'Halfhitch, newer');
    await page.getByRole('heading', { name: 'Heron', exact: true }).waitFor();
    expect(await page.locator('.updates').count()).toBe(0);
  });
});
