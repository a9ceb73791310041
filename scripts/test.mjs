// npm test [-- PART ...] [-- words for Vitest]: all checks and tests, or the named parts of them.
import './lib/require-node.mjs';
import { checkApi } from './lib/api-reports.mjs';
import { runBiome } from './lib/biome.mjs';
import { ensureBuilt } from './lib/build-targets.mjs';
import { ensureChromium } from './lib/chromium.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { checkLicences } from './lib/licences.mjs';
import { checkLockfile } from './lib/lockfile.mjs';
import { Refusal, runMain, say } from './lib/messages.mjs';
import { checkPacked, packPackages } from './lib/packages.mjs';
import { ROOT } from './lib/repository.mjs';
import { runVitest } from './lib/run-vitest.mjs';
import { readTestParts } from './lib/test-parts.mjs';
import { checkTypes } from './lib/type-check.mjs';

/** The checks that are not tests, each throwing or giving what is wrong, by name. */
const CHECKS = {
  'lock file': () => checkLockfile(),
  lint: async () => ((await runBiome()) ? '' : 'see above; `npm run format` mends what it can'),
  imports: async () => {
    const { checkBoundaries } = await import('./imports/check-boundaries.mjs');
    return checkBoundaries(ROOT).join('\n');
  },
  types: async () => ((await checkTypes()) ? '' : 'see above'),
  packages: async () => (await checkPacked(await packPackages())).join('\n'),
  exports: async () => {
    await ensureBuilt('libraries');
    return (await checkApi()).join('\n');
  },
  licences: () => checkLicences(),
};

/** Does all checks, even after one fails, so that a run tells everything; the names that failed. */
async function runChecks() {
  const failed = [];
  for (const [name, check] of Object.entries(CHECKS)) {
    say(`Check: ${name}`);
    const fault = await Promise.resolve()
      .then(check)
      .catch((error) => (error instanceof Refusal ? error.message : error.stack));
    if (!fault) continue;
    failed.push(name);
    say(`Check failed: ${name}: ${fault}`);
  }
  return failed;
}

await runMain(async (args) => {
  const { checks, projects, rest } = readTestParts(args);
  await ensureInstalled();
  const failedChecks = checks ? await runChecks() : [];
  let totals = { code: 0, passed: 0, failed: 0, skipped: 0 };
  if (projects.length > 0) {
    if (projects.includes('browser')) {
      await ensureChromium();
      await ensureBuilt('app');
    }
    if (projects.includes('unit')) await ensureBuilt('cli');
    totals = await runVitest(projects, rest);
    const skipped = totals.skipped > 0 ? `, ${totals.skipped} skipped` : '';
    console.log(`${totals.passed} passed, ${totals.failed} failed${skipped}`);
    if (totals.passed + totals.failed === 0) throw new Refusal('No test was run.');
  }
  if (failedChecks.length > 0) throw new Refusal(`Checks failed: ${failedChecks.join(', ')}.`);
  if (totals.code !== 0 || totals.failed > 0) throw new Refusal('Tests failed.');
});
