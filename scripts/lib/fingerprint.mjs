import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, relative } from 'node:path';
import { filesBelow, ROOT } from './repository.mjs';

/** One text that changes whenever a file below `paths` is added, removed, or written to. */
export function fingerprint(paths, root = ROOT) {
  const hash = createHash('sha256');
  for (const path of paths) {
    const status = statSync(path, { throwIfNoEntry: false });
    for (const file of status?.isDirectory() ? filesBelow(path) : [path]) {
      const seen = statSync(file, { throwIfNoEntry: false });
      hash.update(`${relative(root, file)}\0${seen?.mtimeMs}\0${seen?.size}\n`);
    }
  }
  return hash.digest('hex');
}

/** Whether a stamp was written for this very fingerprint, and all outputs are still there. */
export function isFresh(stampFile, print, outputs = []) {
  if (!existsSync(stampFile)) return false;
  return readFileSync(stampFile, 'utf8') === print && outputs.every((file) => existsSync(file));
}

export function writeStamp(stampFile, print) {
  mkdirSync(dirname(stampFile), { recursive: true });
  writeFileSync(stampFile, print);
}
