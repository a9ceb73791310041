import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { runPnpm } from './pnpm.mjs';
import { CACHE, LIBRARIES } from './repository.mjs';

/** Packs everything that is published, as it would be published; the files made. */
export async function packPackages(destination = join(CACHE, 'packed')) {
  rmSync(destination, { recursive: true, force: true });
  mkdirSync(destination, { recursive: true });
  const filters = [...LIBRARIES.map((name) => `@halfhitch/${name}`), 'halfhitch'];
  await runPnpm(
    [...filters.map((name) => `--filter=${name}`), 'pack', '--pack-destination', destination],
    { output: 'on failure' },
  );
  return readdirSync(destination).map((file) => join(destination, file));
}

/** What publint finds wrong with packed packages, one line of text each. */
export async function checkPacked(files) {
  const { publint } = await import('publint');
  const { formatMessage } = await import('publint/utils');
  const found = [];
  for (const file of files) {
    const bytes = readFileSync(file);
    const tarball = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
    const { messages, pkg } = await publint({ pack: { tarball }, strict: true });
    for (const message of messages) {
      found.push(`${pkg.name}: ${message.type}: ${formatMessage(message, pkg, { color: false })}`);
    }
  }
  return found;
}
