// For the elements' types in scripts that run in the page.
import type {} from '@halfhitch/simulator';
import type { Locator } from 'playwright-core';
import { describe } from 'vitest';
import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';
import { seriousFindings, smallTargets } from './axe.js';
import { inHand, keptIs, openTied, redraw } from './tie-page.js';
import { clickKnot, STILL } from './workbench.js';

const SMALL_PHONE = { ...PHONE, viewport: { width: 360, height: 780 } };

/** Text as it is read, without the breaks of its source. */
async function wordsOf(part: Locator): Promise<string> {
  return ((await part.textContent()) ?? '').replace(/\s+/g, ' ').trim();
}

describe('following along', () => {
  test('goes knot by knot, by keys and by taps, to the finished piece', async ({ openPage }) => {
    const page = await openPage('#tie', STILL);
    await openTied(page);
    await inHand(page, 'Backward-forward knot on base string 1');
    expect(await page.locator('.tie-change').textContent()).toBe('Colour change');
    await page.keyboard.press('Space');
    await inHand(page, 'Forward knot on base string 2');
    expect(await page.locator('.tie-change').count()).toBe(0);
    expect(await page.locator('.tie-steps li').allTextContents()).toEqual([
      expect.stringContaining('Lay L1 over base string 2 from left to right, turn it behind'),
      expect.stringContaining('once more, below the first half'),
    ]);
    expect(await page.locator('.tie-next li').allTextContents()).toEqual([
      'forward knots on base strings 3 and 4',
      'a forward-backward knot on base string 5, the edge knot',
      'turn; row 2 goes from right to left',
    ]);
    await expect
      .poll(() => page.getByRole('status').filter({ hasText: 'Row 1, knot 2 of 5' }).textContent())
      .toBe('Row 1, knot 2 of 5: a forward knot on base string 2.');
    // The picture is at this knot of the row too.
    await expect
      .poll(() =>
        page
          .locator('halfhitch-row')
          .evaluate((row) => (row as HTMLElementTagNameMap['halfhitch-row']).knot),
      )
      .toBe(1);
    await page.keyboard.press('Enter');
    await inHand(page, 'Forward knot on base string 3');
    await page.keyboard.press('Backspace');
    await inHand(page, 'Forward knot on base string 2');
    await page.keyboard.press('r');
    await inHand(page, 'Forward-backward knot on base string 5');
    await keptIs(page, 4);
    await page.getByRole('button', { name: 'Tied', exact: true }).click();
    await page.locator('.tie-way').filter({ hasText: 'from right to left' }).waitFor();
    const bars = page.locator('.tie-bar');
    expect(await wordsOf(bars.nth(0))).toContain('Row 2 of 4 0 of 5');
    expect(await wordsOf(bars.nth(1))).toContain('5 of 20 knots, 25 %');
    // The key that presses a button that has the focus counts once.
    await page.keyboard.press('Space');
    await keptIs(page, 6);
    await page.getByRole('button', { name: 'The row is tied' }).click();
    await keptIs(page, 10);

    // By the row and string filled in, with what is wrong beside them.
    const row = page.getByLabel('Row of 4');
    await row.fill('5');
    await page.getByRole('button', { name: 'Go there' }).click();
    await page.getByText('Fill in a row from 1 to 4 and a base string from 1 to 5.').waitFor();
    expect(await row.getAttribute('aria-invalid')).toBe('true');
    await row.fill('2');
    await page.getByLabel('Base string of 5').fill('3');
    await page.getByRole('button', { name: 'Go there' }).click();
    await inHand(page, 'Backward knot on base string 3');
    expect(await page.locator('.tie-moved').textContent()).toContain(
      'The next knot is row 2, base string 3 now; it was row 3, base string 1.',
    );
    await page.getByRole('button', { name: 'Take that back' }).click();
    await keptIs(page, 10);

    // By a tap on the knot in the picture.
    await clickKnot(page, 4, 4);
    await page.getByText('Row 4, column 4: backward knot on base string 4').waitFor();
    await keptIs(page, 10);
    await page.getByRole('button', { name: 'I am here: this knot is next' }).click();
    await keptIs(page, 16);
    await inHand(page, 'Backward knot on base string 4');

    // Nothing is lost by loading the page anew, and the same piece is open.
    await page.reload();
    await inHand(page, 'Backward knot on base string 4');
    await keptIs(page, 16);
    for (let i = 0; i < 4; i++) await page.keyboard.press('Space');
    await inHand(page, 'All 20 knots are tied');
    expect(await page.locator('.tie-now').textContent()).toContain('Cut away from your fingers.');
    await keptIs(page, 20);
    // There is no knot after the last.
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'Tie another, from the first knot' }).click();
    await inHand(page, 'Backward-forward knot on base string 1');
    await page.getByRole('button', { name: 'Take that back' }).click();
    await inHand(page, 'All 20 knots are tied');
    await page.keyboard.press('Backspace');
    await inHand(page, 'Backward-forward knot on base string 1');
    await keptIs(page, 19);
  });

  test('a colour change leads to its lesson, and goes step by step on the big button', async ({
    openPage,
  }) => {
    const page = await openPage('#tie', STILL);
    await openTied(page);
    await page.getByLabel('Row of 4').fill('2');
    await page.getByLabel('Base string of 5').fill('4');
    await page.getByRole('button', { name: 'Go there' }).click();
    await inHand(page, 'Backward knot on base string 4');
    const steps = await page.locator('.tie-steps li').allTextContents();
    expect(steps.length).toBeGreaterThan(4);
    await keptIs(page, 6);
    await page.keyboard.press('b');
    const big = page.locator('dialog.big');
    for (const [i, step] of steps.entries()) {
      await big.getByText(`Step ${i + 1} of ${steps.length}`).waitFor();
      expect(await big.locator('.big-step').textContent()).toBe(step);
      if (i === 2) {
        await big.getByRole('button', { name: 'Back', exact: true }).click();
        await big.getByText('Step 2 of').waitFor();
        await page.keyboard.press('Space');
        await big.getByText('Step 3 of').waitFor();
      }
      await big.locator('.big-done').click();
    }
    await big.locator('.big-string', { hasText: 'base string 3' }).waitFor();
    expect(await big.locator('.big-done').textContent()).toContain('Backward knot');
    await big.getByRole('button', { name: 'Close' }).click();
    await keptIs(page, 7);
    expect(await big.count()).toBe(0);
    await page.keyboard.press('Backspace');
    await page.getByRole('button', { name: 'Practise this change' }).click();
    await page.locator('halfhitch-lesson').waitFor();
    expect(new URL(page.url()).hash).toContain('learn');
    await page.goBack();
    await inHand(page, 'Backward knot on base string 4');
    await keptIs(page, 6);
  });
});

