import type { Locator, Page } from 'playwright-core';
import { PNG } from 'pngjs';

/** Empties the page, so that only what a test puts there is on it. */
export async function clearPage(page: Page): Promise<void> {
  await page.evaluate(() => {
    const main = document.querySelector('main');
    main?.replaceChildren();
    document.body.replaceChildren(...(main === null ? [] : [main]));
  });
}

/** Puts one element on an empty page and waits until it is drawn in 3D. */
export async function putKnot(
  page: Page,
  attributes: Readonly<Record<string, string>>,
): Promise<Locator> {
  await clearPage(page);
  await page.evaluate((given) => {
    const knot = document.createElement('halfhitch-knot');
    knot.style.width = '460px';
    for (const [name, value] of Object.entries(given)) knot.setAttribute(name, value);
    (document.querySelector('main') ?? document.body).append(knot);
  }, attributes);
  const knot = page.locator('halfhitch-knot');
  await knot.locator('canvas').waitFor();
  await settled(page);
  return knot;
}

/** Two frames later everything asked for before is drawn. */
export async function settled(page: Page): Promise<void> {
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(resolve, 20)));
      }),
  );
}

export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

export async function pixelsOf(target: Locator): Promise<Pixels> {
  return PNG.sync.read(await target.screenshot());
}

/** The picture once it no longer moves: two in a row are the same. */
export async function still(page: Page, target: Locator): Promise<Pixels> {
  let before = await pixelsOf(target);
  for (;;) {
    await settled(page);
    const now = await pixelsOf(target);
    if (difference(before, now) === 0) return now;
    before = now;
  }
}

/** Share of the pixels that differ clearly between two pictures of one size. */
export function difference(one: Pixels, other: Pixels): number {
  if (one.width !== other.width || one.height !== other.height) return 1;
  let differing = 0;
  for (let i = 0; i < one.data.length; i += 4) {
    let apart = 0;
    for (let c = 0; c < 3; c++) {
      apart += Math.abs((one.data[i + c] as number) - (other.data[i + c] as number));
    }
    if (apart > 48) differing++;
  }
  return (4 * differing) / one.data.length;
}

/** Share of the pixels near a colour, each channel within a tolerance. */
export function shareOf(
  picture: Pixels,
  test: (r: number, g: number, b: number) => boolean,
): number {
  let found = 0;
  for (let i = 0; i < picture.data.length; i += 4) {
    const [r, g, b] = picture.data.subarray(i, i + 3);
    if (test(r as number, g as number, b as number)) found++;
  }
  return (4 * found) / picture.data.length;
}

/** How many different colours there are, coarsely. */
export function colourCount(picture: Pixels): number {
  const seen = new Set<number>();
  for (let i = 0; i < picture.data.length; i += 4) {
    const [r, g, b] = picture.data.subarray(i, i + 3);
    seen.add((((r as number) >> 4) << 8) | (((g as number) >> 4) << 4) | ((b as number) >> 4));
  }
  return seen.size;
}
