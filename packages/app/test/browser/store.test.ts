import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, inject } from 'vitest';
import { expect, test } from '../../../../testing/browser.js';
import { startKillable } from './killable.js';
import { inHand, keptIs, openTied, redraw } from './tie-page.js';
import { STILL } from './workbench.js';

const WIDE = Array<string>(40).fill('bbbbobbbbb');

describe('work survives', () => {
  test('a browser that is killed at any moment: every knot shown as kept is there', async () => {
    const profile = mkdtempSync(join(tmpdir(), 'halfhitch-kill-'));
    const address = new URL('#tie', inject('appAddress')).href;
    let acknowledged = 0;
    try {
      for (let round = 0; round < 5; round++) {
        const { page, kill } = await startKillable(profile, address);
        try {
          if (round === 0) await openTied(page, WIDE);
          else await page.locator('.tie-kept').waitFor();
          await page.waitForFunction(
            (least) =>
              Number(document.querySelector<HTMLElement>('.tie-kept')?.dataset['kept']) >= least,
            acknowledged,
          );
          expect(await page.locator('.tie-field .of').first().textContent()).toBe('of 40');
          // The page says whatever it shows as kept, and knots are tied until it is gone.
          await page.exposeFunction('told', (kept: number) => {
            acknowledged = Math.max(acknowledged, kept);
          });
          await page.evaluate(() => {
            const tell = (): void => {
              const shown = document.querySelector<HTMLElement>('.tie-kept')?.dataset['kept'];
              void (window as unknown as { told(kept: number): void }).told(Number(shown));
            };
            new MutationObserver(tell).observe(document.body, {
              subtree: true,
              attributes: true,
              attributeFilter: ['data-kept'],
            });
            const knot = (): void => {
              document.querySelector<HTMLElement>('.tie-done')?.click();
              setTimeout(knot, 40 * Math.random());
            };
            knot();
          });
          const before = acknowledged;
          await expect.poll(() => acknowledged, { interval: 5 }).toBeGreaterThan(before + 3);
          await new Promise((resolve) => setTimeout(resolve, 150 * Math.random()));
        } finally {
          await kill();
        }
      }
      const { page, kill } = await startKillable(profile, address);
      try {
        await page.waitForFunction(
          (least) =>
            Number(document.querySelector<HTMLElement>('.tie-kept')?.dataset['kept']) >= least,
          acknowledged,
        );
      } finally {
        await kill();
      }
      expect(acknowledged).toBeGreaterThan(15);
    } finally {
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    }
  });

  test('a page that crashes, is loaded anew or is left right after a change', async ({
    openPage,
  }) => {
    const page = await openPage('#tie', STILL);
    await openTied(page, WIDE);
    const colourOf = (cell: number): Promise<number> =>
      page.evaluate(
        (at) =>
          (
            document.querySelector('halfhitch-workbench') as unknown as {
              session: { project: { chart: { cells: Uint8Array } } };
            }
          ).session.project.chart.cells[at] as number,
        cell,
      );
    await keptIs(page, 0);
    for (let round = 0; round < 4; round++) {
      // Several changes at once: the first is being kept, the last waits.
      for (let column = 0; column <= 3; column++)
        await redraw(page, { cell: [30 + round, column] });
      if (round % 2 === 0) await page.reload();
      else {
        await page.goto('about:blank');
        await page.goto(new URL('#tie', inject('appAddress')).href);
      }
      await page.locator('.tie-done').waitFor();
      for (let column = 0; column <= 3; column++) {
        // A page that is left hands over what waits while the next one opens.
        await expect
          .poll(() => colourOf((30 + round) * 10 + column), { message: `round ${round}` })
          .toBe(1);
      }
    }
    await page.keyboard.press('Space');
    await page.keyboard.press('Space');
    await keptIs(page, 2);
    const crashed = page.waitForEvent('crash');
    page.goto('chrome://crash').catch(() => {});
    await crashed;
    const next = await page.context().newPage();
    await next.goto(new URL('#tie', inject('appAddress')).href);
    await keptIs(next, 2);
  });
});

