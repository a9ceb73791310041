import type { Page } from 'playwright-core';
import { describe } from 'vitest';
import { expect, test } from './bundle-page.js';
import {
  colourCount,
  difference,
  type Pixels,
  pixelsOf,
  putKnot,
  settled,
  shareOf,
} from './stage.js';

const KINDS = ['forward', 'backward', 'forward-backward', 'backward-forward'];

const isBlue = (r: number, g: number, b: number): boolean => b > r + 40 && b > 60 && b > g;

async function positionOf(page: Page): Promise<number> {
  return page.locator('halfhitch-knot').evaluate((knot: HTMLElement & { position: number }) => {
    return knot.position;
  });
}

async function saidBy(page: Page): Promise<string> {
  const text = await page.locator('halfhitch-knot [part=live]').textContent();
  return (text ?? '').trim().replace(/\s+/g, ' ');
}

describe('the 3D picture of a knot', () => {
  test('is not blank, and is another at every position', async ({ fill }) => {
    const page = await fill('', { calm: false });
    for (const kind of KINDS) {
      const knot = await putKnot(page, { kind, 'tying-colour': '#1f6fb2' });
      const stage = knot.locator('[part=stage]');
      const pictures: Pixels[] = [];
      for (const position of [0, 0.5, 1, 2]) {
        await knot.evaluate((element: HTMLElement & { position: number }, at) => {
          element.position = at;
        }, position);
        await settled(page);
        const picture = await pixelsOf(stage);
        expect(colourCount(picture)).toBeGreaterThan(60);
        expect(shareOf(picture, isBlue)).toBeGreaterThan(0.02);
        if (position === 1) {
          expect(difference(picture, await pixelsOf(stage))).toBeLessThan(0.0005);
        }
        for (const other of pictures) expect(difference(picture, other)).toBeGreaterThan(0.003);
        pictures.push(picture);
      }
    }
  });

  test('is the mirror image when it is mirrored', async ({ fill }) => {
    const page = await fill('', { calm: false });
    const plain = await putKnot(page, { kind: 'forward', position: '0.5' });
    const picture = await pixelsOf(plain.locator('canvas'));
    const mirrored = await putKnot(page, { kind: 'backward', mirror: '', position: '0.5' });
    const same = await pixelsOf(mirrored.locator('canvas'));
    expect(difference(picture, same)).toBeLessThan(0.01);
    expect(await saidBy(page)).toContain('back to the left, above the bar');
  });

  test('turns when it is dragged and by keys, and comes back', async ({ fill }) => {
    const page = await fill('', { calm: false });
    const knot = await putKnot(page, { kind: 'forward', position: '2' });
    const canvas = knot.locator('canvas');
    const straight = await pixelsOf(canvas);
    const box = await canvas.boundingBox();
    if (box === null) throw new Error('The canvas has no box.');
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await page.mouse.move(middle.x, middle.y);
    await page.mouse.down();
    await page.mouse.move(middle.x + 90, middle.y + 20, { steps: 4 });
    await page.mouse.up();
    await settled(page);
    const turned = await pixelsOf(canvas);
    expect(difference(straight, turned)).toBeGreaterThan(0.02);
    await knot.locator('[part=stage]').focus();
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.keyboard.press('0');
    await settled(page);
    expect(difference(straight, await pixelsOf(canvas))).toBeLessThan(0.005);
    await page.keyboard.press('d');
    await settled(page);
    expect(difference(straight, await pixelsOf(canvas))).toBeGreaterThan(0.005);
  });

  test('is drawn only when something changes', async ({ fill }) => {
    const page = await fill('', { calm: false });
    await putKnot(page, { kind: 'forward', position: '1' });
    const draws = await page.evaluate(async () => {
      let count = 0;
      const draw = CanvasRenderingContext2D.prototype.drawImage;
      CanvasRenderingContext2D.prototype.drawImage = function (...given: unknown[]) {
        count++;
        return (draw as (...args: unknown[]) => void).apply(this, given);
      };
      const frames = (many: number): Promise<void> =>
        new Promise((resolve) => {
          const next = (left: number): void => {
            if (left === 0) resolve();
            else requestAnimationFrame(() => next(left - 1));
          };
          next(many);
        });
      await frames(10);
      const idle = count;
      const knot = document.querySelector('halfhitch-knot') as HTMLElement & { position: number };
      knot.position = 1.2;
      await frames(10);
      return { idle, after: count };
    });
    expect(draws.idle).toBe(0);
    expect(draws.after).toBeGreaterThan(0);
    expect(draws.after).toBeLessThan(4);
  });
});

