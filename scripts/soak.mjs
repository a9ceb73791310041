// npm run soak [-- [--rounds N] [simulator] [app]]: works the elements of the simulator and the
// workbench for a long time in Chromium, and fails when what the page holds goes on growing.
import './lib/require-node.mjs';
import { ensureBuilt } from './lib/build-targets.mjs';
import { CHROMIUM_FLAGS, ensureChromium, requireChromium } from './lib/chromium.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain, say } from './lib/messages.mjs';

/** Rounds of each when none are asked for; see docs/quality.md for how long that takes. */
const ROUNDS = 1_000;
const PARTS = ['simulator', 'app'];

await runMain(async (args) => {
  const { rounds, parts } = readOptions(args);
  await ensureInstalled();
  await ensureChromium();
  const { chromium } = await import('playwright-core');
  const browser = await chromium.launch({
    executablePath: requireChromium(),
    args: [...CHROMIUM_FLAGS, '--enable-precise-memory-info'],
  });
  const failed = [];
  try {
    for (const part of parts) {
      say(`\n${part}: ${rounds} rounds`);
      const began = Date.now();
      const wrong = await soak(part, browser, rounds);
      say(`${part}: ${Math.round((Date.now() - began) / 1000)} s`);
      for (const what of wrong) say(`  ${what}`);
      if (wrong.length > 0) failed.push(part);
    }
  } finally {
    await browser.close();
  }
  if (failed.length > 0) throw new Refusal(`It does not hold: ${failed.join(' and ')}.`);
  say('\nNothing grows.');
});

async function soak(part, browser, rounds) {
  if (part === 'simulator') {
    await ensureBuilt('elements');
    const { soakSimulator } = await import('./soak/simulator.mjs');
    return soakSimulator(browser, rounds, say);
  }
  await ensureBuilt('app');
  const { soakApp } = await import('./soak/app.mjs');
  return soakApp(browser, rounds, say);
}

function readOptions(args) {
  const parts = [];
  let rounds = ROUNDS;
  const rest = [...args];
  while (rest.length > 0) {
    const word = rest.shift();
    if (word === '--rounds') {
      rounds = Number(rest.shift());
      if (!Number.isInteger(rounds) || rounds < 10) {
        throw new Refusal('--rounds wants a whole number of at least 10.', 2);
      }
    } else if (PARTS.includes(word)) parts.push(word);
    else {
      throw new Refusal(
        `Unknown word "${word}". Usage: npm run soak -- [--rounds N] [simulator] [app]`,
        2,
      );
    }
  }
  return { rounds, parts: parts.length > 0 ? parts : PARTS };
}
