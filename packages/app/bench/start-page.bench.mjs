// What Lighthouse says of the start page, at the speed of a phone as it simulates one, and what is
// fetched. Baseline: a page of the same build that only has the letterhead's words, measured in the
// same run, so that a busy or slow machine shows in both.
//
// Lighthouse takes the time that passes for time that the page works. On a machine that others work
// on as well that is not so; and WebGL is drawn in software here, on the same cores. So the blocking
// time is also told by the main thread's own clock, which stands still while others run, and the
// score is worked out anew from it with Lighthouse's own curve and weights. The page is measured as
// it is, and with 3D switched off (it then shows its flat drawings) and motion reduced.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import lighthouse from 'lighthouse';
import { getLogNormalScore } from 'lighthouse/shared/statistics.js';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { ensureBuilt } from '../../../scripts/lib/build-targets.mjs';
import { CHROMIUM_FLAGS, requireChromium } from '../../../scripts/lib/chromium.mjs';
import { packageFolder } from '../../../scripts/lib/repository.mjs';

const RUNS = 3;
/** A phone is taken to be so many times slower than this machine, as Lighthouse does. */
const SLOWER = 4;
/** What a task may take before it counts as blocking, ms (web.dev, Total Blocking Time). */
const UNNOTICED = 50;
const FLAT = ['--disable-3d-apis', '--force-prefers-reduced-motion'];

await ensureBuilt('app');
const app = packageFolder('app');
const copy = mkdtempSync(join(tmpdir(), 'halfhitch-bench-'));
cpSync(join(app, 'dist'), copy, { recursive: true });
writeFileSync(
  join(copy, 'bare.html'),
  readFileSync(join(copy, 'index.html'), 'utf8').replace(
    /<script[\s\S]*?<\/script>/g,
    '<h1>Halfhitch</h1><p>Check, cut, tie and keep.</p>',
  ),
);
const server = await preview({
  root: app,
  appType: 'mpa',
  logLevel: 'warn',
  build: { outDir: copy },
  preview: { host: '127.0.0.1', port: await freePort() },
});
const address = `http://127.0.0.1:${server.httpServer.address().port}/`;

for (const [name, path, flags] of [
  ['baseline: words alone', 'bare.html', FLAT],
  ['start page, flat and still', '', FLAT],
  ['start page, 3D in software', '', []],
]) {
  const runs = [];
  for (let run = 0; run < RUNS; run++) runs.push(await measure(address + path, flags));
  console.log(`${name}, phone, the middle of ${RUNS}:`);
  for (const figure of Object.keys(runs[0])) {
    const values = runs.map((one) => one[figure]).sort((one, other) => one - other);
    console.log(`  ${figure}: ${Math.round(values[Math.floor(RUNS / 2)] * 100) / 100}`);
  }
}
await server.close();
rmSync(copy, { recursive: true, force: true });

async function measure(page, flags) {
  const port = await freePort();
  const browser = await chromium.launch({
    executablePath: requireChromium(),
    args: [...CHROMIUM_FLAGS, ...flags, `--remote-debugging-port=${port}`],
  });
  try {
    const { lhr, artifacts } = await lighthouse(page, {
      port,
      logLevel: 'error',
      output: 'json',
      onlyCategories: ['performance', 'accessibility', 'best-practices'],
    });
    const blocking = blockingTime(artifacts.Trace.traceEvents, page);
    const number = (audit) => lhr.audits[audit]?.numericValue ?? Number.NaN;
    return {
      'performance, of 100': 100 * (lhr.categories.performance.score ?? 0),
      'performance by the thread’s own clock, of 100': 100 * scoreWith(lhr, blocking),
      'accessibility, of 100': 100 * (lhr.categories.accessibility.score ?? 0),
      'best practices, of 100': 100 * (lhr.categories['best-practices'].score ?? 0),
      'first contentful paint, ms': number('first-contentful-paint'),
      'largest contentful paint, ms': number('largest-contentful-paint'),
      'total blocking time, ms': number('total-blocking-time'),
      'by the thread’s own clock, ms': blocking,
      'layout shift': number('cumulative-layout-shift'),
      'fetched, KiB': number('total-byte-weight') / 1024,
    };
  } finally {
    await browser.close();
  }
}

/** Blocking time of the page's main thread by its own clock, ms. */
function blockingTime(events, page) {
  const start = events.findLast(
    ({ name, args }) =>
      name === 'navigationStart' && args.data?.documentLoaderURL?.startsWith(page.split('#')[0]),
  );
  return events
    .filter(
      ({ name, ph, pid, tid, ts }) =>
        name === 'RunTask' && ph === 'X' && pid === start.pid && tid === start.tid && ts > start.ts,
    )
    .reduce((sum, { tdur = 0 }) => sum + Math.max(0, (SLOWER * tdur) / 1000 - UNNOTICED), 0);
}

function scoreWith(lhr, blocking) {
  const parts = lhr.categories.performance.auditRefs.filter(({ weight }) => weight > 0);
  const weights = parts.reduce((sum, { weight }) => sum + weight, 0);
  const scored = parts.map(({ id, weight }) => {
    // The curve of Lighthouse's audit for phones.
    const score =
      id === 'total-blocking-time'
        ? getLogNormalScore({ p10: 200, median: 600 }, blocking)
        : lhr.audits[id].score;
    return weight * score;
  });
  return scored.reduce((sum, score) => sum + score, 0) / weights;
}

function freePort() {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}
