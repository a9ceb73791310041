import { readFileSync } from 'node:fs';
import { type Chart, readChart } from '@halfhitch/core';
import type { Page } from 'playwright-core';
import { extractText } from 'unpdf';
import { describe } from 'vitest';
import { expect, test } from '../../../../testing/browser.js';
import { asText, choose, STILL } from './workbench.js';

const OTTER: Chart = readChart(
  readFileSync(new URL('../../../../examples/otter.json', import.meta.url)),
  'otter.json',
).chart;

/** What the printer gets: the size of its paper in points, and each page's text as a reader has it. */
async function printed(
  page: Page,
): Promise<{ readonly size: readonly number[]; readonly pages: readonly string[] }> {
  const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
  const box = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(pdf.toString('latin1'));
  const { text } = await extractText(new Uint8Array(pdf), { mergePages: false });
  return {
    size: [Math.round(Number(box?.[1])), Math.round(Number(box?.[2]))],
    pages: text.map((one) => one.replace(/\s+/g, ' ')),
  };
}

async function showSheets(page: Page): Promise<void> {
  await page.getByRole('button', { name: /Show the sheets|Make them anew/ }).click();
  await page.locator('.sheets').waitFor();
  await page
    .locator('halfhitch-sheets [role=status]')
    .filter({ hasText: 'The sheets are below' })
    .waitFor();
}

/** Numbers of the rows whose words stand beside the cells, in the order in which they are printed. */
function rowsOnCharts(pages: readonly string[]): number[] {
  return pages.flatMap((text) =>
    [...text.matchAll(/(\d+), to the (?:left|right)/g)].map(([, row]) => Number(row)),
  );
}

const upTo = (end: number): number[] => Array.from({ length: end }, (_, i) => i + 1);

describe('print sheets', () => {
  test('come out of the printer on A4 and on Letter with nothing lost and no page too many', async ({
    openPage,
  }) => {
    const page = await openPage('#keep', STILL);
    await choose(page, asText(Buffer.from(JSON.stringify(longOtter())), 'long.json'));
    await page.getByRole('heading', { name: 'Export Long Otter' }).waitFor();
    for (const [paper, size] of [
      ['a4', [595, 842]],
      ['letter', [612, 792]],
    ] as const) {
      await page.locator('#sheet-paper').selectOption(paper);
      // Once is enough for the words, of which there are many pages.
      await page.getByLabel('Written rows', { exact: true }).setChecked(paper === 'a4');
      await showSheets(page);
      await page.locator(`.sheets[data-paper=${paper}]`).waitFor();
      const { size: box, pages } = await printed(page);
      expect(box).toEqual(size);
      pages.forEach((text, i) => {
        expect(text).toContain(`Page ${i + 1} of ${pages.length}`);
      });
      // Every row of cells stands on one page, once, with its number on the other side too.
      expect(rowsOnCharts(pages)).toEqual(upTo(48));
      const charts = pages.filter((text) => /Chart, rows \d+ to \d+/.test(text));
      expect(charts.length).toBe(await page.locator('.sheet-chart').count());
      expect(charts.length).toBeGreaterThan(1);
      for (const text of charts) {
        for (const { name } of OTTER.colours) expect(text).toContain(name);
        expect(text).toContain('> forward-backward');
        expect(text).toContain('< backward-forward');
        // A page of the chart holds nothing else.
        expect(text).not.toMatch(/Row by row|Cut list/);
      }
      const headings = pages.join(' ').match(/Row \d+, from (left|right) to (left|right)/g) ?? [];
      expect(headings).toHaveLength(paper === 'a4' ? 48 : 0);
      const whole = pages.join(' ');
      for (const part of [
        'Take care',
        'Hang your strings',
        'What to cut',
        'lead L1',
        'Thread by colour',
      ]) {
        expect(whole).toContain(part);
      }
      expect(whole.includes('Finish')).toBe(paper === 'a4');
      // Nothing of the workbench itself.
      for (const part of ['Open a chart', 'Your projects', 'Show the demo', 'Undo']) {
        expect(whole).not.toContain(part);
      }
    }
    // Only what is asked for.
    await page.getByLabel('Cut list', { exact: true }).uncheck();
    await page.locator('#sheet-firstRow').fill('5');
    await page.locator('#sheet-lastRow').fill('20');
    await page.locator('#sheet-lastRow').press('Enter');
    await page.getByLabel('Colours under the marks').uncheck();
    await expect.poll(() => page.locator('.sheet-rows, .sheet-cut').count()).toBe(0);
    await expect.poll(() => page.locator('.sheet-chart h3').allTextContents()).toHaveLength(1);
    const { pages: few } = await printed(page);
    expect(few).toHaveLength(2);
    expect(rowsOnCharts(few)).toEqual(upTo(20).slice(4));
    // Black and white: no paint but ink and paper.
    const paints = await page
      .locator('.sheet-cells path, .sheet-cells rect')
      .evaluateAll((shapes) =>
        [
          ...new Set(
            shapes.flatMap((shape) => [
              getComputedStyle(shape).fill,
              getComputedStyle(shape).stroke,
            ]),
          ),
        ].filter((paint) => paint.startsWith('rgb')),
      );
    for (const paint of paints) expect(paint).toMatch(/^rgb\((\d+), \1, \1\)$/);
  });

  test('refuse what can’t be printed, with advice', async ({ openPage }) => {
    const page = await openPage('#keep', STILL);
    await page.getByRole('heading', { name: 'Export Otter' }).waitFor();
    const alert = page.locator('halfhitch-sheets [role=alert]');
    await page.locator('#sheet-lastRow').fill('99');
    await page.locator('#sheet-lastRow').press('Tab');
    await page.getByRole('button', { name: 'Show the sheets' }).click();
    await alert.filter({ hasText: 'Rows go from 1 to 24' }).waitFor();
    await page.locator('#sheet-lastRow').fill('24');
    await page.locator('#sheet-lastRow').press('Tab');
    // The button prints the sheets and nothing else, and leaves the page as it was.
    const asked = await page.evaluate(async () => {
      const seen: (string | undefined)[] = [];
      window.print = () => {
        dispatchEvent(new Event('beforeprint'));
        seen.push(document.documentElement.dataset['print']);
        dispatchEvent(new Event('afterprint'));
      };
      document.querySelector<HTMLButtonElement>('.sheet-buttons .primary')?.click();
      await new Promise<void>((resolve) => {
        const look = (): void => {
          if (seen.length > 0) resolve();
          else setTimeout(look, 20);
        };
        look();
      });
      return [...seen, document.documentElement.dataset['print']];
    });
    expect(asked).toEqual(['sheets', undefined]);
  });
});

/** Two otters on one band: more rows than a page holds. */
function longOtter(): object {
  const document_ = JSON.parse(
    readFileSync(new URL('../../../../examples/otter.json', import.meta.url), 'utf8'),
  ) as { rows: string[] };
  const { rows } = document_;
  return { ...document_, name: 'Long Otter', rows: [...rows, ...rows] };
}