describe('storage that does not keep', () => {
  test('when it is full it says so, goes on in the page, and keeps once there is room', async ({
    openPage,
  }) => {
    const page = await openPage('burgee.svg', STILL);
    const devtools = await page.context().newCDPSession(page);
    const { origin } = new URL(page.url());
    // Before there is a database: what room there is, the browser asks but now and then.
    await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    await page.goto(new URL('#tie', inject('appAddress')).href);
    await inHand(page, 'Backward-forward knot on base string 1');
    for (let i = 0; i < 3; i++) await page.keyboard.press('Space');
    const alert = page.locator('.tie-notice', { hasText: 'counted, but not kept' });
    await alert.waitFor();
    expect(await alert.textContent()).toMatch(/storage that this browser gives is full/);
    await inHand(page, 'Forward knot on base string 4');
    await devtools.send('Storage.overrideQuotaForOrigin', { origin });
    await alert.getByRole('button', { name: 'Try to keep them again' }).click();
    await keptIs(page, 3);
    await alert.waitFor({ state: 'detached' });
    await page.reload();
    await keptIs(page, 3);
  });

  test('when there is none, work goes on in the page, and it says that nothing is kept', async ({
    openPage,
  }) => {
    const page = await openPage('#tie', STILL, (fresh) =>
      fresh.addInitScript(() => {
        Object.defineProperty(window, 'indexedDB', { value: undefined });
      }),
    );
    await page.getByText('Nothing is kept after this page is closed').waitFor();
    await page.locator('.tie-done').waitFor();
    await page.keyboard.press('Space');
    await page.getByText('Counted in this page only').waitFor();
    await page.locator('.tie-kept[data-kept="1"]').waitFor();
  });

  test('records that are broken keep nothing else from being opened, and the count can be set anew', async ({
    openPage,
  }) => {
    const page = await openPage('#tie', STILL);
    await openTied(page, WIDE);
    for (let i = 0; i < 3; i++) await page.keyboard.press('Space');
    await keptIs(page, 3);
    const spoil = (shelf: string): Promise<void> =>
      page.evaluate(
        (name) =>
          new Promise<void>((resolve, reject) => {
            const opening = indexedDB.open('halfhitch');
            opening.onerror = () => reject(opening.error);
            opening.onsuccess = () => {
              const transaction = opening.result.transaction(name, 'readwrite');
              const store = transaction.objectStore(name);
              const keys = store.getAllKeys();
              keys.onsuccess = () => {
                for (const key of keys.result) store.put({ format: 1, rows: 'many' }, key);
              };
              transaction.oncomplete = () => {
                opening.result.close();
                resolve();
              };
            };
          }),
        shelf,
      );
    await spoil('progress');
    await page.reload();
    const alert = page.locator('.tie-notice', {
      hasText: 'count of knots tied of this piece is damaged',
    });
    await alert.waitFor();
    await page.getByLabel('Base string of 10').fill('4');
    await page.getByRole('button', { name: 'Go there' }).click();
    await keptIs(page, 3);
    await alert.waitFor({ state: 'detached' });
    await spoil('projects');
    await page.reload();
    // The piece can't be opened, so the demo is; there is no error in the page.
    await inHand(page, 'Backward-forward knot on base string 1');
    expect(await page.locator('.tie-field .of').first().textContent()).toBe('of 24');
  });

  test('a newer version in another window is let in, and this one says that it no longer keeps', async ({
    openPage,
  }) => {
    const page = await openPage('#tie', STILL);
    await openTied(page, WIDE);
    await page.keyboard.press('Space');
    await keptIs(page, 1);
    const other = await page.context().newPage();
    await other.goto(new URL('burgee.svg', page.url()).href);
    await other.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const opening = indexedDB.open('halfhitch', 2);
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            opening.result.close();
            resolve();
          };
        }),
    );
    await page
      .getByText('A newer version of Halfhitch has been opened in another window')
      .waitFor();
    await page.keyboard.press('Space');
    await page.locator('.tie-notice', { hasText: 'counted, but not kept' }).waitFor();
    await page.reload();
    await page.getByText('kept by a later version of Halfhitch').waitFor();
    await page.getByText('Nothing is kept after this page is closed').waitFor();
  });
});
