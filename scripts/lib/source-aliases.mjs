import { join } from 'node:path';
import { LIBRARIES, packageFolder } from './repository.mjs';

/**
 * Vite aliases that lead the workspace's own packages to their sources, so that tests and bundles
 * need no other build first and cannot use one that is out of date.
 */
export const sourceAliases = LIBRARIES.map((name) => ({
  find: new RegExp(`^@halfhitch/${name}$`),
  replacement: join(packageFolder(name), 'src', 'index.ts'),
}));
