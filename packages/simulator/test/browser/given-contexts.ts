import type { Page } from 'playwright-core';

interface Watched {
  readonly made: number;
  readonly alive: number;
}

/** Counts the WebGL contexts that scripts of the page are given from now on. */
export async function watchContexts(page: Page): Promise<void> {
  await page.evaluate(() => {
    const given: WebGL2RenderingContext[] = [];
    const get = HTMLCanvasElement.prototype.getContext as (...args: unknown[]) => unknown;
    HTMLCanvasElement.prototype.getContext = function (
      this: HTMLCanvasElement,
      ...args: unknown[]
    ) {
      const context = get.apply(this, args);
      if (context instanceof WebGL2RenderingContext && !given.includes(context))
        given.push(context);
      return context;
    } as typeof HTMLCanvasElement.prototype.getContext;
    Object.assign(window, { given });
  });
}

/** How many of them there are, and how many have not been given back. */
export async function contexts(page: Page): Promise<Watched> {
  return page.evaluate(() => {
    const { given } = window as unknown as { given: WebGL2RenderingContext[] };
    return {
      made: given.length,
      alive: given.filter((context) => !context.isContextLost()).length,
    };
  });
}
