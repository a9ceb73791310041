// npm test [-- PART ...] [-- words for Vitest]: all checks and tests, or the named parts of them.
import './lib/require-node.mjs';
import { checkApi } from './lib/api-reports.mjs';
import { runBiome } from './lib/biome.mjs';
import { ensureBuilt } from './lib/build-targets.mjs';
import { ensureChromium } from './lib/chromium.mjs';
import { checkDependencies } from './lib/dependencies.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { checkLicences } from './lib/licences.mjs';
import { checkLockfile } from './lib/lockfile.mjs';
import { Refusal, runMain, say } from './lib/messages.mjs';
import { checkPacked, packPackages } from './lib/packages.mjs';
import { ROOT } from './lib/repository.mjs';
import { runVitest } from './lib/run-vitest.mjs';
import { readTestParts } from './lib/test-parts.mjs';
import { checkTypes } from './lib/type-check.mjs';

/**
 * The checks that are not tests, each throwing or giving what is wrong, by name. Those of one list are
 * done one after the other, the lists side by side: most of it waits for a single core.
 */
const CHECKS = [
  {
    'lock file': () => checkLockfile(),
    dependencies: () => checkDependencies().join('\n'),
    lint: async () => ((await runBiome()) ? '' : 'see above; `npm run format` mends what it can'),
    imports: async () => {
      const { checkBoundaries } = await import('./imports/check-boundaries.mjs');
      return checkBoundaries(ROOT).join('\n');
    },
    types: async () => ((await checkTypes()) ? '' : 'see above'),
    licences: () => checkLicences(),
  },
  {
    packages: async () => (await checkPacked(await packPackages())).join('\n'),
    exports: async () => {
      await ensureBuilt('libraries');
      return (await checkApi()).join('\n');
    },
  },
];

/** Does all checks, even after one fails, so that a run tells everything; the names that failed. */
async function runChecks() {
  const failed = [];
  const inTurn = async (checks) => {
    for (const [name, check] of Object.entries(checks)) {
      say(`Check: ${name}`);
      const fault = await Promise.resolve()
        .then(check)
        .catch((error) => (error instanceof Refusal ? error.message : error.stack));
      if (!fault) continue;
      failed.push(name);
      say(`Check failed: ${name}: ${fault}`);
    }
  };
  await Promise.all(CHECKS.map(inTurn));
  return failed;
}

await runMain(async (args) => {
  const { checks, projects, rest } = readTestParts(args);
  await ensureInstalled();
  const failedChecks = [];
  // A browser that has to be fetched first comes while the checks are done; what keeps it from coming
  // is told after them.
  const [browser] = await Promise.all([
    Promise.allSettled(projects.includes('browser') ? [ensureChromium()] : []),
    checks ? runChecks().then((failed) => failedChecks.push(...failed)) : undefined,
  ]);
  for (const { reason } of browser) if (reason) throw reason;
  let totals = { code: 0, passed: 0, failed: 0, skipped: 0 };
  if (projects.length > 0) {
    if (projects.includes('browser')) await ensureBuilt('app');
    if (projects.includes('unit')) await ensureBuilt('cli');
    totals = await runVitest(projects, rest);
    const skipped = totals.skipped > 0 ? `, ${totals.skipped} skipped` : '';
    console.log(`${totals.passed} passed, ${totals.failed} failed${skipped}`);
    if (totals.passed + totals.failed === 0) throw new Refusal('No test was run.');
  }
  if (failedChecks.length > 0) throw new Refusal(`Checks failed: ${failedChecks.join(', ')}.`);
  if (totals.code !== 0 || totals.failed > 0) throw new Refusal('Tests failed.');
});
