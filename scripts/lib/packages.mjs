import { mkdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { ensureBuilt } from './build-targets.mjs';
import { fingerprint, isFresh, writeStamp } from './fingerprint.mjs';
import { contentFindings } from './package-contents.mjs';
import { keepSizes, keptSizes, sizeFindings, sizesNow } from './package-sizes.mjs';
import { runPnpm } from './pnpm.mjs';
import { CACHE, LIBRARIES, packageFolder, ROOT, readJson } from './repository.mjs';

/** Folders below `packages` of what is published. */
const PUBLISHED = [...LIBRARIES, 'cli'];

/**
 * Builds and packs everything that is published, as it would be published; the tarballs. They are
 * made anew only when something that goes into them has changed.
 */
export async function packPackages() {
  await ensureBuilt('libraries', 'elements', 'cli');
  const destination = join(CACHE, 'packed');
  const stamp = join(CACHE, 'built', 'packed');
  const print = fingerprint(
    PUBLISHED.flatMap((name) => {
      const folder = packageFolder(name);
      const { files } = readJson(join(folder, 'package.json'));
      const included = files.filter((file) => !file.startsWith('!'));
      return ['package.json', ...included].map((file) => join(folder, file));
    }),
  );
  const tarballs = PUBLISHED.map((name) => {
    const packed = readJson(join(packageFolder(name), 'package.json'));
    const file = `${packed.name.replace('@', '').replace('/', '-')}-${packed.version}.tgz`;
    return join(destination, file);
  });
  if (isFresh(stamp, print, tarballs)) return tarballs;
  rmSync(destination, { recursive: true, force: true });
  mkdirSync(destination, { recursive: true });
  const filters = PUBLISHED.map(
    (name) => `--filter=${readJson(join(packageFolder(name), 'package.json')).name}`,
  );
  await runPnpm([...filters, 'pack', '--pack-destination', destination], { output: 'on failure' });
  writeStamp(stamp, print);
  return tarballs;
}

/** Ways in which types are looked up that a package of ES modules serves. */
const RESOLUTIONS = ['node16-esm', 'bundler'];

/**
 * What is wrong with packed packages, one line of text each: what publint and Are The Types Wrong
 * find, files that have no business in them, and sizes that differ from those kept, unless these
 * are to be written anew.
 */
export async function checkPacked(tarballs, { writeSizes = false } = {}) {
  const packages = await Promise.all(tarballs.map(readTarball));
  const sizes = await sizesNow(packages);
  if (writeSizes) keepSizes(sizes);
  return [
    ...(await publintFindings(tarballs)),
    ...(await typesFindings(tarballs)),
    ...packages.flatMap(({ name, files }) => contentFindings(name, files, ROOT)),
    ...sizeFindings(sizes, keptSizes()),
  ];
}

/** A packed package: its files' texts by path, and its sizes in bytes. */
async function readTarball(tarball) {
  const { createPackageFromTarballData } = await import('@arethetypeswrong/core');
  const read = createPackageFromTarballData(new Uint8Array(readFileSync(tarball)));
  const start = `/node_modules/${read.packageName}/`;
  const files = new Map(
    read.listFiles().map((path) => [path.slice(start.length), read.readFile(path)]),
  );
  let unpacked = 0;
  for (const text of files.values()) unpacked += Buffer.byteLength(text);
  return { name: read.packageName, files, packed: statSync(tarball).size, unpacked };
}

async function typesFindings(tarballs) {
  const { checkPackage, createPackageFromTarballData } = await import('@arethetypeswrong/core');
  const found = [];
  for (const file of tarballs) {
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

async function publintFindings(tarballs) {
  const { publint } = await import('publint');
  const { formatMessage } = await import('publint/utils');
  const found = [];
  for (const file of tarballs) {
    const bytes = readFileSync(file);
    const tarball = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
    const { messages, pkg } = await publint({ pack: { tarball }, strict: true });
    for (const message of messages) {
      found.push(`${pkg.name}: ${message.type}: ${formatMessage(message, pkg, { color: false })}`);
    }
  }
  return found;
}
