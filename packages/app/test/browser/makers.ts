import type { Locator, Page } from 'playwright-core';

export interface MadeChart {
  readonly name: string;
  readonly rows: number;
  readonly columns: number;
  readonly colours: readonly { readonly hex: string; readonly name: string }[];
  readonly cells: readonly number[];
}

/** Opens one of the dialogs of the draw view that make charts. */
export async function openMaker(
  page: Page,
  button: 'Letters' | 'From a picture',
  element: 'halfhitch-lettering' | 'halfhitch-from-picture',
): Promise<Locator> {
  await page.getByRole('button', { name: button }).first().click();
  const maker = page.locator(element);
  await maker.locator('label').first().waitFor();
  return maker;
}

/** Uses what was made as a new piece, and reads its chart. */
export async function useAsPiece(page: Page, maker: Locator): Promise<MadeChart> {
  await maker.locator('button[type=submit][aria-disabled=false]').click();
  await page.getByRole('button', { name: 'Open as a new piece' }).click();
  return openChartOf(page);
}

export async function openChartOf(page: Page): Promise<MadeChart> {
  return page.evaluate(() => {
    const bench = document.querySelector('halfhitch-workbench') as HTMLElement & {
      session: {
        project: { chart: Omit<MadeChart, 'cells'> & { cells: Uint8Array } };
      };
    };
    const { name, rows, columns, colours, cells } = bench.session.project.chart;
    return {
      name,
      rows,
      columns,
      colours: colours.map((colour) => ({ hex: colour.hex, name: colour.name })),
      cells: [...cells],
    };
  });
}

/** How many different colours a canvas shows: a blank one passes for a picture otherwise. */
export async function coloursShown(canvas: Locator): Promise<number> {
  return canvas.evaluate((element) => {
    const canvas = element as HTMLCanvasElement;
    const context = canvas.getContext('2d');
    if (context === null) return 0;
    const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
    // Some of the pixels do, in steps that no row of knots has.
    return new Set(new Uint32Array(data.buffer).filter((_, i) => i % 13 === 0)).size;
  });
}

/**
 * What share of a canvas has just one of some colours, as #rrggbb: most of a chart does, however
 * its lines are smoothed, and little of thread, which is shaded.
 */
export async function plainShare(canvas: Locator, hexes: readonly string[]): Promise<number> {
  return canvas.evaluate((element, colours) => {
    const canvas = element as HTMLCanvasElement;
    const context = canvas.getContext('2d');
    if (context === null) return 0;
    const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
    const plain = new Set(colours.map((hex) => Number.parseInt(hex.slice(1), 16)));
    let many = 0;
    for (let at = 0; at < data.length; at += 4) {
      const [r, g, b] = data.subarray(at, at + 3) as unknown as [number, number, number];
      if (plain.has((r << 16) | (g << 8) | b)) many++;
    }
    return many / (data.length / 4);
  }, hexes);
}

/** What the policy on content has refused since it was called. */
export async function watchPolicy(page: Page): Promise<() => Promise<string[]>> {
  await page.evaluate(() => {
    const seen: string[] = [];
    (window as unknown as { refused: string[] }).refused = seen;
    addEventListener('securitypolicyviolation', (event) => {
      seen.push(`${event.violatedDirective}: ${event.blockedURI}`);
    });
  });
  return () => page.evaluate(() => (window as unknown as { refused: string[] }).refused);
}
