import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { runNode } from './child-process.mjs';
import { CACHE, ROOT, readJson } from './repository.mjs';

const RESULTS = join(CACHE, 'test-results.json');

/** Runs the named Vitest projects; gives the exit code and the totals of what really ran. */
export async function runVitest(projects, args = []) {
  rmSync(RESULTS, { force: true });
  const vitest = join(ROOT, 'node_modules', 'vitest', 'vitest.mjs');
  const { code } = await runNode(
    [
      vitest,
      'run',
      ...projects.map((name) => `--project=${name}`),
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${RESULTS}`,
      ...args,
    ],
    { output: 'inherit' },
  );
  return { code, ...readTotals(existsSync(RESULTS) ? readJson(RESULTS) : {}) };
}

/** The totals in what Vitest's JSON reporter wrote. A file that fails to load counts as failed. */
export function readTotals(results) {
  const { numPassedTests = 0, numFailedTests = 0, numPendingTests = 0, testResults = [] } = results;
  const broken = testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
  ).length;
  return { passed: numPassedTests, failed: numFailedTests + broken, skipped: numPendingTests };
}
