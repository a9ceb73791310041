import { readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import lighthouse from 'lighthouse';
import { chromium } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import { CHROMIUM_FLAGS, requireChromium } from '../../../../scripts/lib/chromium.mjs';
import { launchChromium } from '../../../../testing/browser.js';

const DIST = join(import.meta.dirname, '..', '..', 'dist');

/**
 * What the start page fetches before anything is asked of it, gzipped, bytes: the scripts and
 * styles that its markup names. Raise it only for what must be there at once; lower it when much
 * has moved out, so that it stays a limit.
 */
const FIRST_LOAD = 36 * 1024;

/** Least share of the stated size that is still near it. */
const NEAR = 0.75;

describe('the first load', () => {
  test('is as light as is stated', () => {
    const html = readFileSync(join(DIST, 'index.html'), 'utf8');
    const named = [
      ...html.matchAll(
        /<(?:script|link rel="(?:modulepreload|stylesheet)")[^>]* (?:src|href)="([^"]+)"/g,
      ),
    ].map(([, address]) => address as string);
    expect(named.filter((address) => address.endsWith('.js'))).not.toEqual([]);
    expect(named.filter((address) => address.endsWith('.css'))).not.toEqual([]);
    const bytes = named
      .map((address) => gzipSync(readFileSync(join(DIST, address)), { level: 9 }).length)
      .reduce((sum, size) => sum + size, 0);
    expect(bytes, `${bytes} bytes in ${named.join(', ')}`).toBeLessThanOrEqual(FIRST_LOAD);
    expect(bytes, 'Far below what is stated: lower FIRST_LOAD.').toBeGreaterThan(NEAR * FIRST_LOAD);
  });

  test('shows at once what takes its place later, laid out alike', async () => {
    const browser = await launchChromium();
    try {
      for (const viewport of [
        { width: 360, height: 740 },
        { width: 1280, height: 800 },
      ]) {
        const seen: object[] = [];
        for (const javaScriptEnabled of [false, true]) {
          const context = await browser.newContext({
            viewport,
            javaScriptEnabled,
            serviceWorkers: 'block',
          });
          const page = await context.newPage();
          await page.goto(inject('appAddress'));
          if (javaScriptEnabled)
            await page.locator('input[type=file]').waitFor({ state: 'attached' });
          const places: object[] = [await page.locator('.letterhead').boundingBox()].map(Object);
          for (const part of ['.letterhead h1', '.views a', '.open > *']) {
            for (const one of await page.locator(part).all()) {
              const text = (await one.textContent())?.replace(/\s+/g, ' ').trim();
              places.push({ text, ...(await one.boundingBox()) });
            }
          }
          seen.push({ places, top: (await page.locator('main').boundingBox())?.y });
          await context.close();
        }
        expect(seen[0]).toEqual(seen[1]);
      }
    } finally {
      await browser.close();
    }
  });

  test('is found good by Lighthouse: access, practices, and nothing that jumps', async () => {
    const port = await freePort();
    const browser = await chromium.launch({
      executablePath: requireChromium(),
      args: [...CHROMIUM_FLAGS, `--remote-debugging-port=${port}`],
    });
    try {
      // Times are not looked at: see bench/start-page.bench.mjs.
      const result = await lighthouse(inject('appAddress'), {
        port,
        logLevel: 'error',
        output: 'json',
        throttlingMethod: 'provided',
        onlyCategories: ['accessibility', 'best-practices', 'performance'],
        skipAudits: [
          'full-page-screenshot',
          'screenshot-thumbnails',
          'final-screenshot',
          'bf-cache',
        ],
        disableFullPageScreenshot: true,
      });
      const report = result?.lhr;
      expect(report?.runtimeError).toBeUndefined();
      const failing = Object.values(report?.audits ?? {})
        .filter(({ score, scoreDisplayMode }) => score === 0 && scoreDisplayMode === 'binary')
        .map(({ id, title }) => `${id}: ${title}`);
      const scoreOf = (category: string): number => report?.categories[category]?.score ?? 0;
      expect(scoreOf('accessibility'), failing.join('; ')).toBeGreaterThanOrEqual(0.95);
      expect(scoreOf('best-practices'), failing.join('; ')).toBeGreaterThanOrEqual(0.95);
      // Good is below 0.1 (web.dev, Cumulative Layout Shift).
      expect(report?.audits['cumulative-layout-shift']?.numericValue).toBeLessThan(0.1);
    } finally {
      await browser.close();
    }
  });
});

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => {
        if (address !== null && typeof address === 'object') resolve(address.port);
        else reject(new Error('There is no free port.'));
      });
    });
  });
}
