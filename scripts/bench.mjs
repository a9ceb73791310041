// npm run bench [-- [--keep] WORD ...]: runs packages/*/bench/*.bench.mjs whose path contains a
// word, and puts their ratios into a table beside those kept before. `--keep` keeps the new ones.
import './lib/require-node.mjs';
import { mkdirSync, rmSync } from 'node:fs';
import { basename, join, relative, sep } from 'node:path';
import { benchTable, keepRatios, readRatios } from './lib/bench-table.mjs';
import { ensureBuilt } from './lib/build-targets.mjs';
import { runNode } from './lib/child-process.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { Refusal, runMain, say } from './lib/messages.mjs';
import { CACHE, filesBelow, PACKAGES, packageFolder, ROOT } from './lib/repository.mjs';

await runMain(async (args) => {
  const words = args.filter((word) => word !== '--keep');
  const benches = PACKAGES.flatMap((name) => filesBelow(join(packageFolder(name), 'bench')))
    .filter((file) => file.endsWith('.bench.mjs'))
    .filter(
      (file) => words.length === 0 || words.some((word) => relative(ROOT, file).includes(word)),
    );
  if (benches.length === 0) throw new Refusal('There is no such bench.');
  await ensureInstalled();
  // Benches import the built packages: what users run, without a test runner around it.
  await ensureBuilt('libraries');
  mkdirSync(CACHE, { recursive: true });
  const noted = join(CACHE, 'bench-ratios.jsonl');
  const ratios = [];
  let failed = 0;
  for (const file of benches) {
    say(`\n${relative(ROOT, file)}`);
    rmSync(noted, { force: true });
    const { code } = await runNode(['--expose-gc', file], {
      output: 'inherit',
      env: { HALFHITCH_BENCH_RATIOS: noted },
    });
    if (code !== 0) failed += 1;
    else ratios.push(...readRatios(noted, nameOf(file)));
  }
  if (ratios.length > 0) {
    const { text, drifted } = benchTable(ratios);
    console.log(`\n${text}`);
    if (drifted > 0) say(`\n${drifted} of ${ratios.length} ratios have drifted.`);
    if (args.includes('--keep')) keepRatios(ratios);
  }
  if (failed > 0) throw new Refusal(`${failed} of ${benches.length} benches failed.`);
});

/** "core/solve": the package and the file of a bench. */
function nameOf(file) {
  const [, name] = relative(ROOT, file).split(sep);
  return `${name}/${basename(file, '.bench.mjs')}`;
}
