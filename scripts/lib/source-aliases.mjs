import { join } from 'node:path';
import { LIBRARIES, packageFolder, readJson } from './repository.mjs';

/**
 * Vite aliases that lead the workspace's own packages to their sources, so that tests and bundles
 * need no other build first and cannot use one that is out of date. One for each entry point that
 * a package's `exports` has in `dist`; what lies in `dist/bundle` has no one source.
 */
export const sourceAliases = LIBRARIES.flatMap((name) => {
  const { exports } = readJson(join(packageFolder(name), 'package.json'));
  return Object.entries(exports).flatMap(([entry, target]) => {
    const stem = /^\.\/dist\/(?!bundle\/)(.+)\.js$/.exec(target.default ?? target)?.[1];
    if (stem === undefined) return [];
    return [
      {
        find: new RegExp(`^@halfhitch/${name}${entry.slice(1)}$`),
        replacement: join(packageFolder(name), 'src', `${stem}.ts`),
      },
    ];
  });
});
