import { existsSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { filesBelow, packageFolder, readJson } from '../lib/repository.mjs';
import { checkCompilerSettings } from './check-compiler-settings.mjs';
import { checkSpecifier } from './check-specifier.mjs';
import { readImports } from './read-imports.mjs';
import { nameOf, RENDERERS, RULES } from './rules.mjs';

const SOURCE = /\.(ts|tsx|mts|js|mjs)$/;

const keysOf = (...groups) => groups.flatMap((group) => Object.keys(group ?? {}));

function exportsOf(root) {
  return (key) => {
    const { exports = {} } = readJson(join(packageFolder(key, root), 'package.json'));
    return typeof exports === 'string' ? ['.'] : Object.keys(exports);
  };
}

function checkManifest(key, manifest) {
  const allowed = RULES[key].uses.map(nameOf);
  const workspace = Object.keys(RULES).map(nameOf);
  return keysOf(manifest.dependencies, manifest.devDependencies, manifest.peerDependencies)
    .filter(
      (name) =>
        (workspace.includes(name) && !allowed.includes(name)) ||
        (RULES[key].pure && RENDERERS.test(name)),
    )
    .map((name) => `packages/${key}/package.json: ${nameOf(key)} must not depend on ${name}`);
}

function checkFiles(key, root, manifest, rootManifest) {
  const folder = packageFolder(key, root);
  const published = keysOf(manifest.dependencies, manifest.peerDependencies);
  const development = keysOf(manifest.devDependencies);
  // A type-only package such as @types/three speaks for the one it describes; what a bundled
  // program takes in is listed as a development dependency.
  const bundled = key === 'app' || key === 'cli';
  const place = {
    key,
    root,
    folder,
    exportsOf: exportsOf(root),
    dependencies: new Set(bundled ? [...published, ...development] : published),
    testDependencies: new Set([
      ...published,
      ...development,
      ...keysOf(rootManifest.devDependencies),
    ]),
  };
  return [
    ['src', 'src'],
    ['test', 'test'],
    ['bench', 'test'],
  ].flatMap(([inside, part]) =>
    filesBelow(join(folder, inside))
      .filter((file) => SOURCE.test(file))
      .flatMap((file) =>
        readImports(file, readFileSync(file, 'utf8')).flatMap((found) => {
          const fault = checkSpecifier(found, { ...place, part, file });
          const shown = relative(root, file).split(sep).join('/');
          return fault ? [`${shown}:${found.line}: ${fault}`] : [];
        }),
      ),
  );
}

/** Every breach of the rules in the repository at `root`, one line of text each. */
export function checkBoundaries(root) {
  const rootManifest = readJson(join(root, 'package.json'));
  return Object.keys(RULES)
    .filter((key) => existsSync(packageFolder(key, root)))
    .flatMap((key) => {
      const manifest = readJson(join(packageFolder(key, root), 'package.json'));
      return [
        ...checkManifest(key, manifest),
        ...checkFiles(key, root, manifest, rootManifest),
        ...checkCompilerSettings(key, root),
      ];
    });
}
