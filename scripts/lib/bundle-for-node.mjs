import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { readJson } from './repository.mjs';
import { sourceAliases } from './source-aliases.mjs';

/**
 * Bundles one entry of a package into one Node program. What the package lists under
 * `dependencies` stays outside, to be installed beside it; all else is taken in.
 */
export async function bundleForNode({ folder, entry, outDir, name }) {
  const { build } = await import('vite');
  const { dependencies = {} } = readJson(join(folder, 'package.json'));
  await build({
    configFile: false,
    root: folder,
    logLevel: 'warn',
    resolve: { alias: sourceAliases },
    ssr: { target: 'node', noExternal: true, external: Object.keys(dependencies) },
    build: {
      ssr: entry,
      outDir,
      emptyOutDir: true,
      target: 'node20',
      minify: false,
      // What is taken in keeps its copyright notice.
      license: { fileName: 'third-party-licences.md' },
      rolldownOptions: {
        output: { entryFileNames: `${name}.js`, banner: '#!/usr/bin/env node' },
      },
    },
  });
  chmodSync(join(folder, outDir, `${name}.js`), 0o755);
}