describe('a drawing that is changed while it is tied', () => {
  test('keeps the place, and says so when what is tied no longer matches', async ({ openPage }) => {
    const page = await openPage('#tie', STILL);
    await openTied(page);
    await page.getByRole('button', { name: 'The row is tied' }).click();
    await keptIs(page, 5);
    const alert = page.locator('.tie-notice');
    // A row that is not tied yet.
    await redraw(page, { cell: [2, 2] });
    await expect
      .poll(() => page.locator('.tie-next').textContent())
      .toContain('backward knot on base string 4');
    expect(await alert.count()).toBe(0);
    await redraw(page, { cell: [0, 1] });
    await alert.filter({ hasText: 'differs from what you have tied, from row 1 on' }).waitFor();
    expect(await wordsOf(alert)).toContain('Your place is kept at 5 knots');
    await alert.getByRole('button', { name: 'Undo the change' }).click();
    await alert.waitFor({ state: 'detached' });
    await redraw(page, { cell: [0, 1] });
    await alert.getByRole('button', { name: 'It is right as it is now' }).click();
    await alert.waitFor({ state: 'detached' });
    await keptIs(page, 5);
    await redraw(page, { columns: 4 });
    await alert.filter({ hasText: 'in rows of 5, and the drawing has rows of 4 now' }).waitFor();
    await page.keyboard.press('Space');
    await alert.getByRole('button', { name: 'Go on at row 2' }).click();
    await alert.waitFor({ state: 'detached' });
    await keptIs(page, 4);
    await inHand(page, 'Forward-backward knot on base string 4');
  });
});

describe('two windows', () => {
  test('count the same piece, and none goes back behind the other', async ({ openPage }) => {
    const one = await openPage('#tie', STILL);
    await openTied(one);
    await one.keyboard.press('Space');
    await keptIs(one, 1);
    const other = await one.context().newPage();
    await other.goto(one.url());
    await inHand(other, 'Forward knot on base string 2');
    await keptIs(other, 1);
    await other.keyboard.press('r');
    await keptIs(other, 4);
    await keptIs(one, 4);
    await one.getByText('counted on in another window').waitFor();
    await one.keyboard.press('Space');
    await keptIs(other, 5);
    await redraw(one, { cell: [3, 3] });
    // The drawing goes along too.
    const third = (): Promise<number> =>
      other.evaluate(
        () =>
          (
            document.querySelector('halfhitch-workbench') as unknown as {
              session: { project: { chart: { cells: Uint8Array } } };
            }
          ).session.project.chart.cells[18] as number,
      );
    await expect.poll(third).toBe(0);
  });
});

