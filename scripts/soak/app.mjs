// The workbench, as it is built.
import { serveApp } from '../lib/app-server.mjs';
import { drawAndUndo, goTo, openChart, settle, VIEWS } from './app-rounds.mjs';
import { census, countGraphics, growth, line } from './census.mjs';

/** Rounds of drawing for one change of the view. */
const ROUNDS_A_VIEW = 5;

/** @returns what is wrong, in words; empty when all is well */
export async function soakApp(browser, rounds, say) {
  const served = await serveApp();
  const context = await browser.newContext({
    viewport: { width: 1000, height: 760 },
    serviceWorkers: 'block',
    reducedMotion: 'reduce',
  });
  await context.addInitScript(countGraphics);
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  const wrong = [];
  page.on('pageerror', (error) => wrong.push(`the page failed: ${error.message}`));
  try {
    await page.goto(`${served.address}#draw`);
    await page.locator('.sheet-cell').waitFor();
    await page.evaluate(openChart);
    const session = await context.newCDPSession(page);
    await session.send('Performance.enable');
    // Always taken in the same view, with nothing on its way.
    const take = async () => {
      await page.evaluate(goTo, 'draw');
      await page.evaluate(settle);
      return census(session, page);
    };
    // Every view has been open twice and more before anything is compared: the browser goes on making
    // machine code of what is often run for a while, which counts as heap.
    const warmUp = Math.max(2 * VIEWS.length * ROUNDS_A_VIEW, Math.ceil(rounds / 5));
    let warm = null;
    for (let round = 1; round <= warmUp + rounds; round++) {
      await page.evaluate(drawAndUndo, round);
      if (round % ROUNDS_A_VIEW === 0) {
        await page.evaluate(goTo, VIEWS[(round / ROUNDS_A_VIEW) % VIEWS.length]);
      }
      if (round === warmUp) {
        warm = await take();
        say(line(0, warm));
      } else if (round > warmUp && (round - warmUp) % Math.max(1, Math.floor(rounds / 5)) === 0) {
        say(line(round - warmUp, await take()));
      }
    }
    wrong.push(...growth(warm, await take()));
    const { undoing } = await page.evaluate(() => {
      const { undoing } = document.querySelector('halfhitch-workbench').session;
      return { undoing };
    });
    if (undoing !== null) wrong.push(`"${undoing}" can still be taken back`);
  } finally {
    await context.close();
    await served.close();
  }
  return wrong;
}
