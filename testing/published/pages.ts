import type { Locator, Page } from 'playwright-core';
import { colourCount, pixelsOf, settled } from '../../packages/simulator/test/browser/stage.js';
import { test as base } from '../browser.js';

interface PublishedFixtures {
  /** Opens a page; an error or a complaint in it fails the test. */
  openPublished: (address: string) => Promise<Page>;
}

export const test = base.extend<PublishedFixtures>({
  openPublished: async ({ browser }, use) => {
    const said: string[] = [];
    const context = await browser.newContext({ viewport: { width: 480, height: 640 } });
    await use(async (address) => {
      const page = await context.newPage();
      page.on('pageerror', (error) => said.push(error.message));
      page.on('console', (message) => {
        // three says so when a page has two copies of it.
        if (message.type() === 'error' || message.text().includes('Multiple instances')) {
          said.push(message.text());
        }
      });
      await page.goto(address);
      return page;
    });
    await context.close();
    if (said.length > 0) throw new Error(`The page failed: ${said.join('; ')}`);
  },
});

/** A page as a person would write it. */
export function pageWith(head: string, body: string): string {
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Tarn Ellerby</title><link rel="icon" href="data:,">${head}</head><body>${body}</body></html>`;
}

/** In the page: the names of every entry, by specifier, once all are loaded. */
export async function namesInPage(page: Page): Promise<Record<string, string[]>> {
  await page.waitForFunction('globalThis.everything !== undefined');
  return page.evaluate(() => {
    const { everything } = globalThis as unknown as { everything: Record<string, object> };
    return Object.fromEntries(
      Object.entries(everything).map(([name, one]) => [name, Object.keys(one).sort()]),
    );
  });
}

/** How many colours a part of the page shows once it is drawn: a blank one has few. */
export async function coloursOf(target: Locator): Promise<number> {
  await target.waitFor();
  await settled(target.page());
  return colourCount(await pixelsOf(target));
}
