import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Refusal } from './messages.mjs';
import { ROOT } from './repository.mjs';

/**
 * Lines of a lock file that name an address. The lock holds names, versions and hashes only, so
 * that it installs from whichever registry a machine is set up for.
 */
export function addressesIn(lockfile) {
  return lockfile
    .split('\n')
    .map((text, index) => ({ line: index + 1, text: text.trim() }))
    .filter(({ text }) => /\btarball:|https?:\/\/|\bgit\+|\bcodeload\./.test(text))
    .map(({ line, text }) => `pnpm-lock.yaml:${line}: ${text}`);
}

export function checkLockfile() {
  const found = addressesIn(readFileSync(join(ROOT, 'pnpm-lock.yaml'), 'utf8'));
  if (found.length > 0) {
    throw new Refusal(
      [...found, 'The lock file must not name addresses: install again without them.'].join('\n'),
    );
  }
}
