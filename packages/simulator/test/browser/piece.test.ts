import type { Locator, Page } from 'playwright-core';
import { describe } from 'vitest';
import { axeFindings, expect, test } from './bundle-page.js';
import { colourCount, difference, type Pixels, pixelsOf, settled, shareOf } from './stage.js';

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
    document.querySelector('main')?.append(piece);
  }, chart);
  const piece = page.locator('halfhitch-piece');
  await piece.locator('canvas.threads').waitFor();
  await settled(page);
  return piece;
}

const isOrange = (r: number, g: number, b: number): boolean => r > g + 40 && g > b + 15;
const isBlue = (r: number, _g: number, b: number): boolean => b > r + 40 && b > 60;

function turnedLeftToRight({ width, height, data }: Pixels): Pixels {
  const turned = new Uint8Array(data.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const from = 4 * (y * width + width - 1 - x);
      turned.set(data.subarray(from, from + 4), 4 * (y * width + x));
    }
  }
  return { width, height, data: turned };
}

/** Of the pixels that are orange in either picture, the share that is in both. */
function sharedPlaces(one: Pixels, other: Pixels): number {
  const orangeAt = ({ data }: Pixels, i: number): boolean =>
    isOrange(data[i] as number, data[i + 1] as number, data[i + 2] as number);
  let both = 0;
  let either = 0;
  for (let i = 0; i < one.data.length; i += 4) {
    const [a, b] = [orangeAt(one, i), orangeAt(other, i)];
    if (a && b) both++;
    if (a || b) either++;
  }
  return both / either;
}

async function at(page: Page, piece: Locator, position: number) {
  await piece.evaluate((element: Piece, to) => {
    element.position = to;
  }, position);
  await settled(page);
  await settled(page);
  return pixelsOf(piece.locator('canvas.threads'));
}

describe('a whole piece', () => {
  test('grows knot by knot, and looks otherwise from the back', async ({ fill }) => {
    const page = await fill('');
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
    await piece.evaluate((element) => element.setAttribute('view', 'back'));
    await settled(page);
    expect(difference(done, await at(page, piece, 18))).toBeGreaterThan(0.02);
    expect(await axeFindings(page, 'halfhitch-piece')).toEqual([]);
  });

  test('tells of knots, rows and the end, and says each knot', async ({ fill }) => {
    const page = await fill('', { calm: false });
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

  test('shows what comes and what was, magnifies, and is mirrored', async ({ fill }) => {
    const page = await fill('');
    const piece = await putPiece(page);
    const look = async (change: Readonly<Record<string, unknown>>): Promise<Pixels> => {
      await piece.evaluate((element, given) => {
        Object.assign(element, given);
      }, change);
      await settled(page);
      return at(page, piece, 3);
    };
    const plain = await look({});
    // Three knots are tied, the last of them in orange, as is the one to come.
    const ghost = await look({ ghost: true });
    expect(shareOf(ghost, isOrange)).toBeGreaterThan(shareOf(plain, isOrange) * 1.03);
    const trail = await look({ ghost: false, trail: true });
    expect(shareOf(trail, isOrange)).toBeLessThan(shareOf(plain, isOrange) * 0.95);
    const mirrored = await look({ trail: false, mirror: true });
    // The twist of the thread and the light are not mirrored, so only places are compared.
    expect(sharedPlaces(plain, turnedLeftToRight(mirrored))).toBeGreaterThan(0.8);
    expect(sharedPlaces(plain, mirrored)).toBeLessThan(0.3);
    expect(await piece.locator('[part=live]').textContent()).toContain('backward on base string 3');
    await look({ mirror: false, magnifier: true });
    const glass = await pixelsOf(piece.locator('[part=magnifier]'));
    expect(shareOf(glass, isOrange)).toBeGreaterThan(1.5 * shareOf(plain, isOrange));
  });

  test('refuses a plan that is too large, in words', async ({ fill }) => {
    const page = await fill('');
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

  test('only builds what is in the picture', { timeout: 120_000 }, async ({ fill }) => {
    const page = await fill('');
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
