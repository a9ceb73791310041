import type { Page } from 'playwright-core';
import { describe } from 'vitest';
import { LESSON_NAMES, lessonNamed } from '../../src/lessons.js';
import { axeFindings, expect, type PageLook, test } from './bundle-page.js';

const lesson = (name: string, more = ''): string =>
  `<halfhitch-lesson name="${name}" ${more}></halfhitch-lesson>`;

async function ready(page: Page): Promise<void> {
  await page.locator('halfhitch-lesson h2').waitFor();
}

const over = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** A phone, or a small window at 200 % zoom, with forced colours and a page from right to left. */
const HARD: PageLook = { width: 320, dir: 'rtl', forcedColours: true };

/** As the browser looks at it; the body stays. */
async function look(page: Page, { width = 1100, dir = 'ltr', forcedColours }: PageLook) {
  await page.setViewportSize({ width, height: 800 });
  await page.emulateMedia({
    reducedMotion: 'reduce',
    forcedColors: forcedColours === true ? 'active' : 'none',
  });
  await page.evaluate((given) => {
    document.documentElement.dir = given;
  }, dir);
}

describe('every lesson, page by page and answer by answer', () => {
  for (const name of LESSON_NAMES) {
    test(name, { timeout: 240_000 }, async ({ fill }) => {
      const expected = lessonNamed(name);
      const page = await fill(lesson(name));
      await ready(page);
      const host = page.locator('halfhitch-lesson');
      const clean = async (where: string): Promise<void> => {
        expect([where, await axeFindings(page, 'halfhitch-lesson')]).toEqual([where, []]);
        expect([where, await over(page)]).toEqual([where, 0]);
      };
      expect(await host.locator('h2').textContent()).toBe(expected.title);
      for (const [number, { text, question, shows }] of expected.pages.entries()) {
        await host.evaluate((element: HTMLElement & { go(page: number): void }, to) => {
          element.go(to);
        }, number + 1);
        const where = host.locator('.page-name');
        await where.filter({ hasText: `Page ${number + 1} of` }).waitFor();
        expect(await host.locator('p.text').allTextContents()).toEqual(text);
        expect(await host.locator('figure').count()).toBe(shows.length);
        await clean(`page ${number + 1}`);
        if (question === null) continue;
        expect(await host.locator('legend').textContent()).toBe(question.prompt);
        const firstWrong = question.choices.findIndex(({ right }) => !right);
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
          if (i === firstWrong) {
            // In the hard look, so that both looks are seen without seeing all twice.
            await look(page, HARD);
            await clean(`page ${number + 1}, wrong answer`);
            await look(page, {});
          }
          if (choice.right) await clean(`page ${number + 1}, right answer`);
        }
      }
    });
  }
});

describe('a lesson', () => {
  test('is gone through by keyboard alone and tells the page', async ({ fill }) => {
    const page = await fill(lesson('turn'));
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

  test('shows what differs in 3D: the row of the answer is drawn', async ({ fill }) => {
    const page = await fill(lesson('change-last', 'page="3"'));
    await ready(page);
    await page.locator('[part=choice]').first().click();
    await page.locator('halfhitch-lesson halfhitch-row canvas').first().waitFor();
    const live = page.locator('halfhitch-lesson halfhitch-row [part=live]');
    expect(await live.textContent()).toContain('It locks L1');
  });

  test('speaks German where the page does, and says so', async ({ fill }) => {
    const page = await fill(lesson('turn'), { lang: 'de-AT' });
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

  test('fits a phone, and a page at 200 % zoom with large targets', async ({ fill }) => {
    for (const width of [320, 390]) {
      const page = await fill(lesson('change-last', 'page="2"'), { width });
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

  test('shows which choice is made without colour when colours are forced', async ({ fill }) => {
    const page = await fill(lesson('turn', 'page="3"'), { forcedColours: true });
    await ready(page);
    await page.locator('[part=choice]').first().click();
    const width = await page
      .locator('[part=choice][aria-pressed=true]')
      .evaluate((button) => getComputedStyle(button).borderTopWidth);
    expect(width).toBe('3px');
  });

  test('pictures how things are before a knot, and says nothing of what comes', async ({
    fill,
  }) => {
    const page = await fill(lesson('strings', 'page="2"'));
    await ready(page);
    const still = page.locator('halfhitch-lesson halfhitch-row[still]');
    await still.locator('canvas.threads').waitFor();
    expect(await still.locator('[part=caption], [part=live], [part=controls]').count()).toBe(0);
    const labels = still.locator('[part=label]:not([hidden])');
    await expect.poll(async () => labels.allTextContents()).toContain('L2 (buoy orange)');
    expect(await labels.allTextContents()).not.toContain('ties');
    const before = await still.getAttribute('position');
    await still.locator('[part=stage]').focus();
    for (const key of ['Space', 'ArrowRight', 'End', 'ArrowDown']) await page.keyboard.press(key);
    expect(await still.getAttribute('position')).toBe(before);
    await page.keyboard.press('f');
    expect(await still.getAttribute('view')).toBe('back');
  });

  test('is laid out from right to left in a language that is written so', async ({ fill }) => {
    const page = await fill('', { lang: 'ar', dir: 'rtl', width: 360 });
    await page.evaluate(async () => {
      const { load } = window as unknown as {
        load(from: string): Promise<{
          lessonMessages(): Promise<{ add(lang: string, given: Record<string, string>): void }>;
        }>;
      };
      const messages = await (await load('/halfhitch.js')).lessonMessages();
      messages.add('ar', { 'lesson.next': 'الصفحة التالية', 'lesson.before': 'الصفحة السابقة' });
      const made = document.createElement('halfhitch-lesson');
      made.setAttribute('name', 'turn');
      made.setAttribute('page', '2');
      document.querySelector('main')?.append(made);
    });
    await ready(page);
    expect(await page.locator('halfhitch-lesson section').getAttribute('dir')).toBe('rtl');
    const [before, next] = await page
      .locator('halfhitch-lesson nav button')
      .evaluateAll((buttons) => buttons.map((button) => button.getBoundingClientRect().right));
    expect(next).toBeLessThan(before as number);
    expect(await over(page)).toBe(0);
    expect(await axeFindings(page, 'halfhitch-lesson')).toEqual([]);
  });

  test('says so when there is none of that name', async ({ fill }) => {
    const page = await fill(lesson('granny'));
    await page.locator('halfhitch-lesson', { hasText: 'There is no such lesson.' }).waitFor();
    await page.locator('halfhitch-lesson').evaluate((element) => {
      element.setAttribute('name', 'undo');
    });
    await ready(page);
  });
});
