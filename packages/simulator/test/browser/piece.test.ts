import type { Locator, Page } from 'playwright-core';
import { describe } from 'vitest';
import { axeFindings, expect, test } from './bundle-page.js';
import { colourCount, difference, pixelsOf, settled, shareOf } from './stage.js';

const CHART = [
  'b #1f6fb2 lake blue',
  'o #e8742c buoy orange',
  '',
  'bbooob',
  'bobobb',
  'oooobb',
].join('\n');

interface Piece extends HTMLElement {
  plan: unknown;
  position: number;
  speed: number;
  readonly length: number;
  play(): void;
  step(many: number): void;
  seekKnot(row: number, order: number): void;
}

async function putPiece(page: Page, chart = CHART): Promise<Locator> {
  await page.evaluate(async (text) => {
    const { load } = window as unknown as {
      load(from: string): Promise<{ planFromText(text: string): Promise<unknown> }>;
    };
    const { planFromText } = await load('/halfhitch.js');
    const piece = document.createElement('halfhitch-piece') as unknown as Piece;
    piece.style.width = '460px';
    piece.plan = await planFromText(text);
    document.body.append(piece);
  }, chart);
  const piece = page.locator('halfhitch-piece');
  await piece.locator('canvas').waitFor();
  await settled(page);
  return piece;
}

const isOrange = (r: number, g: number, b: number): boolean => r > g + 40 && g > b + 15;
const isBlue = (r: number, _g: number, b: number): boolean => b > r + 40 && b > 60;

async function at(page: Page, piece: Locator, position: number) {
  await piece.evaluate((element: Piece, to) => {
    element.position = to;
  }, position);
  await settled(page);
  await settled(page);
  return pixelsOf(piece.locator('canvas'));
}

describe('a whole piece', () => {
  test('grows knot by knot, and looks otherwise from the back', async ({ openPlain }) => {
    const page = await openPlain('');
    const piece = await putPiece(page);
    const bare = await at(page, piece, 0);
    expect(shareOf(bare, isBlue)).toBeLessThan(0.001);
    const begun = await at(page, piece, 2);
    expect(shareOf(begun, isBlue)).toBeGreaterThan(0.005);
    expect(shareOf(begun, isOrange)).toBeLessThan(0.001);
    const done = await at(page, piece, 18);
    expect(shareOf(done, isBlue)).toBeGreaterThan(shareOf(begun, isBlue));
    expect(shareOf(done, isOrange)).toBeGreaterThan(0.01);
    expect(colourCount(done)).toBeGreaterThan(60);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await piece.evaluate((element) => element.setAttribute('view', 'back'));
    await settled(page);
    expect(difference(done, await at(page, piece, 18))).toBeGreaterThan(0.02);
    expect(await axeFindings(page, 'halfhitch-piece')).toEqual([]);
  });

  test('tells of knots, rows and the end, and says each knot', async ({ openPlain }) => {
    const page = await openPlain('');
    const piece = await putPiece(page);
    const heard = await piece.evaluate(
      (element: Piece) =>
        new Promise<string[]>((resolve) => {
          const names: string[] = [];
          for (const name of ['knot', 'row', 'end']) {
            element.addEventListener(`halfhitch-${name}`, (event) => {
              const { detail } = event as CustomEvent<{ row: number; knot: number } | null>;
              names.push(detail === null ? name : `${name} ${detail.row} ${detail.knot}`);
              if (name === 'end') resolve(names);
            });
          }
          element.seekKnot(0, 3);
          element.step(1);
          element.step(1);
          element.position = 16;
          element.speed = 8;
          element.play();
        }),
    );
    expect(heard).toContain('knot 0 4');
    expect(heard).toContain('row 0 null');
    expect(heard.slice(-2)).toEqual(['row 2 null', 'end']);
    await piece.evaluate((element: Piece) => element.seekKnot(1, 0));
    await settled(page);
    const said = (await piece.locator('[part=live]').textContent()) ?? '';
    expect(said).toContain('Row 2, knot 1 of 6');
    expect(said).toContain('base string 6');
  });

  test('refuses a plan that is too large, in words', async ({ openPlain }) => {
    const page = await openPlain('');
    const piece = await putPiece(page);
    const message = await piece.evaluate((element: Piece) => {
      try {
        element.plan = { ...(element.plan as object), rows: 90_000, columns: 90 };
        return '';
      } catch (error) {
        return (error as Error).message;
      }
    });
    expect(message).toContain('up to 100000');
  });

  test('only builds what is in the picture', { timeout: 120_000 }, async ({ openPlain }) => {
    const page = await openPlain('');
    const rows = Array.from({ length: 300 }, (_, row) =>
      Array.from({ length: 60 }, (_, column) => ((row + column) % 12 < 6 ? 'b' : 'o')).join(''),
    );
    const piece = await putPiece(page, [...CHART.split('\n').slice(0, 2), '', ...rows].join('\n'));
    const end = await at(page, piece, 60 * 300);
    const middle = await at(page, piece, 60 * 150);
    expect(colourCount(end)).toBeGreaterThan(40);
    expect(difference(end, middle)).toBeGreaterThan(0.01);
  });
});
