import { describe } from 'vitest';
import { expect, PHONE, test } from '../../../../testing/browser.js';
import { letter } from '../../src/lettering/letter.js';
import { USUAL_LETTERING } from '../../src/lettering/settings.js';
import { seriousFindings, smallTargets } from './axe.js';
import { coloursShown, openMaker, plainShare, useAsPiece, watchPolicy } from './makers.js';

const STILL = { viewport: { width: 900, height: 700 }, reducedMotion: 'reduce' } as const;

const LETTERING = ['Letters', 'halfhitch-lettering'] as const;

describe('lettering', () => {
  test('is loaded when it is asked for, and makes the chart that is shown, thread and all', async ({
    openPage,
  }) => {
    const page = await openPage('#draw', STILL);
    const refused = await watchPolicy(page);
    await page.getByRole('button', { name: 'Letters' }).first().waitFor();
    const scripts = (): Promise<string[]> =>
      page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));
    expect((await scripts()).filter((name) => /lettering-panel|from-picture/.test(name))).toEqual(
      [],
    );
    const maker = await openMaker(page, ...LETTERING);
    expect((await scripts()).some((name) => /lettering-panel/.test(name))).toBe(true);

    await maker.getByLabel('What to write').fill('Tarn\nEllerby');
    await maker.getByText('Small, 5').click();
    await maker.getByText('Downwards').click();
    await maker.getByLabel('Kind').selectOption('oars');
    await maker.getByLabel('Margin round the words').fill('1');
    await maker.getByLabel('Border', { exact: true }).last().selectOption({ label: 'reed green' });
    const canvas = maker.locator('.preview-frame canvas');
    const expected = letter('Tarn\nEllerby', {
      ...USUAL_LETTERING,
      size: 'small',
      direction: 'downwards',
      border: 'oars',
      margin: 1,
      borderColour: { hex: '#2f7d4f', name: 'reed green' },
    });
    await expect
      .poll(() => canvas.getAttribute('aria-label'))
      .toContain(`${expected.rows} rows of ${expected.columns} knots`);
    const plain = (): Promise<number> =>
      plainShare(
        canvas,
        expected.colours.map(({ hex }) => hex),
      );
    await expect.poll(plain).toBeLessThan(0.1);
    await maker.getByText('Chart', { exact: true }).click();
    await expect.poll(plain).toBeGreaterThan(0.5);
    expect(await coloursShown(canvas)).toBeGreaterThanOrEqual(3);
    expect(await refused()).toEqual([]);

    const chart = await useAsPiece(page, maker);
    expect(chart.name).toBe('Tarn Ellerby');
    expect([chart.rows, chart.columns]).toEqual([expected.rows, expected.columns]);
    expect(chart.cells).toEqual([...expected.cells]);
    expect(chart.colours).toEqual(expected.colours.map(({ hex, name }) => ({ hex, name })));
  });

  test('says which character it has not, keeps what was there, and goes by keyboard', async ({
    openPage,
  }) => {
    const page = await openPage('#draw', STILL);
    const maker = await openMaker(page, ...LETTERING);
    const text = maker.getByLabel('What to write');
    await text.fill('Otter');
    await maker.locator('button[type=submit][aria-disabled=false]').waitFor();
    await text.fill('Otter 漢');
    await expect.poll(() => maker.getByRole('alert').textContent()).toContain('“漢” (U+6F22)');
    await maker.locator('button[type=submit][aria-disabled=true]').click({ force: true });
    expect(await maker.isVisible()).toBe(true);
    await maker.getByLabel('Whole width').fill('4000');
    await text.fill('Otter');
    await expect
      .poll(() => maker.getByRole('alert').allTextContents())
      .toContain('Give a whole number from 1 to 300.');
    await maker.getByLabel('Whole width').fill('');
    await maker.locator('button[type=submit][aria-disabled=false]').waitFor();

    // The rest by keyboard alone.
    await maker.getByLabel('What to write').focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('Heron ');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(() => maker.getByLabel('What to write').inputValue()).toBe('Heron ♥');
    const size = maker.getByRole('radio', { name: 'Medium, 7' });
    await size.focus();
    await page.keyboard.press('ArrowRight');
    await maker.locator('button[type=submit][aria-disabled=false]').focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Open as a new piece' }).press('Enter');
    const expected = letter('Heron ♥', { ...USUAL_LETTERING, size: 'large' });
    await page.waitForFunction(
      (name) =>
        (
          document.querySelector('halfhitch-workbench') as HTMLElement & {
            session: { project: { chart: { name: string; rows: number } } };
          }
        ).session.project.chart.name === name,
      expected.name,
    );
  });

  test('is at hand on a phone, for everybody', async ({ openPage }) => {
    const page = await openPage('#draw', {
      ...PHONE,
      viewport: { width: 360, height: 760 },
      reducedMotion: 'reduce',
    });
    const maker = await openMaker(page, ...LETTERING);
    await maker.locator('summary').click();
    await expect
      .poll(() => coloursShown(maker.locator('.preview-frame canvas')))
      .toBeGreaterThan(3);
    const { over, small } = await smallTargets(page);
    expect(over).toBeLessThanOrEqual(0);
    expect(small).toEqual([]);
    expect(await seriousFindings(page)).toEqual([]);
    const wide = await maker.evaluate((element) => element.scrollWidth - element.clientWidth);
    expect(wide).toBeLessThanOrEqual(0);
  });
});