describe('hands-free', () => {
  test('says each knot with a voice of the device, and nothing with one of a server', async ({
    openPage,
  }) => {
    const page = await openPage('', STILL);
    // The browser of the tests has no voices: a stand-in keeps what it is told to say.
    await page.addInitScript(() => {
      const said: string[] = [];
      const voices = [{ lang: 'en-US', localService: false, name: 'far away' }];
      Object.assign(window, { said, voices });
      Object.defineProperty(window, 'speechSynthesis', {
        value: Object.assign(new EventTarget(), {
          getVoices: () => voices,
          cancel: () => {},
          speak: (utterance: { text: string; rate: number }) =>
            said.push(`${utterance.rate}: ${utterance.text}`),
        }),
      });
      window.SpeechSynthesisUtterance = class extends EventTarget {
        constructor(readonly text: string) {
          super();
        }
      } as unknown as typeof SpeechSynthesisUtterance;
    });
    await page.goto(new URL('#tie', page.url()).href);
    await page.reload();
    await openTied(page);
    const said = (): Promise<string[]> =>
      page.evaluate(() => (window as unknown as { said: string[] }).said);
    await page.locator('summary', { hasText: 'Hands-free' }).click();
    const voice = page.getByLabel('Say the next knot aloud');
    await voice.check();
    await page.getByText('No English voice is installed on this device').waitFor();
    await page.getByRole('button', { name: 'Tied', exact: true }).click();
    await inHand(page, 'Forward knot on base string 2');
    expect(await said()).toEqual([]);
    await voice.uncheck();
    await page.evaluate(() => {
      (window as unknown as { voices: object[] }).voices.push({
        lang: 'en-GB',
        localService: true,
      });
    });
    await page.locator('select[name=rate]').selectOption('slowly');
    await voice.check();
    await expect.poll(said).toEqual(['0.8: 3 forward knots. The first on base string 2.']);
    await page.getByRole('button', { name: 'Tied', exact: true }).click();
    await page.getByRole('button', { name: 'Say it again' }).click();
    await expect
      .poll(said)
      .toEqual([expect.anything(), '0.8: Base string 3, forward.', '0.8: Base string 3, forward.']);
    // Kept for the next time.
    await page.reload();
    await page.getByRole('button', { name: 'Say it again' }).waitFor();
    expect(await page.locator('select[name=rate]').inputValue()).toBe('0.8');
  });

  test('keeps the screen on while in sight, again after it was let go, and says when refused', async ({
    openPage,
  }) => {
    const page = await openPage('', STILL);
    await page.addInitScript(() => {
      const locks: EventTarget[] = [];
      Object.assign(window, { locks, refuse: false });
      Object.defineProperty(navigator, 'wakeLock', {
        value: {
          request: async () => {
            if ((window as unknown as { refuse: boolean }).refuse) throw new DOMException('No.');
            const lock = Object.assign(new EventTarget(), { release: async () => {} });
            locks.push(lock);
            return lock;
          },
        },
      });
    });
    await page.goto(new URL('#tie', page.url()).href);
    await page.reload();
    await page.locator('.tie-done').waitFor();
    await page.locator('summary', { hasText: 'Hands-free' }).click();
    await page.getByText('The screen stays on while this page is in sight.').waitFor();
    // As the browser does when another page is in front for a while.
    const comeBack = (refuse: boolean): Promise<number> =>
      page.evaluate(async (no) => {
        const all = window as unknown as { locks: EventTarget[]; refuse: boolean };
        all.refuse = no;
        all.locks.at(-1)?.dispatchEvent(new Event('release'));
        document.dispatchEvent(new Event('visibilitychange'));
        await new Promise((resolve) => setTimeout(resolve));
        return all.locks.length;
      }, refuse);
    expect(await comeBack(false)).toBe(2);
    await page.getByText('The screen stays on').waitFor();
    expect(await comeBack(true)).toBe(2);
    await page.getByText('The browser would not keep the screen on').waitFor();
    await page.getByLabel('Keep the screen on').uncheck();
    await page.getByText('The browser would not').waitFor({ state: 'detached' });
  });

  test('tells the time left from the maker’s own pace, and reminds of rests', async ({
    openPage,
  }) => {
    const page = await openPage('', STILL);
    await page.clock.install();
    await page.goto(new URL('#tie', page.url()).href);
    await page.reload();
    await openTied(page, Array(30).fill('bbbbbbbbbb'));
    await page.getByText('once 12 knots have been timed: 0 so far').waitFor();
    // From here on the clock goes on only when it is told to, however slow the machine is.
    await page.clock.pauseAt(1000 + (await page.evaluate(() => Date.now())));
    const tie = async (knots: number, seconds: number): Promise<void> => {
      for (let i = 0; i < knots; i++) {
        await page.clock.fastForward(1000 * seconds);
        await page.keyboard.press('Space');
      }
    };
    // The first knot has no time: who knows when it was begun.
    await tie(13, 10);
    const left = page.locator('.tie-left');
    await expect
      .poll(() => wordsOf(left))
      .toMatch(/^About 50 minutes left\. From your last 12 knots, pauses left out: 5 seconds/);
    // The doorbell.
    await tie(1, 3600);
    await tie(1, 10);
    await expect.poll(() => left.textContent()).toContain('From your last 13 knots');
    await page.locator('summary', { hasText: 'Hands-free' }).click();
    await page.locator('select[name=rest]').selectOption('15');
    // What has the focus is pressed by Space, and no knot counted.
    await page.locator('summary', { hasText: 'Hands-free' }).blur();
    const rest = page.locator('.tie-rest');
    await tie(5, 150);
    expect(await rest.count()).toBe(0);
    await tie(1, 150);
    await rest.filter({ hasText: 'You have knotted for 15 minutes. Rest your hands.' }).waitFor();
    expect(await rest.textContent()).toContain('a doctor or a physiotherapist');
    await rest.getByRole('button', { name: 'Remind me in 5 minutes' }).click();
    await rest.waitFor({ state: 'detached' });
    await tie(2, 150);
    await rest.waitFor();
    await rest.getByRole('button', { name: 'I have rested' }).click();
    await tie(3, 150);
    expect(await rest.count()).toBe(0);
  });
});

