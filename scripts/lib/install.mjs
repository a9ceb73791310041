import { createHash } from 'node:crypto';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { isFresh, writeStamp } from './fingerprint.mjs';
import { say } from './messages.mjs';
import { pinnedPnpm, runPnpm } from './pnpm.mjs';
import { PACKAGES, packageFolder, ROOT, readJson } from './repository.mjs';
import { withLock } from './run-lock.mjs';

// Inside node_modules, so that it goes when they go.
const STAMP = join(ROOT, 'node_modules', '.halfhitch-installed');
const WANTED = ['dependencies', 'devDependencies', 'optionalDependencies', 'peerDependencies'];

/** The manifests of the workspace that exist. */
function manifests() {
  return [ROOT, ...PACKAGES.map((name) => packageFolder(name))]
    .map((folder) => join(folder, 'package.json'))
    .filter((file) => existsSync(file));
}

/** Everything that decides what an install puts where: contents, not times, as git sets those. */
function installFingerprint() {
  const hash = createHash('sha256');
  hash.update([pinnedPnpm(), process.platform, process.arch].join(' '));
  for (const name of ['pnpm-lock.yaml', 'pnpm-workspace.yaml', '.npmrc']) {
    const file = join(ROOT, name);
    if (existsSync(file)) hash.update(readFileSync(file));
  }
  for (const file of manifests()) {
    const manifest = readJson(file);
    hash.update(JSON.stringify([file.slice(ROOT.length), WANTED.map((key) => manifest[key])]));
  }
  return hash.digest('hex');
}

/** Folders that a finished install leaves behind. */
function installedFolders() {
  return manifests()
    .filter((file) => WANTED.some((key) => Object.keys(readJson(file)[key] ?? {}).length > 0))
    .map((file) => join(file, '..', 'node_modules'));
}

function isInstalled() {
  return isFresh(STAMP, installFingerprint(), installedFolders());
}

/** Installs the locked dependencies, unless the last install was of these and was finished. */
export async function ensureInstalled() {
  if (isInstalled()) return;
  await withLock(async () => {
    if (isInstalled()) return;
    const print = installFingerprint();
    rmSync(STAMP, { force: true });
    say(`Installing dependencies with ${pinnedPnpm()} ...`);
    await runPnpm([
      'install',
      '--frozen-lockfile',
      '--prefer-offline',
      '--reporter=append-only',
      '--config.confirmModulesPurge=false',
    ]);
    writeStamp(STAMP, print);
  });
}
