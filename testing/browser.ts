import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { test as base, inject } from 'vitest';
import { CHROMIUM_FLAGS, requireChromium } from '../scripts/lib/chromium.mjs';

export { expect } from 'vitest';

/** Starts the system's Chromium, drawing WebGL in software so that pictures don't vary. */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({ executablePath: requireChromium(), args: [...CHROMIUM_FLAGS] });
}

export const DESKTOP: BrowserContextOptions = { viewport: { width: 1280, height: 800 } };
export const PHONE: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  deviceScaleFactor: 2,
  hasTouch: true,
  isMobile: true,
};

/** How long a page may take over anything, ms: the machine may be busy with other things. */
const PATIENCE = 60_000;

interface BrowserFixtures {
  /** One browser for all tests of a file. */
  browser: Browser;
  /**
   * Opens a page of the app in a context of its own; an error in the page fails the test.
   * `prepare` is done before anything is loaded, so that nothing need be loaded twice.
   */
  openPage: (
    path?: string,
    options?: BrowserContextOptions,
    prepare?: (page: Page) => Promise<unknown>,
  ) => Promise<Page>;
}

/** Vitest's `test`, with a browser and a way to open pages of the built app. */
export const test = base.extend<BrowserFixtures>({
  browser: [
    // biome-ignore lint/correctness/noEmptyPattern: Vitest reads the fixtures used from the pattern
    async ({}, use) => {
      const browser = await launchChromium();
      await use(browser);
      await browser.close();
    },
    { scope: 'file' },
  ],
  openPage: async ({ browser }, use) => {
    const errors: Error[] = [];
    const contexts: { close(): Promise<void> }[] = [];
    await use(async (path = '', options = DESKTOP, prepare = undefined) => {
      // Every page would put all files by in the background; those who test that ask for it.
      const context = await browser.newContext({ serviceWorkers: 'block', ...options });
      context.setDefaultTimeout(PATIENCE);
      contexts.push(context);
      const page = await context.newPage();
      page.on('pageerror', (error) => errors.push(error));
      await prepare?.(page);
      await page.goto(new URL(path, inject('appAddress')).href);
      return page;
    });
    for (const context of contexts) await context.close();
    if (errors.length > 0)
      throw new AggregateError(errors, `The page failed: ${errors[0]?.message}`);
  },
});
