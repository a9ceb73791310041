// For the elements' types in scripts that run in the page.
import type {} from '@halfhitch/simulator';
import { describe } from 'vitest';
import { expect, test } from '../../../../testing/browser.js';
import { inHand, openTied, wordsOf } from './tie-page.js';
import { STILL } from './workbench.js';

describe('hands-free', () => {
  test('says each knot with a voice of the device, and nothing with one of a server', async ({
    openPage,
  }) => {
    // The browser of the tests has no voices: a stand-in keeps what it is told to say.
    const page = await openPage('#tie', STILL, (fresh) =>
      fresh.addInitScript(() => {
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
      }),
    );
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
    const page = await openPage('#tie', STILL, (fresh) =>
      fresh.addInitScript(() => {
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
      }),
    );
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
    const page = await openPage('#tie', STILL, (fresh) => fresh.clock.install());
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
