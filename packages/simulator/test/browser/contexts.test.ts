import { describe } from 'vitest';
import { expect, test } from './bundle-page.js';
import { contexts, watchContexts } from './given-contexts.js';
import { clearPage, colourCount, pixelsOf, putKnot, settled } from './stage.js';

describe('WebGL contexts', () => {
  test('many elements draw with one, and the last to go gives it back', async ({ openPlain }) => {
    const page = await openPlain('');
    await watchContexts(page);
    await page.evaluate(() => {
      for (let i = 0; i < 20; i++) {
        const knot = document.createElement('halfhitch-knot');
        knot.style.display = 'inline-block';
        knot.style.width = '150px';
        document.body.append(knot);
      }
    });
    await page.waitForFunction(() => {
      const knots = [...document.querySelectorAll('halfhitch-knot')];
      const inSight = knots.filter((knot) => knot.getBoundingClientRect().top < innerHeight - 60);
      return inSight.every((knot) => knot.shadowRoot?.querySelector('canvas'));
    });
    await settled(page);
    expect(await contexts(page)).toEqual({ made: 1, alive: 1 });
    expect(
      colourCount(await pixelsOf(page.locator('halfhitch-knot canvas').nth(3))),
    ).toBeGreaterThan(40);
    await page.evaluate(() => {
      document.querySelectorAll('halfhitch-knot').forEach((knot, i) => {
        if (i > 0) knot.remove();
      });
    });
    expect(await contexts(page)).toEqual({ made: 1, alive: 1 });
    await clearPage(page);
    expect(await contexts(page)).toEqual({ made: 1, alive: 0 });
  });

  test('none is left after making and removing elements again and again', async ({ openPlain }) => {
    const page = await openPlain('');
    await watchContexts(page);
    for (let i = 0; i < 6; i++) {
      await putKnot(page, { kind: 'backward', position: '1' });
      await clearPage(page);
    }
    const { made, alive } = await contexts(page);
    expect(made).toBe(6);
    expect(alive).toBe(0);
  });

  test('none is left by elements removed or moved while they are still loading', async ({
    openPlain,
  }) => {
    const page = await openPlain('');
    await watchContexts(page);
    await page.evaluate(async () => {
      for (let i = 0; i < 12; i++) {
        const knot = document.createElement('halfhitch-knot');
        document.body.append(knot);
        // Some are caught before they are seen, some while they load, some when they are drawn.
        await new Promise((resolve) => setTimeout(resolve, i * 12));
        knot.remove();
        document.body.append(knot);
        await new Promise((resolve) => setTimeout(resolve, i * 4));
        knot.remove();
      }
      await new Promise((resolve) => setTimeout(resolve, 800));
    });
    expect((await contexts(page)).alive).toBe(0);
  });

  test('an element moved in the page goes on drawing', async ({ openPlain }) => {
    const page = await openPlain('');
    const knot = await putKnot(page, { kind: 'forward', position: '1' });
    await page.evaluate(() => {
      const place = document.createElement('section');
      document.body.append(place);
      place.append(document.querySelector('halfhitch-knot') as HTMLElement);
    });
    await knot.locator('canvas').waitFor();
    await settled(page);
    expect(colourCount(await pixelsOf(knot.locator('canvas')))).toBeGreaterThan(60);
  });

  test('a lost context gives way to the flat drawing and comes back', async ({ openPlain }) => {
    const page = await openPlain('');
    await watchContexts(page);
    const knot = await putKnot(page, { kind: 'forward', position: '1' });
    await page.evaluate(() => {
      const { given } = window as unknown as { given: WebGL2RenderingContext[] };
      const loser = given.at(-1)?.getExtension('WEBGL_lose_context');
      Object.assign(window, { loser });
      loser?.loseContext();
    });
    await knot.locator('[part=drawing] path').first().waitFor({ state: 'attached' });
    expect(await knot.locator('[part=notice]').textContent()).toContain('3D picture');
    await page.evaluate(() => {
      (window as unknown as { loser: WEBGL_lose_context }).loser.restoreContext();
    });
    await knot.locator('canvas').waitFor();
    await settled(page);
    expect(await knot.locator('[part=notice]').count()).toBe(0);
    expect(colourCount(await pixelsOf(knot.locator('canvas')))).toBeGreaterThan(60);
  });

  test('playing waits while the element is out of sight', async ({ openPlain }) => {
    const page = await openPlain('');
    await putKnot(page, { kind: 'forward' });
    const positions = await page.evaluate(async () => {
      const knot = document.querySelector('halfhitch-knot') as HTMLElement & {
        play(): void;
        position: number;
      };
      const frames = (many: number): Promise<void> =>
        new Promise((resolve) => {
          const next = (left: number): void => {
            if (left === 0) resolve();
            else requestAnimationFrame(() => next(left - 1));
          };
          next(many);
        });
      const above = document.createElement('div');
      above.style.height = '5000px';
      document.body.prepend(above);
      await frames(6);
      knot.play();
      await frames(20);
      const away = knot.position;
      knot.scrollIntoView();
      await frames(30);
      return { away, back: knot.position };
    });
    expect(positions.away).toBe(0);
    expect(positions.back).toBeGreaterThan(0);
  });
});
