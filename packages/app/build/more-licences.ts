import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';

/** What the service worker is made of, which is bundled apart from everything else. */
const SERVICE_WORKER = ['workbox-core', 'workbox-precaching', 'workbox-routing'];

/**
 * Adds the libraries that only workers use to the page of licences, which Vite writes for the
 * page's own scripts.
 */
export function moreLicences(): { readonly page: Plugin; readonly worker: () => Plugin } {
  const folders = new Set<string>();
  return {
    worker: () => ({
      name: 'halfhitch-worker-licences',
      generateBundle(_options, bundle) {
        for (const part of Object.values(bundle)) {
          if (part.type !== 'chunk') continue;
          for (const id of part.moduleIds)
            if (id.includes('/node_modules/')) folders.add(folderOf(id));
        }
      },
    }),
    page: {
      name: 'halfhitch-licences',
      apply: 'build',
      writeBundle({ dir }, bundle) {
        const name = Object.keys(bundle).find((file) => file.endsWith('licences.md'));
        if (dir === undefined || name === undefined) return;
        const file = join(dir, name);
        let text = readFileSync(file, 'utf8').trimEnd();
        for (const folder of [...folders, ...serviceWorker()].sort()) {
          const entry = entryOf(folder);
          if (!text.includes(entry.title)) text += `\n\n${entry.title}\n\n${entry.text}`;
        }
        writeFileSync(file, `${text}\n`);
      },
    },
  };
}

/** The folder of the package that a module belongs to. */
function folderOf(id: string): string {
  let folder = dirname(id.replace(/^\0/, '').split('?')[0] as string);
  // Folders inside a package may have a package.json that only says how modules are written.
  while (!nameIn(folder) && dirname(folder) !== folder) folder = dirname(folder);
  return folder;
}

function nameIn(folder: string): boolean {
  const file = join(folder, 'package.json');
  if (!existsSync(file)) return false;
  const { name, version } = JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
  return typeof name === 'string' && typeof version === 'string';
}

function serviceWorker(): string[] {
  const here = createRequire(import.meta.url);
  const builder = createRequire(here.resolve('workbox-build'));
  return SERVICE_WORKER.map((name) => folderOf(builder.resolve(`${name}/package.json`)));
}

function entryOf(folder: string): { readonly title: string; readonly text: string } {
  const { name, version, license } = JSON.parse(
    readFileSync(join(folder, 'package.json'), 'utf8'),
  ) as { name: string; version: string; license: string };
  const file = readdirSync(folder).find((one) => /^(licen[cs]e|copying)/i.test(one));
  const text = file === undefined ? '' : readFileSync(join(folder, file), 'utf8').trim();
  return { title: `## ${name} - ${version} (${license})`, text };
}
