// Builds one target, whether stale or not. Run by ensureBuilt() in a process of its own, so that
// nothing a bundler prints or sets can reach the command that needs the target.
import { existsSync, rmSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { bundleForNode } from './lib/bundle-for-node.mjs';
import { runNode } from './lib/child-process.mjs';
import { Refusal, runMain } from './lib/messages.mjs';
import { filesBelow, LIBRARIES, packageFolder, ROOT } from './lib/repository.mjs';
import { sourceAliases } from './lib/source-aliases.mjs';

/**
 * `tsc` leaves the outputs of sources that are gone; they would be published. What lies in
 * dist/bundle is not made by `tsc`: that is the place for single-file bundles.
 */
function removeOrphans(folder) {
  const dist = join(folder, 'dist');
  for (const file of filesBelow(dist)) {
    const stem = /^(.*?)(\.d\.ts|\.js)(\.map)?$/.exec(relative(dist, file))?.[1];
    if (stem === undefined || stem.startsWith(`bundle${sep}`)) continue;
    const source = join(folder, 'src', stem);
    if (!existsSync(`${source}.ts`) && !existsSync(`${source}.tsx`)) rmSync(file);
  }
}

const BUILDERS = {
  async libraries() {
    const tsc = join(ROOT, 'node_modules', 'typescript', 'bin', 'tsc');
    const { code } = await runNode([tsc, '-b', ...LIBRARIES.map((name) => packageFolder(name))]);
    if (code !== 0) throw new Refusal('Type-checking found errors.');
    for (const name of LIBRARIES) removeOrphans(packageFolder(name));
  },

  async elements() {
    const { bundleSimulator } = await import('../packages/simulator/build/bundle.mjs');
    const { writeManifest } = await import('../packages/simulator/build/manifest.mjs');
    await bundleSimulator();
    writeManifest();
  },

  cli: () =>
    bundleForNode({
      folder: packageFolder('cli'),
      entry: 'src/main.ts',
      outDir: 'dist',
      name: 'halfhitch',
    }),

  async app() {
    const { build } = await import('vite');
    await build({
      root: packageFolder('app'),
      logLevel: 'warn',
      resolve: { alias: sourceAliases },
      build: {
        outDir: 'dist',
        emptyOutDir: true,
        license: { fileName: 'third-party-licences.md' },
      },
    });
  },
};

await runMain(([name]) => BUILDERS[name]());
