// The elements of the simulator, in a page of their own.
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { packageFolder } from '../lib/repository.mjs';
import { census, countGraphics, growth, line } from './census.mjs';
import {
  elementRound,
  elementsKept,
  failuresUnheard,
  prepareElements,
} from './simulator-rounds.mjs';

const PAGE =
  '<!doctype html><html lang="en"><head><link rel="icon" href="data:,"><title>Soak</title><script type="module" src="/halfhitch.js"></script></head><body><main></main></body></html>';

/** Elements that what is still on its way may hold for a while. */
const MOST_KEPT = 3;

/** @returns what is wrong, in words; empty when all is well */
export async function soakSimulator(browser, rounds, say) {
  const server = await serve();
  const context = await browser.newContext({ viewport: { width: 900, height: 700 } });
  await context.addInitScript('window.load = (from) => import(from);');
  await context.addInitScript(countGraphics);
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  const wrong = [];
  page.on('pageerror', (error) => wrong.push(`the page failed: ${error.message}`));
  try {
    await page.goto(`http://127.0.0.1:${server.address().port}/`);
    await page.evaluate(prepareElements);
    const session = await context.newCDPSession(page);
    await session.send('Performance.enable');
    const warmUp = Math.min(100, Math.ceil(rounds / 4));
    let warm = null;
    for (let round = 1; round <= warmUp + rounds; round++) {
      await page.evaluate(elementRound, round);
      if (round === warmUp) {
        warm = await census(session, page);
        say(line(0, warm));
      } else if (round > warmUp && (round - warmUp) % Math.max(1, Math.floor(rounds / 5)) === 0) {
        say(line(round - warmUp, await census(session, page)));
      }
    }
    const end = await census(session, page);
    wrong.push(...growth(warm, end));
    let kept = MOST_KEPT + 1;
    for (let tries = 0; tries < 20 && kept > MOST_KEPT; tries++) {
      await session.send('HeapProfiler.collectGarbage');
      await page.waitForTimeout(200);
      kept = await page.evaluate(elementsKept);
    }
    say(`${kept} of ${warmUp + rounds} elements are still held.`);
    if (kept > MOST_KEPT) wrong.push(`${kept} elements that were taken out are still held`);
    wrong.push(...(await page.evaluate(failuresUnheard)).map((reason) => `unheard: ${reason}`));
  } finally {
    await context.close();
    server.closeAllConnections();
    server.close();
  }
  return wrong;
}

async function serve() {
  const folder = join(packageFolder('simulator'), 'dist', 'bundle');
  const server = createServer(({ url = '/' }, response) => {
    const name = /^\/(halfhitch[\w-]*\.js)$/.exec(url)?.[1];
    if (url !== '/' && name === undefined) response.statusCode = 404;
    response.setHeader('content-type', name === undefined ? 'text/html' : 'text/javascript');
    response.end(name === undefined ? PAGE : readFileSync(join(folder, name)));
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  return server;
}
