// Bundles the elements for pages that have no bundler of their own: one file for the script tag,
// and beside it those that it loads when an element is first seen; and all of it in a single file,
// which needs no web server either.
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
  await bundle(outDir, {
    lib: { formats: ['es'], fileName: () => 'halfhitch.js' },
    license: { fileName: 'third-party-licences.md' },
    rolldownOptions: {
      // What lazy files share with the first stays in the first.
      preserveEntrySignatures: 'allow-extension',
      output: { minify: true, chunkFileNames: nameOf },
    },
  });
  // A script and no module, since browsers load no modules for pages that are opened from the disk.
  await bundle(outDir, {
    lib: { formats: ['iife'], name: 'Halfhitch', fileName: () => 'halfhitch-all.js' },
    rolldownOptions: { output: { minify: true, codeSplitting: false } },
  });
}

async function bundle(outDir, { lib, ...options }) {
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
      lib: { entry: join(FOLDER, 'src', 'index.ts'), ...lib },
      ...options,
    },
  });
}
