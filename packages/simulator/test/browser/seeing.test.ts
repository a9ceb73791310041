import type { Locator, Page } from 'playwright-core';
import { describe } from 'vitest';
import { axeFindings, expect, test } from './bundle-page.js';
import { colourCount, difference, type Pixels, pixelsOf, settled } from './stage.js';

const KNOT =
  '<halfhitch-knot kind="forward" position="0.4" style="inline-size:460px"></halfhitch-knot>';

async function drawn(page: Page): Promise<Locator> {
  const knot = page.locator('halfhitch-knot');
  await knot.locator('canvas.threads').waitFor();
  await settled(page);
  return knot;
}

async function look(page: Page, knot: Locator): Promise<Pixels> {
  await settled(page);
  return pixelsOf(knot.locator('canvas.threads'));
}

describe('ways to look', () => {
  test('the menu is closed at first and holds every view and switch', async ({ fill }) => {
    const page = await fill(KNOT);
    const knot = await drawn(page);
    expect(await knot.locator('[part=view]').isVisible()).toBe(false);
    await knot.locator('summary').click();
    expect(await axeFindings(page, 'halfhitch-knot')).toEqual([]);
    const pictures = [await look(page, knot)];
    for (const view of ['back', 'side', 'edge', 'hands']) {
      await knot.locator('[part=view]').selectOption(view);
      expect(await knot.getAttribute('view')).toBe(view);
      const picture = await look(page, knot);
      expect(colourCount(picture)).toBeGreaterThan(60);
      for (const other of pictures) expect(difference(picture, other)).toBeGreaterThan(0.01);
      pictures.push(picture);
    }
    await knot.locator('[part=view]').selectOption('front');
    const [front] = pictures;
    if (front === undefined) throw new Error('No picture.');
    expect(difference(front, await look(page, knot))).toBeLessThan(0.005);
  });

  test('the next move, the way it came, and the crossing can be shown', async ({ fill }) => {
    const page = await fill(KNOT);
    const knot = await drawn(page);
    await knot.locator('summary').click();
    const plain = await look(page, knot);
    for (const name of ['Show the next move', 'Show where the lead has been']) {
      await knot.getByLabel(name).check();
      expect(difference(plain, await look(page, knot))).toBeGreaterThan(0.001);
      await knot.getByLabel(name).uncheck();
      expect(difference(plain, await look(page, knot))).toBeLessThan(0.0005);
    }
    await knot.getByLabel('Magnify the crossing').check();
    await settled(page);
    const glass = knot.locator('[part=magnifier]');
    expect(colourCount(await pixelsOf(glass))).toBeGreaterThan(60);
    expect(await knot.getAttribute('magnifier')).toBe('');
  });

  test('a step is repeated, and work is undone backward', async ({ fill }) => {
    const page = await fill(KNOT, { calm: false });
    const knot = await drawn(page);
    const seen = await knot.evaluate(
      (
        element: HTMLElement & {
          loop: boolean;
          backward: boolean;
          speed: number;
          position: number;
          play(): void;
          pause(): void;
        },
      ) =>
        new Promise<{ most: number; wraps: number; undone: number }>((resolve) => {
          let most = 0;
          let wraps = 0;
          let before = element.position;
          element.loop = true;
          element.speed = 8;
          element.play();
          const watch = (): void => {
            most = Math.max(most, element.position);
            if (element.position < before) wraps++;
            before = element.position;
            if (wraps < 2) {
              requestAnimationFrame(watch);
              return;
            }
            element.pause();
            element.loop = false;
            element.backward = true;
            element.position = 2;
            element.addEventListener('halfhitch-end', () =>
              resolve({ most, wraps, undone: element.position }),
            );
            element.play();
          };
          watch();
        }),
    );
    expect(seen.wraps).toBe(2);
    expect(seen.most).toBeLessThanOrEqual(1);
    expect(seen.undone).toBe(0);
  });

  test('a poster is seen until the picture is there, and a caption takes the words’ place', async ({
    openPlain,
  }) => {
    const page = await openPlain(
      '<halfhitch-knot><svg slot="poster" id="poster" viewBox="0 0 9 9"><circle r="4" cx="4" cy="4"/></svg><p slot="caption" id="own">Heron’s own words</p></halfhitch-knot>',
      { script: '' },
    );
    expect(await page.locator('#poster').isVisible()).toBe(true);
    await page.addScriptTag({ type: 'module', url: '/halfhitch.js' });
    await drawn(page);
    expect(await page.locator('#poster').isVisible()).toBe(false);
    expect(await page.locator('#own').isVisible()).toBe(true);
    expect(await page.locator('halfhitch-knot .heading').isVisible()).toBe(false);
  });
});
