// Builds one target, whether stale or not. Run by ensureBuilt() in a process of its own, so that
// nothing a bundler prints or sets can reach the command that needs the target.
import { join } from 'node:path';
import { bundleForNode } from './lib/bundle-for-node.mjs';
import { runNode } from './lib/child-process.mjs';
import { Refusal, runMain } from './lib/messages.mjs';
import { LIBRARIES, packageFolder, ROOT } from './lib/repository.mjs';
import { sourceAliases } from './lib/source-aliases.mjs';

const BUILDERS = {
  async libraries() {
    const tsc = join(ROOT, 'node_modules', 'typescript', 'bin', 'tsc');
    const { code } = await runNode([tsc, '-b', ...LIBRARIES.map((name) => packageFolder(name))]);
    if (code !== 0) throw new Refusal('Type-checking found errors.');
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
      build: { outDir: 'dist', emptyOutDir: true },
    });
  },
};

await runMain(([name]) => BUILDERS[name]());
