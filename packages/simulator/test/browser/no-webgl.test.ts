import { chromium } from 'playwright-core';
import { describe } from 'vitest';
import { CHROMIUM_FLAGS, requireChromium } from '../../../../scripts/lib/chromium.mjs';
import { expect, test } from './bundle-page.js';
import { clearPage, difference, pixelsOf, settled, shareOf, still } from './stage.js';

describe('without WebGL', () => {
  test('a flat drawing of the same threads is shown and said so', async ({ address }) => {
    const browser = await chromium.launch({
      executablePath: requireChromium(),
      args: [...CHROMIUM_FLAGS, '--disable-3d-apis'],
    });
    try {
      const page = await browser.newPage({ reducedMotion: 'reduce' });
      const errors: Error[] = [];
      page.on('pageerror', (error) => errors.push(error));
      await page.goto(`${address}/empty`);
      const refused = await page.evaluate(
        () => document.createElement('canvas').getContext('webgl2') === null,
      );
      expect(refused).toBe(true);
      await clearPage(page);
      await page.evaluate(() => {
        const knot = document.createElement('halfhitch-knot');
        knot.setAttribute('position', '1');
        document.body.append(knot);
      });
      const knot = page.locator('halfhitch-knot');
      await knot.locator('[part=notice]').waitFor();
      expect(await knot.locator('[part=notice]').textContent()).toContain('no WebGL');
      expect(await knot.locator('[part=switch]').count()).toBe(3);
      const stage = knot.locator('[part=stage]');
      await settled(page);
      const front = await pixelsOf(stage);
      expect(shareOf(front, (r, g, b) => b > r + 40 && b > g)).toBeGreaterThan(0.02);
      await knot.evaluate((element: HTMLElement & { view: string }) => {
        element.view = 'back';
      });
      await expect.poll(async () => difference(front, await pixelsOf(stage))).toBeGreaterThan(0.02);
      const back = await still(page, stage);
      await stage.focus();
      await page.keyboard.press('End');
      await settled(page);
      expect(difference(back, await pixelsOf(stage))).toBeGreaterThan(0.01);
      expect(await knot.locator('[part=live]').textContent()).toContain('knot is tied');
      expect(errors).toEqual([]);
    } finally {
      await browser.close();
    }
  });
});
