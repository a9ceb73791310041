import { join } from 'node:path';
import { runNode } from './child-process.mjs';
import { ROOT } from './repository.mjs';
import { withLock } from './run-lock.mjs';

/** Type-checks all packages, then the tests and benches against them; whether all was well. */
export async function checkTypes() {
  const tsc = join(ROOT, 'node_modules', 'typescript', 'bin', 'tsc');
  // It writes what a build writes, so it must not run beside one.
  const { code } = await withLock(() =>
    runNode([tsc, '-b', 'tsconfig.json', 'tsconfig.test.json']),
  );
  return code === 0;
}
