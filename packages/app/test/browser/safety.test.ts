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
});
