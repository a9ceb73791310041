import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PACKAGES, packageFolder, ROOT, readJson } from './repository.mjs';

const EXACT = /^\d+\.\d+\.\d+(?:-[\w.]+)?$/;

/** Scripts that a package manager runs when it installs a package. */
const INSTALL_SCRIPTS = ['preinstall', 'install', 'postinstall'];

/**
 * Packages whose install scripts may run. There are none, and none that is installed has such a
 * script; one that is added here needs its reason beside it.
 */
const MAY_RUN_SCRIPTS = new Set();

/** What can be checked of dependencies without a network; each fault in words. */
export function checkDependencies(root = ROOT) {
  const lock = readFileSync(join(root, 'pnpm-lock.yaml'), 'utf8');
  const manifests = [root, ...PACKAGES.map((name) => packageFolder(name, root))].map((folder) =>
    readJson(join(folder, 'package.json')),
  );
  return [
    ...withoutHash(lock),
    ...manifests.flatMap(notPinned),
    ...manifests.flatMap(scriptsAllowed),
    ...installScripts(join(root, 'node_modules', '.pnpm')),
  ];
}

/** Packages of a lock file that are not held by a SHA-512 of what is to be installed. */
export function withoutHash(lock) {
  const section = /^packages:\n(?<entries>.*?)(?=^\S)/ms.exec(lock)?.groups?.entries ?? '';
  const entries = [...section.matchAll(/^ {2}(?<name>\S.*):\n(?<body>(?: {4}.*\n|\n)*)/gm)];
  if (entries.length === 0) return ['pnpm-lock.yaml: it lists no packages'];
  return entries
    .filter(({ groups }) => !/integrity: sha512-[A-Za-z0-9+/]{86}==/.test(groups.body))
    .map(({ groups }) => `pnpm-lock.yaml: ${groups.name} has no SHA-512`);
}

/** Dependencies of a package.json that are not of one exact version, or of this workspace. */
export function notPinned({ name, dependencies = {}, devDependencies = {} }) {
  return Object.entries({ ...dependencies, ...devDependencies })
    .filter(([, version]) => !EXACT.test(version) && version !== 'workspace:*')
    .map(([of, version]) => `${name}: ${of} is "${version}", not one exact version`);
}

/** What of a package.json lets packages run scripts as they are installed. */
export function scriptsAllowed({ name, pnpm = {} }) {
  const allowed = pnpm.dangerouslyAllowAllBuilds ? ['*'] : (pnpm.onlyBuiltDependencies ?? []);
  return allowed
    .filter((one) => !MAY_RUN_SCRIPTS.has(one))
    .map((one) => `${name}: pnpm lets ${one} run scripts as it is installed`);
}

/** Installed packages that would run something as they are installed, if they were let. */
function installScripts(store) {
  if (!existsSync(store)) return ['nothing is installed yet'];
  const found = new Set();
  for (const folder of readdirSync(store)) {
    const inside = join(store, folder, 'node_modules');
    if (!existsSync(inside)) continue;
    for (const name of packagesIn(inside)) {
      const manifest = join(inside, name, 'package.json');
      if (!existsSync(manifest) || MAY_RUN_SCRIPTS.has(name)) continue;
      const { scripts = {} } = readJson(manifest);
      const script = INSTALL_SCRIPTS.find((one) => scripts[one] !== undefined);
      if (script !== undefined) found.add(`${name} has a script "${script}"`);
    }
  }
  return [...found];
}

function packagesIn(folder) {
  return readdirSync(folder).flatMap((name) =>
    name.startsWith('@')
      ? readdirSync(join(folder, name)).map((inner) => `${name}/${inner}`)
      : [name],
  );
}
