import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds the whole repository. */
export const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** Everything the scripts remember between runs; safe to delete. */
export const CACHE = join(ROOT, '.cache');

/** The packages of the workspace, lowest first: each may only use those before it. */
export const PACKAGES = ['core', 'geometry', 'simulator', 'app', 'cli'];

/** Packages that are published as they are, built by `tsc`. */
export const LIBRARIES = ['core', 'geometry', 'simulator'];

export function packageFolder(name, root = ROOT) {
  return join(root, 'packages', name);
}

export function readJson(file) {
  return JSON.parse(readFileSync(file, 'utf8'));
}

/** Every file below a folder, in a steady order; none when there is no such folder. */
export function filesBelow(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.name !== 'node_modules')
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = join(folder, entry.name);
      return entry.isDirectory() ? filesBelow(path) : [path];
    });
}
