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

/** Ways in which types are looked up that a package of ES modules serves. */
const RESOLUTIONS = ['node16-esm', 'bundler'];

/** What publint and Are The Types Wrong find wrong with packed packages, one line of text each. */
export async function checkPacked(files) {
  return [...(await publintFindings(files)), ...(await typesFindings(files))];
}

async function typesFindings(files) {
  const { checkPackage, createPackageFromTarballData } = await import('@arethetypeswrong/core');
  const found = [];
  for (const file of files) {
    const packed = createPackageFromTarballData(new Uint8Array(readFileSync(file)));
    const result = await checkPackage(packed);
    // The command line tool is no library and has no types.
    if (result.types === false) continue;
    for (const problem of result.problems) {
      const { kind, resolutionKind, entrypoint = '' } = problem;
      if (resolutionKind !== undefined && !RESOLUTIONS.includes(resolutionKind)) continue;
      found.push(`${result.packageName}${entrypoint.slice(1)}: types: ${kind}`);
    }
  }
  return found;
}

async function publintFindings(files) {
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
