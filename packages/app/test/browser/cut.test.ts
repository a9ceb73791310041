import { readFileSync } from 'node:fs';
import { type Chart, readChart } from '@halfhitch/core';
import { type CutList, type CutOptions, cutList, tightMeasures } from '@halfhitch/geometry';
import type { Page } from 'playwright-core';
import { describe } from 'vitest';
import { DESKTOP, expect, PHONE, test } from '../../../../testing/browser.js';
import { seriousFindings, smallTargets } from './axe.js';
import { asText, choose, STILL, textChart } from './workbench.js';

const OTTER: Chart = readChart(
  readFileSync(new URL('../../../../examples/otter.json', import.meta.url)),
  'otter.json',
).chart;

/** What the list itself gives for the demo, by the edges it is knotted with. */
function expected(options: CutOptions = {}): CutList {
  return cutList(OTTER, tightMeasures(options.edge ?? 'straight'), options);
}

const said = (value: number): string => Math.round(value).toLocaleString('en-GB');

/** The lines of the table of strings that a list should have: every figure, as text. */
function linesOf(list: CutList): string[][] {
  const bases = list.pieces.filter(({ role }) => role === 'base');
  const leads = list.pieces.filter(({ role }) => role === 'lead');
  return [bases.slice(0, 1), ...leads.map((lead) => [lead])].flat().map((piece) => {
    const { knots, hanging, travel, floats, tails, margin } = piece.parts;
    const base = piece.role === 'base';
    return [
      base ? `${bases.length}, B1 to B${bases.length}` : `lead ${piece.string}`,
      said(base ? piece.knotsHeld : piece.knotsTied),
      ...[knots, hanging, travel, floats, tails, margin].map((mm) => (mm > 0 ? said(mm) : '–')),
      `${base ? `${bases.length} of ` : ''}${said(piece.cut)} mm ± ${Math.ceil(piece.length.plusMinus).toLocaleString('en-GB')}`,
    ];
  });
}

async function linesShown(page: Page): Promise<string[][]> {
  return page
    .getByRole('table', { name: /^What to cut/ })
    .locator('tbody')
    .evaluate((body) =>
      [...(body as HTMLTableSectionElement).rows].map((row) =>
        [...row.cells].map((cell) =>
          ((cell.querySelector('.what :nth-child(2)') ?? cell).textContent ?? '')
            .trim()
            .replace(/\s+/g, ' '),
        ),
      ),
    );
}

/** Waits until the page shows just this list. */
async function shows(page: Page, list: CutList): Promise<void> {
  await expect.poll(() => linesShown(page).catch(() => null)).toEqual(linesOf(list));
}

async function totalsShown(page: Page): Promise<string[]> {
  const rows = await page
    .getByRole('table', { name: /^Thread by colour/ })
    .locator('tbody tr')
    .allTextContents();
  return rows.map((row) => row.replace(/\s+/g, ' ').trim());
}

async function fold(page: Page, name: string): Promise<void> {
  await page.locator('summary', { hasText: name }).click();
}

