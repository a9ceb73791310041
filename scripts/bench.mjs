// npm run bench [-- WORD ...]: runs packages/*/bench/*.bench.mjs whose path contains a word.
import './lib/require-node.mjs';
import { join, relative } from 'node:path';
import { ensureBuilt } from './lib/build-targets.mjs';
import { runNode } from './lib/child-process.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain, say } from './lib/messages.mjs';
import { filesBelow, PACKAGES, packageFolder, ROOT } from './lib/repository.mjs';

await runMain(async (words) => {
  const benches = PACKAGES.flatMap((name) => filesBelow(join(packageFolder(name), 'bench')))
    .filter((file) => file.endsWith('.bench.mjs'))
    .filter((file) => words.length === 0 || words.some((word) => file.includes(word)));
  if (benches.length === 0) throw new Refusal('There is no such bench.');
  await ensureInstalled();
  // Benches import the built packages: what users run, without a test runner around it.
  await ensureBuilt('libraries');
  let failed = 0;
  for (const file of benches) {
    say(`\n${relative(ROOT, file)}`);
    const { code } = await runNode(['--expose-gc', file], { output: 'inherit' });
    if (code !== 0) failed += 1;
  }
  if (failed > 0) throw new Refusal(`${failed} of ${benches.length} benches failed.`);
});