describe('keys and words of a knot', () => {
  test('every key does what the hint says', async ({ fill }) => {
    const page = await fill('', { calm: false });
    const knot = await putKnot(page, { kind: 'forward' });
    await knot.locator('[part=stage]').focus();
    const after = async (key: string): Promise<number> => {
      await page.keyboard.press(key);
      return positionOf(page);
    };
    expect(await after('ArrowRight')).toBeCloseTo(0.25);
    expect(await after('ArrowRight')).toBeCloseTo(0.5);
    expect(await after('ArrowLeft')).toBeCloseTo(0.25);
    expect(await after('ArrowDown')).toBeCloseTo(0.3);
    expect(await after('ArrowUp')).toBeCloseTo(0.25);
    expect(await after('Shift+ArrowRight')).toBe(1);
    expect(await after('Shift+ArrowRight')).toBe(2);
    expect(await after('Shift+ArrowLeft')).toBe(1);
    expect(await after('End')).toBe(2);
    expect(await after('Home')).toBe(0);
    await page.keyboard.press('f');
    expect(await knot.getAttribute('view')).toBe('back');
    await page.keyboard.press('F');
    expect(await knot.getAttribute('view')).toBe('front');
    await page.keyboard.press('Space');
    await page.waitForFunction(
      () =>
        (document.querySelector('halfhitch-knot') as unknown as { position: number }).position >
        0.02,
    );
    await page.keyboard.press('Space');
    const stopped = await positionOf(page);
    await settled(page);
    expect(await positionOf(page)).toBe(stopped);
    const hint = (await knot.locator('[part=hint]').textContent()) ?? '';
    for (const key of ['Space', 'Shift', 'Home', 'End', 'F', '0']) expect(hint).toContain(key);
  });

  test('the live region says each move, and another thing each time', async ({ fill }) => {
    const page = await fill('', { calm: false });
    const knot = await putKnot(page, { kind: 'forward-backward', 'held-name': 'base string 4' });
    expect(await knot.locator('[part=live]').getAttribute('aria-live')).toBe('polite');
    await knot.locator('[part=stage]').focus();
    const said = [await saidBy(page)];
    for (let i = 0; i < 8; i++) {
      await page.keyboard.press('ArrowRight');
      await settled(page);
      said.push(await saidBy(page));
    }
    expect(new Set(said).size).toBe(9);
    expect(said[1]).toContain('over base string 4 from left to right');
    expect(said[2]).toContain('behind base string 4');
    expect(said[5]).toContain('over base string 4 from right to left');
    expect(said[8]).toContain('The forward-backward knot is tied.');
  });

  test('playing runs to the end and tells of each half hitch', async ({ fill }) => {
    const page = await fill('', { calm: false });
    await putKnot(page, { kind: 'backward', speed: '8' });
    const heard = await page.locator('halfhitch-knot').evaluate(
      (knot: HTMLElement & { play(): void; playing: boolean }) =>
        new Promise<string[]>((resolve) => {
          const names: string[] = [];
          for (const name of ['play', 'step', 'pause', 'end']) {
            knot.addEventListener(`halfhitch-${name}`, (event) => {
              const { detail } = event as CustomEvent<{ done: number } | null>;
              names.push(detail === null ? name : `${name} ${detail.done}`);
              if (name === 'end') resolve(names);
            });
          }
          knot.play();
        }),
    );
    expect(heard).toEqual(['play', 'step 1', 'step 2', 'end']);
  });

  test('with reduced motion it goes from still to still', async ({ fill }) => {
    const page = await fill('');
    await putKnot(page, { kind: 'forward', speed: '8' });
    const positions = await page.locator('halfhitch-knot').evaluate(
      (knot: HTMLElement & { play(): void; position: number }) =>
        new Promise<number[]>((resolve) => {
          const seen = new Set<number>();
          const look = (): void => {
            seen.add(knot.position);
            if (knot.position >= 2) resolve([...seen]);
            else requestAnimationFrame(look);
          };
          knot.play();
          look();
        }),
    );
    expect(positions.length).toBeLessThanOrEqual(9);
    const stills = [0, 0.25, 0.5, 0.74, 1, 1.25, 1.5, 1.74, 2];
    for (const position of positions) {
      expect(stills.some((still) => Math.abs(still - position) < 1e-9)).toBe(true);
    }
    await page.locator('halfhitch-knot').evaluate((knot: HTMLElement & { view: string }) => {
      knot.view = 'back';
    });
  });

  test('a kind that is none becomes forward; another kind begins anew', async ({ fill }) => {
    const page = await fill('', { calm: false });
    await putKnot(page, { kind: 'granny', position: '1.5' });
    const result = await page
      .locator('halfhitch-knot')
      .evaluate(
        async (
          knot: HTMLElement & { kind: string; position: number; updateComplete: Promise<unknown> },
        ) => {
          const first = knot.kind;
          knot.kind = 'backward';
          await knot.updateComplete;
          return { first, position: knot.position, attribute: knot.getAttribute('kind') };
        },
      );
    expect(result).toEqual({ first: 'forward', position: 0, attribute: 'backward' });
  });
});
