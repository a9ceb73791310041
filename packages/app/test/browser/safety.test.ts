import { copyFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe } from 'vitest';
import { expect, test } from '../../../../testing/browser.js';
import { asText, choose, demoShown, pngChart, STILL } from './workbench.js';

const HOSTILE = `<img src=x onerror="window.hurt=1"><script>window.hurt=1</script>"'&\u202e`;

describe('safety', () => {
  test('names from a file are only ever text', async ({ openPage }) => {
    const page = await openPage('', STILL);
    await demoShown(page);
    const document_ = {
      format: 'halfhitch-chart',
      version: 1,
      name: HOSTILE,
      colours: [
        { key: 'b', hex: '#1f6fb2', name: HOSTILE },
        { key: 'o', hex: '#d9642a', name: 'javascript:window.hurt=1' },
      ],
      rows: ['bbob', 'obbb'],
    };
    await choose(page, asText(Buffer.from(JSON.stringify(document_)), `${'x'}<b>.json`));
    await page.locator('h2').filter({ hasText: 'onerror' }).waitFor();
    await page.getByLabel('Whole row').check();
    await page.locator('halfhitch-row').waitFor();
    const state = await page.evaluate(() => ({
      hurt: (window as unknown as { hurt?: number }).hurt ?? 0,
      images: [...document.querySelectorAll('img')].filter(
        (image) => !image.src.startsWith('blob:'),
      ).length,
      scripts: document.querySelectorAll('main script').length,
    }));
    expect(state).toEqual({ hurt: 0, images: 0, scripts: 0 });
    const drawn = await page
      .locator('.fabric-sheet img')
      .first()
      .evaluate((image: HTMLImageElement) => image.decode().then(() => true));
    expect(drawn).toBe(true);
  });

  test('the policy lets no foreign script, style or markup in', async ({ openPage }) => {
    const page = await openPage('', STILL);
    await demoShown(page);
    const result = await page.evaluate(async () => {
      const breaches: string[] = [];
      addEventListener('securitypolicyviolation', (event) => {
        breaches.push(event.effectiveDirective);
      });
      const script = document.createElement('script');
      let refused = 0;
      try {
        script.textContent = 'window.hurt = 1';
      } catch {
        refused++;
      }
      document.head.append(script);
      try {
        document.createElement('div').innerHTML = '<b>x</b>';
      } catch {
        refused++;
      }
      document.body.setAttribute('style', 'color: red');
      const remote = await fetch('https://example.com/').then(
        () => 'fetched',
        () => 'refused',
      );
      await new Promise((resolve) => setTimeout(resolve, 100));
      return {
        refused,
        remote,
        hurt: (window as unknown as { hurt?: number }).hurt ?? 0,
        breaches: [...new Set(breaches)].sort(),
      };
    });
    expect(result.refused).toBe(2);
    expect(result.remote).toBe('refused');
    expect(result.hurt).toBe(0);
    expect(result.breaches).toEqual(
      expect.arrayContaining(['connect-src', 'require-trusted-types-for', 'style-src-attr']),
    );
  });

  test('nothing but the page itself is fetched, and nothing breaks its own policy', async ({
    openPage,
  }) => {
    const page = await openPage('about:blank');
    const asked: string[] = [];
    const complaints: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    const address = await openPage().then((other) => other.url());
    await page.goto(address);
    await demoShown(page);
    await page.locator('halfhitch-knot canvas').waitFor();
    const elsewhere = asked.filter(
      (url) => !url.startsWith(address) && !url.startsWith(`blob:${new URL(address).origin}`),
    );
    expect(elsewhere).toEqual([]);
    expect(complaints).toEqual([]);
    // Once loaded, it goes on without a network.
    await page.context().setOffline(true);
    const chart = pngChart(5, 4, (row) => (row % 2 === 0 ? [31, 111, 178] : [217, 100, 42]));
    await choose(page, { name: 'offline.png', mimeType: 'image/png', buffer: chart });
    await page.getByRole('heading', { name: 'offline' }).waitFor();
    expect(await page.locator('.stamp').textContent()).toBe('Knots out as drawn');
  });

  test('what is exported of hostile names runs nothing, wherever it is opened', async ({
    browser,
    openPage,
  }) => {
    const page = await openPage('#keep', STILL);
    const document_ = {
      format: 'halfhitch-chart',
      version: 1,
      name: HOSTILE,
      colours: [
        { key: '<', hex: '#1f6fb2', name: HOSTILE },
        { key: '"', hex: '#d9642a', name: '</title></script><script>window.hurt=1</script>' },
      ],
      rows: ['<<"<', '"<<<'],
    };
    await choose(page, asText(Buffer.from(JSON.stringify(document_)), `"><b onload=1>.json`));
    await page.locator('h2').filter({ hasText: 'onerror' }).first().waitFor();
    const files: Record<string, string> = {};
    for (const kind of ['SVG picture', 'Web page', 'Project']) {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.locator('.exports').getByRole('button', { name: kind, exact: true }).click(),
      ]);
      expect(download.suggestedFilename()).toMatch(/^[a-z0-9-]+(\.halfhitch)?\.(svg|html|json)$/);
      files[kind] = await download.path();
    }
    await page.getByRole('button', { name: 'Show the sheets' }).click();
    await page.locator('.sheet-cut').waitFor();
    const state = await page.evaluate(() => ({
      hurt: (window as unknown as { hurt?: number }).hurt ?? 0,
      made: document.querySelectorAll('.sheets :is(img, script, iframe)').length,
    }));
    expect(state).toEqual({ hurt: 0, made: 0 });

    // Opened by themselves, as one opens a file that was sent, and without a network.
    const folder = mkdtempSync(join(tmpdir(), 'halfhitch-safety-'));
    try {
      const context = await browser.newContext({ ...STILL, offline: true });
      const other = await context.newPage();
      const asked: string[] = [];
      const complaints: string[] = [];
      other.on('request', (request) => asked.push(request.url()));
      other.on('pageerror', (error) => complaints.push(error.message));
      other.on('console', (message) => {
        if (message.type() === 'error') complaints.push(message.text());
      });
      for (const [kind, name] of [
        ['SVG picture', 'piece.svg'],
        ['Web page', 'tutorial.html'],
      ] as const) {
        const file = join(folder, name);
        copyFileSync(files[kind] as string, file);
        await other.goto(pathToFileURL(file).href);
        if (kind === 'Web page') {
          await other
            .getByRole('heading', { name: /onerror/ })
            .first()
            .waitFor();
          await other.locator('halfhitch-piece canvas, halfhitch-piece svg').first().waitFor();
          const row = other.locator('halfhitch-row');
          await row.scrollIntoViewIfNeeded();
          await row.locator('canvas, svg').first().waitFor();
          await other.getByRole('button', { name: 'Next row' }).click();
          await other.getByRole('heading', { name: /^Row 2/ }).waitFor();
          await other.evaluate(() => document.querySelector('halfhitch-row')?.stepForward());
          await expect
            .poll(() =>
              other.evaluate(() => document.querySelector('halfhitch-row')?.position ?? 0),
            )
            .toBeGreaterThan(0);
          // Its own policy lets no other script in.
          const refused = await other.evaluate(() => {
            try {
              const script = document.createElement('script');
              script.textContent = 'window.hurt = 1';
              document.head.append(script);
              return false;
            } catch {
              return true;
            }
          });
          expect(refused).toBe(true);
        }
        const hurt = await other.evaluate(() => (window as unknown as { hurt?: number }).hurt ?? 0);
        expect(hurt).toBe(0);
        const elements = await other.locator('script, img, iframe, object, foreignObject').count();
        // The page's own script, the pattern that it reads, and the licences.
        expect(elements).toBe(kind === 'Web page' ? 3 : 0);
      }
      expect(asked.every((url) => url.startsWith('file:') || url.startsWith('blob:'))).toBe(true);
      expect(complaints.filter((text) => !/Trusted|trusted/.test(text))).toEqual([]);
      await context.close();
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }

    // And opened here again, they are text as before.
    await page.evaluate(() => {
      const { session } = document.querySelector('halfhitch-workbench') as unknown as {
        session: { project: { id: string } | null };
      };
      (window as unknown as { seen?: string }).seen = session.project?.id ?? '';
    });
    for (const [kind, name] of [
      ['SVG picture', `"><img onerror=1>.svg`],
      ['Web page', 'tutorial.html'],
      ['Project', 'project.json'],
    ] as const) {
      await choose(page, asText(readFileSync(files[kind] as string), name));
      await page.waitForFunction(() => {
        const { session } = document.querySelector('halfhitch-workbench') as unknown as {
          session: { project: { id: string } | null };
        };
        const own = window as unknown as { seen?: string };
        const { project } = session;
        if (project === null || project.id === own.seen) return false;
        own.seen = project.id;
        return true;
      });
      await page.locator('h2').filter({ hasText: 'onerror' }).first().waitFor();
    }
    expect(await page.getByRole('alert').count()).toBe(0);
    expect(await page.evaluate(() => (window as unknown as { hurt?: number }).hurt ?? 0)).toBe(0);
  });
});