describe('access to tying', () => {
  for (const [size, options] of [
    ['desktop', DESKTOP],
    ['phone', SMALL_PHONE],
  ] as const) {
    test(`axe finds nothing serious, and all can be hit: ${size}`, async ({ openPage }) => {
      const page = await openPage('#tie', { ...options, reducedMotion: 'reduce' });
      await openTied(page);
      await page.getByRole('button', { name: 'The row is tied' }).click();
      await keptIs(page, 5);
      await page.locator('summary', { hasText: 'Hands-free' }).click();
      await page.getByLabel('Row of 4').fill('9');
      await page.getByRole('button', { name: 'Go there' }).click();
      await page.locator('#tie-jump-error').waitFor();
      await redraw(page, { cell: [0, 1] });
      await page.locator('.tie-notice').waitFor();
      await page.locator('halfhitch-row').scrollIntoViewIfNeeded();
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await seriousFindings(page), colorScheme).toEqual([]);
      }
      const { over, small } = await smallTargets(page);
      expect(over).toBeLessThanOrEqual(0);
      if (size === 'phone') {
        expect(small).toEqual([]);
        // What counts is at the thumb, wherever one is on the page.
        const box = await page.locator('.tie-done').boundingBox();
        expect((box?.y ?? 0) + (box?.height ?? 0)).toBeGreaterThan(740);
        expect(box?.height).toBeGreaterThanOrEqual(60);
      }
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Big buttons' }).click();
      const big = page.locator('dialog.big');
      await big.locator('.big-done').waitFor();
      expect(await big.locator('.big-done').evaluate((it) => it === document.activeElement)).toBe(
        true,
      );
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await seriousFindings(page), colorScheme).toEqual([]);
      }
      await big.getByRole('button', { name: 'It is right as it is now' }).click();
      await big.locator('.tie-notice').waitFor({ state: 'detached' });
      const wide = await big.evaluate((it) => [it.scrollWidth - it.clientWidth, it.clientWidth]);
      expect(wide[0]).toBeLessThanOrEqual(0);
      // Read at arm's length: the words of the knot are far larger than the page's.
      const pixels = await big
        .locator('.big-kind')
        .evaluate((it) => Number.parseFloat(getComputedStyle(it).fontSize));
      expect(pixels).toBeGreaterThanOrEqual(32);
      const button = await big.locator('.big-done').boundingBox();
      const height = options.viewport?.height ?? 0;
      expect(button?.height ?? 0).toBeGreaterThan(height / 2);
      await page.keyboard.press('Escape');
      await big.waitFor({ state: 'detached' });
    });
  }
});
