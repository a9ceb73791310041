import type { Locator, Page } from 'playwright-core';
import { describe } from 'vitest';
import { axeFindings, expect, test } from './bundle-page.js';
import { difference, pixelsOf, settled, shareOf } from './stage.js';

/** Six strings that all cross: stripes from the upper left to the lower right. */
const STRIPES = [
  'pattern diagonal',
  'b #1f6fb2 lake blue',
  'o #e8742c buoy orange',
  '',
  'bboobb',
  '',
  ...['\\ \\ \\', ' \\ \\', '\\ > \\', ' < \\', '\\ . \\', ' / /'],
].join('\n');

interface Stage extends HTMLElement {
  pattern: unknown;
  row: number;
  position: number;
  readonly length: number;
  step(many: number): void;
}

async function put(page: Page, tag: string, row = 0): Promise<Locator> {
  await page.evaluate(
    async ([name, text, shown]) => {
      const { load } = window as unknown as {
        load(from: string): Promise<{ patternFromText(text: string): Promise<unknown> }>;
      };
      const { patternFromText } = await load('/halfhitch.js');
      const stage = document.createElement(name) as unknown as Stage;
      stage.style.width = '460px';
      stage.pattern = await patternFromText(text);
      if (name === 'halfhitch-row') stage.row = shown;
      document.querySelector('main')?.append(stage);
    },
    [tag, STRIPES, row] as const,
  );
  const stage = page.locator(tag);
  await stage.locator('canvas.threads').waitFor();
  await settled(page);
  return stage;
}

async function at(page: Page, stage: Locator, position: number) {
  await stage.evaluate((element: Stage, to) => {
    element.position = to;
  }, position);
  await settled(page);
  await settled(page);
  return pixelsOf(stage.locator('canvas.threads'));
}

const isOrange = (r: number, g: number, b: number): boolean => r > g + 40 && g > b + 15;

describe('diagonal work', () => {
  test('grows knot by knot over hanging strings, and looks otherwise from the back', async ({
    fill,
  }) => {
    const page = await fill('');
    const piece = await put(page, 'halfhitch-piece');
    // Fifteen places, one of them bare.
    expect(await piece.evaluate((element: Stage) => element.length)).toBe(14);
    const bare = await at(page, piece, 0);
    expect(shareOf(bare, isOrange)).toBeGreaterThan(0.01);
    const half = await at(page, piece, 7.5);
    const done = await at(page, piece, 14);
    expect(difference(bare, half)).toBeGreaterThan(0.02);
    expect(difference(half, done)).toBeGreaterThan(0.02);
    await piece.evaluate((element) => element.setAttribute('trail-of', 'S3'));
    await settled(page);
    expect(difference(done, await at(page, piece, 14))).toBeGreaterThan(0.002);
    await piece.evaluate((element) => element.setAttribute('view', 'back'));
    await settled(page);
    expect(difference(done, await at(page, piece, 14))).toBeGreaterThan(0.02);
    expect(await axeFindings(page, 'halfhitch-piece')).toEqual([]);
  });

  test('shows each half of each knot of a row, tells of it, and says it', async ({ fill }) => {
    const page = await fill('');
    const row = await put(page, 'halfhitch-row', 3);
    const heard = await row.evaluate((element: Stage) => {
      const told: string[] = [];
      for (const name of ['halfhitch-knot', 'halfhitch-row', 'halfhitch-step']) {
        element.addEventListener(name, (event) => {
          const { detail } = event as CustomEvent<{ row?: number; knot?: number; done?: number }>;
          told.push(
            `${name.slice(10)} ${detail.row ?? ''}${detail.knot ?? ''}${detail.done ?? ''}`,
          );
        });
      }
      for (let i = 0; i < element.length; i++) element.step(1);
      return told;
    });
    expect(heard).toEqual(['step 1', 'knot 30', 'step 2', 'step 3', 'knot 31', 'row 3', 'step 4']);
    await settled(page);
    expect(await row.locator('[part=live]').textContent()).toContain('The row is done.');
    const said = (await row.locator('.heading').textContent())?.trim();
    expect(said).toMatch(/^Row 4, knot 2 of 2, slots 4 and 5: forward, S\d/);
    const [one, two, three] = [
      await at(page, row, 0),
      await at(page, row, 0.5),
      await at(page, row, 2),
    ];
    expect(difference(one, two)).toBeGreaterThan(0.005);
    expect(difference(two, three)).toBeGreaterThan(0.005);
    expect(await axeFindings(page, 'halfhitch-row')).toEqual([]);
  });

  test('is drawn flat without WebGL', async ({ openPlain }) => {
    const page = await openPlain('', {
      script: `<script>HTMLCanvasElement.prototype.getContext = () => null;</script><script type="module" src="/halfhitch.js"></script>`,
    });
    await page.evaluate(() => customElements.whenDefined('halfhitch-piece'));
    await page.evaluate(async (text) => {
      const { load } = window as unknown as {
        load(from: string): Promise<{ patternFromText(text: string): Promise<unknown> }>;
      };
      const piece = document.createElement('halfhitch-piece') as unknown as Stage;
      piece.style.width = '460px';
      piece.pattern = await (await load('/halfhitch.js')).patternFromText(text);
      document.querySelector('main')?.append(piece);
    }, STRIPES);
    const drawing = page.locator('halfhitch-piece svg[part=drawing] path');
    await expect.poll(() => drawing.count()).toBeGreaterThan(200);
  });
});
