import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { readJson } from '../../scripts/lib/repository.mjs';

type Target = string | { readonly [condition: string]: Target };

/** Conditions that hold in a page without a bundler. */
const CONDITIONS = ['browser', 'import', 'default'];

function fileFor(target: Target | undefined): string | undefined {
  if (target === undefined || typeof target === 'string') return target;
  for (const [condition, inner] of Object.entries(target)) {
    const file = CONDITIONS.includes(condition) ? fileFor(inner) : undefined;
    if (file !== undefined) return file;
  }
  return undefined;
}

/**
 * A browser import map for packages that lie in a folder's `node_modules`, from their exports maps:
 * what a page needs to take them as they are, without a bundler.
 */
export function importMapOf(folder: string, names: readonly string[]): string {
  const imports: Record<string, string> = {};
  for (const name of names) {
    const manifest = join(folder, 'node_modules', name, 'package.json');
    if (!existsSync(manifest)) throw new Error(`${name} is not installed.`);
    const { exports = {} } = readJson(manifest) as { exports?: Readonly<Record<string, Target>> };
    for (const [path, target] of Object.entries(exports)) {
      const file = fileFor(target);
      if (file === undefined || path.includes('*')) continue;
      imports[`${name}${path.slice(1)}`] = `/node_modules/${name}/${file.replace('./', '')}`;
    }
  }
  return JSON.stringify({ imports }, null, 2);
}