describe('the cut list', () => {
  test('gives what the list gives: strings, size, totals, and how sure they are', async ({
    openPage,
  }) => {
    const page = await openPage('#cut', STILL);
    const list = expected();
    await shows(page, list);
    const size = (await page.locator('.cut-size').textContent()) ?? '';
    const off = (mm: number): string => `± ${Math.ceil(mm * list.uncertainty)}`;
    expect(size).toContain(
      `${said(list.size.width)} mm ${off(list.size.width)} wide, ${said(list.size.length)} mm ${off(list.size.length)} long`,
    );
    expect(size).toContain(`may be off by ${Math.round(list.uncertainty * 100)} %`);
    const totals = await totalsShown(page);
    expect(totals).toHaveLength(list.totals.length);
    list.totals.forEach((total, i) => {
      expect(totals[i]).toContain(
        `${total.pieces} ${(total.length.mm / 1000).toFixed(2)} m ± ${(Math.ceil(total.length.plusMinus / 10) / 100).toFixed(2)} ${total.putUps}`,
      );
    });
    expect(await page.locator('.cut-card .care').textContent()).toMatch(/fingers.*children/s);
  });

  test('follows every field and the edges as they are changed', async ({ openPage }) => {
    const page = await openPage('#cut', STILL);
    await page.getByLabel('Thread given').selectOption('tex');
    await page.getByLabel('Fineness of one strand').fill('70');
    await page.getByLabel('Strands together').fill('3');
    const thread = { tex: 70, strands: 3 };
    await shows(page, expected({ thread }));
    await page.getByLabel('Thread given').selectOption('diameter');
    await page.getByLabel('Thickness of one strand').fill('0.9');
    await page.getByLabel('Strands together').fill('1');
    const thick = { diameter: 0.9, strands: 1 };
    await shows(page, expected({ thread: thick }));
    await page.getByLabel('Knotted part').selectOption('wrist');
    await page.getByLabel('Round the wrist').fill('170');
    await shows(page, expected({ thread: thick, wrist: 170 }));
    await fold(page, 'Tails, margin');
    await page.getByLabel('Tail at each end').fill('120');
    await page.getByLabel('Margin for safety').fill('25');
    await page.getByLabel('Longest lead').fill('2');
    await page.getByLabel('Ease').fill('10');
    const last = { thread: thick, wrist: 170, tails: 120, margin: 25, workable: 2_000 };
    await shows(page, expected(last));
    const joined = expected(last).pieces.find(({ joinedInRow }) => joinedInRow !== null);
    expect(await page.locator('.joined').first().textContent()).toBe(
      `joined in row ${joined?.joinedInRow}`,
    );
    await page.getByLabel('One put-up').fill('2.5');
    await expect.poll(() => totalsShown(page)).not.toEqual([]);
    const putUps = expected({ ...last, putUp: 2_500 }).totals.map((total) => total.putUps);
    expect(Math.max(...putUps)).toBeGreaterThan(1);
    await expect
      .poll(async () =>
        (await totalsShown(page)).map((row) => Number(/ (\d+)(, at most \d+)?$/.exec(row)?.[1])),
      )
      .toEqual(putUps);
    await page.getByRole('link', { name: 'Check' }).click();
    await page.getByLabel('Edges').selectOption('wrapped');
    await page.getByRole('link', { name: 'Cut' }).click();
    await shows(page, expected({ ...last, putUp: 2_500, edge: 'wrapped' }));
    await page.getByRole('button', { name: 'Back to the usual figures' }).click();
    await shows(page, expected({ edge: 'wrapped' }));
  });

  test('takes a swatch and says what it leaves unexplained', async ({ openPage }) => {
    const page = await openPage('#cut', STILL);
    await fold(page, 'A swatch of your own');
    const fields = { Rows: '20', Columns: '12', Width: '24', Length: '58' };
    for (const [label, value] of Object.entries(fields)) {
      await page
        .locator('.fold')
        .getByLabel(label, { exact: label === 'Rows' })
        .fill(value);
    }
    const list = expected({ swatch: { rows: 20, columns: 12, width: 24, length: 58 } });
    await shows(page, list);
    const size = (await page.locator('.cut-size').textContent()) ?? '';
    const { calibration } = list;
    if (calibration === null) throw new Error('There is no calibration.');
    expect(size).toContain(`one ${calibration.diameter.toFixed(2)} mm thick`);
    const share = (residual: number): string => `${(100 * Math.abs(residual)).toFixed(1)} %`;
    expect(size).toContain(`${share(calibration.residual.width)} of its width`);
    expect(size).toContain(`${share(calibration.residual.length)} of its length`);
    const compared = (await page.locator('.cut-table.swatch').textContent()) ?? '';
    expect(compared.replace(/\s+/g, ' ')).toMatch(
      /Width [\d.]+ ± [\d.]+ 24.0 [\d.]+ % (more|less)/,
    );
    expect(size).toContain(`may still be off by ${Math.round(100 * list.uncertainty)} %`);
  });

  test('says what is wrong beside the field, and keeps the list', async ({ openPage }) => {
    const page = await openPage('#cut', STILL);
    await shows(page, expected());
    await page.getByLabel('Knotted part').selectOption('wrist');
    // Worked out first: a busy machine may take longer to type than the page waits for it.
    await shows(page, expected({ wrist: 160 }));
    const before = await linesShown(page);
    const wrist = page.getByLabel('Round the wrist');
    for (const [text, message] of [
      ['1600', 'from 80 to 300 mm'],
      ['wide', 'is not a number'],
      ['', 'Nothing is filled in'],
      ['16,5', 'without a comma'],
    ] as const) {
      await wrist.fill(text);
      const field = page.locator('.field', { has: wrist });
      await field.getByRole('alert').filter({ hasText: message }).waitFor();
      expect(await wrist.getAttribute('aria-invalid')).toBe('true');
      const described = (await wrist.getAttribute('aria-describedby'))?.split(' ')[0];
      expect(await page.locator(`#${described}`).textContent()).toContain(message);
    }
    expect(await linesShown(page)).toEqual(before);
    await page.getByText('The list below is from before this change.').waitFor();
    await wrist.fill('165');
    await shows(page, expected({ wrist: 165 }));
    expect(await page.getByRole('alert').count()).toBe(0);
    expect(await wrist.getAttribute('aria-invalid')).toBe('false');
  });

  test('unfolds what is wrong, also where two figures do not go together', async ({ openPage }) => {
    const page = await openPage('#cut', STILL);
    await fold(page, 'Tails, margin');
    await page.getByLabel('One put-up').fill('0.5');
    await fold(page, 'Tails, margin');
    await page.getByLabel('Knotted part').selectOption('length');
    await page.getByLabel('Knotted length').fill('900');
    const alert = page.locator('.field', { has: page.locator('#cut-putUp') }).getByRole('alert');
    await alert.waitFor();
    expect(await alert.textContent()).toContain('a put-up holds 500 mm');
    await page.getByLabel('One put-up').fill('8');
    await shows(page, expected({ length: 900 }));
  });

  test('keeps what was filled in', async ({ openPage }) => {
    const page = await openPage('#cut', STILL);
    await page.getByLabel('Knotted part').selectOption('wrist');
    await page.getByLabel('Round the wrist').fill('181');
    await shows(page, expected({ wrist: 181 }));
    await page.keyboard.press('Tab');
    // Written a quarter of a second later; tests of the store kill the page at any moment.
    await page.waitForTimeout(1_500);
    await page.reload();
    await shows(page, expected({ wrist: 181 }));
    expect(await page.getByLabel('Round the wrist').inputValue()).toBe('181');
  });

  test('does without where the browser keeps nothing', async ({ openPage }) => {
    const page = await openPage('#cut', STILL, (fresh) =>
      fresh.addInitScript(() => {
        Object.defineProperty(window, 'localStorage', {
          get() {
            throw new DOMException('Storage is switched off.', 'SecurityError');
          },
        });
      }),
    );
    await shows(page, expected());
    await page.getByLabel('Knotted part').selectOption('wrist');
    await page.getByLabel('Round the wrist').fill('150');
    await shows(page, expected({ wrist: 150 }));
  });

  test('follows the chart that is opened', async ({ openPage }) => {
    const page = await openPage('#cut', STILL);
    await shows(page, expected());
    const rows = ['bbbbbb', 'bboobb', 'bowwob', 'bboobb'];
    const { chart } = readChart(textChart(rows), 'chart.txt');
    await choose(page, asText(textChart(rows)));
    await shows(page, cutList(chart, tightMeasures('straight')));
  });

  test('fits a wrist by size and closing, can be undone, and answers those who want beads', async ({
    openPage,
  }) => {
    const page = await openPage('#cut', STILL);
    await shows(page, expected());
    await fold(page, 'Wrist sizes');
    await page.getByRole('button', { name: 'Use Woman, medium, 155 mm' }).click();
    await shows(page, expected({ wrist: 155 }));
    await page.getByLabel('Closed with').selectOption('ties');
    await page.getByLabel('Gap that the tied plaits fill').fill('20');
    await page.getByLabel('Length of a plait').fill('150');
    // Less by the gap; tails of 1.25 plaits and 30 mm, in whole centimetres.
    const { thickness } = expected().size;
    const tied = { length: 155 + 10 + Math.PI * thickness - 20, tails: 220 };
    await shows(page, expected(tied));
    const fit = page.locator('.cut-fit');
    expect(await fit.textContent()).toMatch(/wrist of 15[3-7] mm/);
    expect(await page.locator('.care').textContent()).toMatch(/small child.*EN 14682/s);

    await page.getByLabel('Closed with').selectOption('bead');
    await page.locator('#cut-no-beads').getByText('beads aren’t planned here').waitFor();
    await shows(page, expected({ wrist: 155 }));
    await page.locator('.letterhead').getByText('Undo').click();
    await expect.poll(() => page.getByLabel('Closed with').inputValue()).toBe('ties');
    await shows(page, expected(tied));
  });

  test('says what to buy in words that can be copied', async ({ openPage }) => {
    const page = await openPage('#cut', STILL);
    await shows(page, expected());
    const lines = await page.locator('.cut-shopping li').allTextContents();
    expect(lines).toHaveLength(expected().totals.length);
    await page.evaluate(() => {
      Object.defineProperty(navigator, 'clipboard', {
        value: {
          writeText: async (text: string) => document.body.setAttribute('data-copied', text),
        },
      });
    });
    await page.getByRole('button', { name: 'Copy the list' }).click();
    await page.getByText('Copied.').waitFor();
    const copied = await page.locator('body').getAttribute('data-copied');
    expect(copied).toBe(['To buy for Otter', ...lines.map((line) => `- ${line}`)].join('\n'));
  });

  test('is printed without the rest of the page', async ({ openPage }) => {
    const page = await openPage('#cut', STILL);
    await shows(page, expected());
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute('data-asked', '');
    });
    await page.getByRole('button', { name: 'Print the cut list' }).click();
    await page.locator('body[data-asked]').waitFor({ state: 'attached' });
    await page.emulateMedia({ media: 'print' });
    const visible = (selector: string): Promise<boolean> =>
      page.locator(selector).first().isVisible();
    expect(await visible('.cut-table')).toBe(true);
    expect(await visible('.print-title')).toBe(true);
    for (const selector of ['.letterhead', '.cut-form', '.cut-sizes', '.foot']) {
      expect(await visible(selector), selector).toBe(false);
    }
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    expect(await visible('.letterhead')).toBe(true);
  });
});

describe('the cut list, for everyone', () => {
  for (const [name, options] of [
    ['phone, light', { ...PHONE, colorScheme: 'light' }],
    ['desktop, dark', { ...DESKTOP, colorScheme: 'dark' }],
  ] as const) {
    test(`axe finds nothing serious, nothing goes over the side: ${name}`, async ({ openPage }) => {
      const page = await openPage('#cut', { ...options, reducedMotion: 'reduce' });
      await shows(page, expected());
      await fold(page, 'Tails, margin');
      await fold(page, 'A swatch of your own');
      await page.getByLabel('Closed with').selectOption('buckle');
      await page.locator('.cut-fit').getByText('over the bar').waitFor();
      await fold(page, 'Wrist sizes');
      await page.getByLabel('Thread given').selectOption('diameter');
      await page.getByLabel('Thickness of one strand').fill('thick');
      await page.getByLabel('Tail at each end').fill('-3');
      await page.locator('.field-error').nth(1).waitFor();
      expect(await seriousFindings(page)).toEqual([]);
      expect(await smallTargets(page)).toEqual({ over: 0, small: [] });
    });
  }
});
