import type { Page } from 'playwright-core';
import { describe } from 'vitest';
import { LESSON_NAMES, lessonNamed } from '../../src/lessons.js';
import { axeFindings, expect, test } from './bundle-page.js';

const lesson = (name: string, more = ''): string =>
  `<halfhitch-lesson name="${name}" ${more}></halfhitch-lesson>`;

async function ready(page: Page): Promise<void> {
  await page.locator('halfhitch-lesson h2').waitFor();
}

const over = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe('every lesson, page by page and answer by answer', () => {
  for (const name of LESSON_NAMES) {
    test(name, { timeout: 240_000 }, async ({ openPlain }) => {
      const expected = lessonNamed(name);
      const page = await openPlain(lesson(name), { reducedMotion: 'reduce' });
      await ready(page);
      const host = page.locator('halfhitch-lesson');
      expect(await host.locator('h2').textContent()).toBe(expected.title);
      for (const [number, { text, question, shows }] of expected.pages.entries()) {
        await host.evaluate((element: HTMLElement & { go(page: number): void }, to) => {
          element.go(to);
        }, number + 1);
        const where = host.locator('.page-name');
        await where.filter({ hasText: `Page ${number + 1} of` }).waitFor();
        expect(await host.locator('p.text').allTextContents()).toEqual(text);
        expect(await host.locator('figure').count()).toBe(shows.length);
        expect(await axeFindings(page, 'halfhitch-lesson')).toEqual([]);
        if (question === null) continue;
        expect(await host.locator('legend').textContent()).toBe(question.prompt);
        for (const [i, choice] of question.choices.entries()) {
          const button = host.locator('[part=choice]').nth(i);
          await button.focus();
          await page.keyboard.press('Enter');
          const status = host.locator('[role=status]');
          const answer = choice.answer();
          await status.filter({ hasText: answer.text[0] as string }).waitFor();
          const said = (await status.textContent()) ?? '';
          for (const words of [...answer.text, ...answer.findings]) expect(said).toContain(words);
          expect(await button.getAttribute('aria-pressed')).toBe('true');
          expect(await host.locator('figure').count()).toBe(shows.length + answer.shows.length);
          if (i === 0) expect(await axeFindings(page, 'halfhitch-lesson')).toEqual([]);
        }
      }
      expect(await over(page)).toBeLessThanOrEqual(0);
    });
  }
});

describe('a lesson', () => {
  test('is gone through by keyboard alone and tells the page', async ({ openPlain }) => {
    const page = await openPlain(lesson('turn'), { reducedMotion: 'reduce' });
    await ready(page);
    await page.evaluate(() => {
      const heard: unknown[] = [];
      Object.assign(window, { heard });
      for (const name of ['halfhitch-page', 'halfhitch-answer', 'halfhitch-end']) {
        document.addEventListener(name, (event) =>
          heard.push([name, (event as CustomEvent).detail]),
        );
      }
    });
    const press = async (text: string): Promise<void> => {
      for (let i = 0; i < 40; i++) {
        const found = await page.evaluate(() => {
          let at: Element | null = document.activeElement;
          while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
          return at?.textContent?.trim() ?? '';
        });
        if (found.startsWith(text)) return page.keyboard.press('Enter');
        await page.keyboard.press('Tab');
      }
      throw new Error(`Tab never came to "${text}".`);
    };
    await press('Next page');
    await page.locator('halfhitch-lesson .page-name', { hasText: 'Page 2' }).waitFor();
    await press('Next page');
    await page.locator('halfhitch-lesson .page-name', { hasText: 'Page 3' }).waitFor();
    await press('None here');
    await press('Forward-backward');
    await page.locator('halfhitch-lesson .answer.right').waitFor();
    const heard = await page.evaluate(() => (window as unknown as { heard: unknown[] }).heard);
    expect(heard).toEqual([
      ['halfhitch-page', { page: 1 }],
      ['halfhitch-page', { page: 2 }],
      ['halfhitch-answer', { page: 2, choice: 4, right: false }],
      ['halfhitch-answer', { page: 2, choice: 2, right: true }],
      ['halfhitch-end', null],
    ]);
  });

  test('shows what differs in 3D: the row of the answer is drawn', async ({ openPlain }) => {
    const page = await openPlain(lesson('change-last', 'page="3"'), { reducedMotion: 'reduce' });
    await ready(page);
    await page.locator('[part=choice]').first().click();
    await page.locator('halfhitch-lesson halfhitch-row canvas').first().waitFor();
    const live = page.locator('halfhitch-lesson halfhitch-row [part=live]');
    expect(await live.textContent()).toContain('It locks L1');
  });

  test('speaks German where the page does, and says so', async ({ openPlain }) => {
    const page = await openPlain(lesson('turn'), { lang: 'de-AT', reducedMotion: 'reduce' });
    await ready(page);
    expect(await page.locator('halfhitch-lesson h2').textContent()).toContain('Die Wende');
    expect(await page.locator('halfhitch-lesson section').getAttribute('lang')).toBe('de');
    const play = page.locator('halfhitch-lesson halfhitch-row [part~=play]');
    expect(((await play.first().textContent()) ?? '').trim()).toBe('Abspielen');
    await page.locator('halfhitch-lesson').evaluate((element) => {
      element.setAttribute('lang', 'en');
    });
    await page.locator('halfhitch-lesson h2', { hasText: 'The turn' }).waitFor();
  });

  test('fits a phone, and a page at 200 % zoom with large targets', async ({ openPlain }) => {
    for (const width of [320, 390]) {
      const page = await openPlain(lesson('change-last', 'page="2"'), {
        viewport: { width, height: 700 },
        hasTouch: true,
        reducedMotion: 'reduce',
      });
      await ready(page);
      expect(await over(page)).toBeLessThanOrEqual(0);
      const small = await page
        .locator('halfhitch-lesson button')
        .evaluateAll((buttons) =>
          buttons
            .map((button) => button.getBoundingClientRect())
            .filter(({ width: w, height: h }) => w > 0 && (w < 43.5 || h < 43.5)),
        );
      expect(small).toEqual([]);
    }
  });

  test('shows which choice is made without colour when colours are forced', async ({
    openPlain,
  }) => {
    const page = await openPlain(lesson('turn', 'page="3"'), {
      forcedColors: 'active',
      reducedMotion: 'reduce',
    });
    await ready(page);
    await page.locator('[part=choice]').first().click();
    const width = await page
      .locator('[part=choice][aria-pressed=true]')
      .evaluate((button) => getComputedStyle(button).borderTopWidth);
    expect(width).toBe('3px');
  });

  test('says so when there is none of that name', async ({ openPlain }) => {
    const page = await openPlain(lesson('granny'));
    await page.locator('halfhitch-lesson', { hasText: 'There is no such lesson.' }).waitFor();
    await page.locator('halfhitch-lesson').evaluate((element) => {
      element.setAttribute('name', 'undo');
    });
    await ready(page);
  });
});
