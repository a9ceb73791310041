import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { ensureBuilt } from '../../../../scripts/lib/build-targets.mjs';
import { test as base } from '../../../../testing/browser.js';

const BUNDLE = new URL('../../dist/bundle/', import.meta.url);

const ONE_TAG = '<script type="module" src="/halfhitch.js"></script>';

export { expect } from 'vitest';

/** How the shared page is looked at; what is left out is as usual. */
export interface PageLook {
  readonly width?: number;
  readonly lang?: string;
  readonly dir?: 'ltr' | 'rtl';
  readonly forcedColours?: boolean;
  /** Default: true, so that nothing has to be waited for. */
  readonly calm?: boolean;
}

interface BundleFixtures {
  /** Where the bundle and pages that hold it are served from, without a closing slash. */
  address: string;
  /**
   * A page that the tests of a file share, emptied and filled anew: for those that care neither what
   * was loaded before nor how often. An error in it fails the test.
   */
  fill: (body: string, look?: PageLook) => Promise<Page>;
  /** The page behind `fill`, with what it has complained of. */
  shared: { readonly page: Page; readonly errors: string[] };
  /** Opens a page with one script tag and a body; an error in the page fails the test. */
  openPlain: (
    body: string,
    options?: BrowserContextOptions & { readonly lang?: string; readonly script?: string },
  ) => Promise<Page>;
}

/** Pages to be served, by their numbers. */
const pages: string[] = [];

function pageOf(body: string, lang: string, script: string): string {
  return `<!doctype html><html lang="${lang}"><head><meta name="viewport" content="width=device-width"><link rel="icon" href="data:,"><title>Knots of Tarn Ellerby</title>${script}</head><body><main>${body}</main></body></html>`;
}

function answer(url: URL): { readonly type: string; readonly body: string | Buffer } | null {
  const page = pages[Number(/^\/page\/(\d+)$/.exec(url.pathname)?.[1] ?? -1)];
  if (page !== undefined) return { type: 'text/html; charset=utf-8', body: page };
  if (url.pathname === '/empty') {
    return { type: 'text/html; charset=utf-8', body: pageOf('', 'en', ONE_TAG) };
  }
  if (!/^\/halfhitch[\w-]*\.js$/.test(url.pathname)) return null;
  return { type: 'text/javascript', body: readFileSync(new URL(`.${url.pathname}`, BUNDLE)) };
}

function complaintsOf(page: Page, errors: string[] = []): string[] {
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  return errors;
}

async function listening(): Promise<Server> {
  const server = createServer((request, response) => {
    const found = answer(new URL(request.url ?? '/', 'http://localhost'));
    response.statusCode = found === null ? 404 : 200;
    if (found !== null) response.setHeader('content-type', found.type);
    response.end(found?.body);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return server;
}

/** Vitest's `test` with pages that embed the built bundle, far from the app. */
export const test = base.extend<BundleFixtures>({
  address: [
    // biome-ignore lint/correctness/noEmptyPattern: Vitest reads the fixtures used from the pattern
    async ({}, use) => {
      await ensureBuilt('elements');
      const server = await listening();
      await use(`http://127.0.0.1:${(server.address() as AddressInfo).port}`);
      server.closeAllConnections();
      server.close();
    },
    { scope: 'file' },
  ],
  shared: [
    async ({ browser, address }, use) => {
      const context = await browser.newContext({ viewport: { width: 1100, height: 800 } });
      await context.addInitScript('window.load = (from) => import(from);');
      const page = await context.newPage();
      page.setDefaultTimeout(90_000);
      const errors = complaintsOf(page);
      await page.goto(`${address}/empty`);
      await use({ page, errors });
      await context.close();
    },
    { scope: 'file' },
  ],
  fill: async ({ shared: { page, errors } }, use) => {
    errors.length = 0;
    await use(async (body, look = {}) => {
      const { width = 1100, lang = 'en', dir = 'ltr', forcedColours = false, calm = true } = look;
      await page.setViewportSize({ width, height: 800 });
      await page.emulateMedia({
        reducedMotion: calm ? 'reduce' : 'no-preference',
        forcedColors: forcedColours ? 'active' : 'none',
      });
      await page.evaluate(
        async (given) => {
          Object.assign(document.documentElement, { lang: given.lang, dir: given.dir });
          await customElements.whenDefined('halfhitch-row');
          const main = document.querySelector('main') as HTMLElement;
          document.body.replaceChildren(main);
          main.innerHTML = given.body;
          window.scrollTo(0, 0);
        },
        { body, lang, dir },
      );
      return page;
    });
    if (errors.length > 0) throw new Error(`The page failed: ${errors.join('; ')}`);
  },
  openPlain: async ({ browser, address }, use) => {
    const errors: string[] = [];
    const contexts: { close(): Promise<void> }[] = [];
    await use(async (body, { lang = 'en', script = ONE_TAG, ...options } = {}) => {
      const context = await browser.newContext({
        viewport: { width: 1100, height: 800 },
        ...options,
      });
      contexts.push(context);
      // As text: what is written as code here is changed before it runs in the page.
      await context.addInitScript('window.load = (from) => import(from);');
      const page = await context.newPage();
      page.setDefaultTimeout(90_000);
      complaintsOf(page, errors);
      const number = pages.push(pageOf(body, lang, script)) - 1;
      await page.goto(`${address}/page/${number}`);
      return page;
    });
    for (const context of contexts) await context.close();
    if (errors.length > 0) throw new Error(`The page failed: ${errors.join('; ')}`);
  },
});

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly target: unknown; readonly failureSummary?: string }[];
}

/** Everything axe finds amiss within an element, in short. */
export async function axeFindings(page: Page, within: string): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  return page.evaluate(async (selector) => {
    const { axe } = window as unknown as {
      axe: { run(on: string, options: object): Promise<{ violations: Violation[] }> };
    };
    const { violations } = await axe.run(selector, { resultTypes: ['violations'] });
    return violations.map(({ id, nodes }) => `${id}: ${JSON.stringify(nodes[0])}`);
  }, within);
}
