// Bundles the elements for pages that have no bundler of their own: one file for the script tag,
// and beside it those that it loads when an element is first seen.
import { rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { sourceAliases } from '../../../scripts/lib/source-aliases.mjs';

const FOLDER = dirname(dirname(fileURLToPath(import.meta.url)));

/** Without a hash: whoever copies the files by hand keeps their names. */
function nameOf({ moduleIds }) {
  const holds = (part) => moduleIds.some((id) => id.includes(part));
  if (holds('three.core')) return 'halfhitch-3d.js';
  if (holds('/equal.data')) return 'halfhitch-threads.js';
  return 'halfhitch-[name].js';
}

export async function bundleSimulator() {
  const outDir = join(FOLDER, 'dist', 'bundle');
  rmSync(outDir, { recursive: true, force: true });
  await build({
    root: FOLDER,
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    resolve: { alias: sourceAliases },
    build: {
      target: 'es2022',
      outDir,
      emptyOutDir: false,
      modulePreload: { polyfill: false },
      minify: true,
      license: { fileName: 'third-party-licences.md' },
      lib: {
        entry: join(FOLDER, 'src', 'index.ts'),
        formats: ['es'],
        fileName: () => 'halfhitch.js',
      },
      rolldownOptions: {
        // What lazy files share with the first stays in the first.
        preserveEntrySignatures: 'allow-extension',
        output: {
          minify: true,
          chunkFileNames: nameOf,
        },
      },
    },
  });
}
