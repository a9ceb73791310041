import { describe } from 'vitest';
import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';
import { seriousFindings, smallTargets } from './axe.js';
import { asText, choose, demoShown, textChart } from './workbench.js';

describe('access', () => {
  for (const [size, options] of [
    ['desktop', { ...DESKTOP, viewport: { width: 1440, height: 900 } }],
    ['phone', PHONE],
  ] as const) {
    for (const colorScheme of ['light', 'dark'] as const) {
      test(`axe finds nothing serious: ${size}, ${colorScheme}`, async ({ openPage }) => {
        const page = await openPage('', { ...options, colorScheme, reducedMotion: 'reduce' });
        await demoShown(page);
        await page.locator('halfhitch-knot canvas, halfhitch-knot svg').first().waitFor();
        expect(await seriousFindings(page)).toEqual([]);
        await page.locator('summary', { hasText: 'Take care' }).click();
        await choose(page, asText(Buffer.from('no chart'), 'broken.txt'));
        await page.getByRole('alert').waitFor();
        await page.getByLabel('Whole row').check();
        await page.locator('halfhitch-row').waitFor();
        expect(await seriousFindings(page)).toEqual([]);
        const marks = ['', '<\\\\\\>', '<//\\>'].join('\n');
        await choose(page, asText(textChart(['bbbbb', 'bboob'], 'Heron', marks)));
        await page.locator('.verdict.bad').waitFor();
        expect(await seriousFindings(page)).toEqual([]);
      });
    }
  }

  test('on a phone nothing goes over the side and targets are large enough', async ({
    openPage,
  }) => {
    const page = await openPage('', PHONE);
    await demoShown(page);
    const { over, small } = await smallTargets(page);
    expect(over).toBeLessThanOrEqual(0);
    expect(small).toEqual([]);
  });

  test('the whole page can be gone through by keys, with the focus seen', async ({ openPage }) => {
    const page = await openPage('', { ...DESKTOP, reducedMotion: 'reduce' });
    await demoShown(page);
    const seen: string[] = [];
    for (let i = 0; i < 150; i++) {
      await page.keyboard.press('Tab');
      const focus = await page.evaluate(() => {
        let active = document.activeElement;
        while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
        if (!active || active === document.body) return null;
        const ringed = active.matches('input[type=file], input[type=radio]')
          ? (active.closest('label') ?? active)
          : active;
        const { outlineStyle, outlineWidth } = getComputedStyle(ringed);
        return {
          name: `${active.tagName} ${active.className} ${active.getAttribute('aria-label') ?? ''} ${active.textContent?.trim().slice(0, 20)}`,
          ring: outlineStyle === 'none' ? 0 : Number.parseFloat(outlineWidth),
        };
      });
      if (focus === null) break;
      expect(focus.ring, focus.name).toBeGreaterThanOrEqual(2);
      seen.push(focus.name);
    }
    for (const part of [
      'INPUT',
      'Show the demo',
      'fabric-cell',
      'stage',
      'Next row',
      'Take care',
    ]) {
      expect(
        seen.some((name) => name.includes(part)),
        part,
      ).toBe(true);
    }
  });

  test('tells of a chart opened in a status, and of an error in an alert', async ({ openPage }) => {
    const page = await openPage();
    await demoShown(page);
    await expect
      .poll(() => page.getByRole('status').first().textContent())
      .toContain('Otter: knots out as drawn.');
    await choose(page, asText(textChart(['bob'])));
    await expect
      .poll(() => page.getByRole('status').first().textContent())
      .toContain('Kittiwake: knots out as drawn.');
  });
});
