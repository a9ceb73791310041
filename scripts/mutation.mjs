// npm run mutation [-- [--keep] [--again] WORD ...]: changes the planners and the verifiers of core in
// thousands of small ways, and says which of the changes no test notices. Words narrow it to files
// whose path has one of them. `--again` takes over what an earlier run found of mutants and tests that
// are still the same; `--keep` keeps the scores, for later runs to be compared with.
import './lib/require-node.mjs';
import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { runNode } from './lib/child-process.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain, say } from './lib/messages.mjs';
import {
  asPaths,
  compareScores,
  keepScores,
  MOST_FALL,
  mutatedFiles,
  scoresOf,
} from './lib/mutation-score.mjs';
import { CACHE, ROOT, readJson } from './lib/repository.mjs';

const OPTIONS = ['--keep', '--again'];
const REPORT = join(CACHE, 'mutation', 'report.json');

await runMain(async (args) => {
  const words = args.filter((word) => !word.startsWith('-'));
  const unknown = args.find((word) => word.startsWith('-') && !OPTIONS.includes(word));
  if (unknown !== undefined) {
    throw new Refusal(
      `Unknown option "${unknown}". Usage: npm run mutation -- [--keep] [--again] [WORD ...]`,
      2,
    );
  }
  const files = mutatedFiles(words);
  if (files.length === 0) throw new Refusal('No file that is mutated has such a path.');
  await ensureInstalled();
  mkdirSync(join(CACHE, 'mutation'), { recursive: true });
  rmSync(REPORT, { force: true });
  const { code } = await runNode(
    [
      join(ROOT, 'node_modules', '@stryker-mutator', 'core', 'bin', 'stryker.js'),
      'run',
      join('testing', 'mutation', 'stryker.config.json'),
      ...(args.includes('--again') ? ['--incremental'] : []),
      '--mutate',
      asPaths(files).join(','),
    ],
    { output: 'inherit' },
  );
  if (code !== 0 || !existsSync(REPORT)) throw new Refusal('The mutants could not be tried.');
  const scores = scoresOf(readJson(REPORT), files);
  for (const [file, { survivors }] of Object.entries(scores)) {
    if (survivors.length === 0) continue;
    console.log(`\n${file}: no test fails with`);
    for (const { text } of survivors) console.log(`  ${text}`);
  }
  const { text, fallen } = compareScores(scores);
  console.log(`\n${text}`);
  if (args.includes('--keep')) keepScores(scores, new Date().toISOString().slice(0, 10));
  else if (fallen.length > 0) {
    throw new Refusal(
      `\n${fallen.join(', ')}: fallen by more than ${MOST_FALL} point of a hundred. ` +
        'Write a test that fails with one of the mutants listed above.',
    );
  }
  if (args.includes('--keep')) say('\nKept in testing/mutation-score.json and docs/quality.md.');
});
