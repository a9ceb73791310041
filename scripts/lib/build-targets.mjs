import { statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { runNode } from './child-process.mjs';
import { fingerprint, isFresh, writeStamp } from './fingerprint.mjs';
import { Refusal, say } from './messages.mjs';
import { CACHE, filesBelow, LIBRARIES, packageFolder, ROOT } from './repository.mjs';
import { withLock } from './run-lock.mjs';

const at = (...parts) => join(ROOT, ...parts);
const sources = (...packages) =>
  packages.flatMap((name) => [
    at('packages', name, 'src'),
    at('packages', name, 'schema'),
    at('packages', name, 'package.json'),
    at('packages', name, 'tsconfig.json'),
  ]);

/**
 * What can be built. `inputs`: files and folders that decide the result. `outputs`: files that
 * must be there afterwards. The commands are in scripts/build-target.mjs.
 */
const TARGETS = {
  libraries: {
    title: 'the libraries',
    inputs: [at('tsconfig.base.json'), ...sources(...LIBRARIES)],
    outputs: LIBRARIES.map((name) => join(packageFolder(name), 'dist', 'index.js')),
  },
  elements: {
    title: 'the elements for pages without a bundler',
    inputs: [...sources(...LIBRARIES), at('packages', 'simulator', 'build')],
    outputs: ['bundle/halfhitch.js', 'bundle/halfhitch-all.js', 'custom-elements.json'].map(
      (name) => join(packageFolder('simulator'), 'dist', name),
    ),
  },
  cli: {
    title: 'the command line tool',
    inputs: [...sources('core', 'geometry', 'cli'), at('scripts', 'lib', 'bundle-for-node.mjs')],
    outputs: [at('packages', 'cli', 'dist', 'halfhitch.js')],
  },
  app: {
    title: 'the app',
    inputs: [
      ...sources(...LIBRARIES, 'app'),
      at('packages', 'app', 'index.html'),
      at('packages', 'app', 'public'),
      at('packages', 'app', 'vite.config.ts'),
      at('packages', 'app', 'build'),
      at('examples'),
    ],
    outputs: ['index.html', 'sw.js', 'tutorial-page.html'].map((name) =>
      at('packages', 'app', 'dist', name),
    ),
  },
};

// Inputs of every target: the toolchain, and the dependencies as last installed.
const COMMON = [
  at('node_modules', '.halfhitch-installed'),
  at('scripts', 'build-target.mjs'),
  at('scripts', 'lib', 'source-aliases.mjs'),
];

export const TARGET_NAMES = Object.keys(TARGETS);

/**
 * Builds those of the named targets whose inputs changed since they were last built.
 *
 * @returns {Promise<string[]>} the names of those that were built now
 */
export async function ensureBuilt(...names) {
  const stampOf = (name) => join(CACHE, 'built', name);
  const printOf = (name) => fingerprint([...COMMON, ...TARGETS[name].inputs]);
  const isStale = (name) => !isFresh(stampOf(name), printOf(name), TARGETS[name].outputs);
  const built = [];
  if (!names.some(isStale)) return built;
  await withLock(async () => {
    for (const name of names.filter(isStale)) {
      // Taken before the build: what is edited while it runs must be built again.
      const print = printOf(name);
      say(`Building ${TARGETS[name].title} ...`);
      const { code } = await runNode([at('scripts', 'build-target.mjs'), name], {
        // A build asked for by a test run must not become a build for tests.
        env: { NODE_ENV: 'production' },
      });
      if (code !== 0) throw new Refusal(`Could not build ${TARGETS[name].title}; see above.`);
      writeStamp(stampOf(name), print);
      built.push(name);
    }
  });
  return built;
}

/**
 * What a target that has been built consists of: its main files, and the folders they are in.
 *
 * @returns lines for people: paths from the repository's folder, with sizes
 */
export function writtenBy(name) {
  const { title, outputs } = TARGETS[name];
  const written = outputs.map((file) => `${pathOf(file)}  ${inBytes(statSync(file).size)}`);
  for (const folder of new Set(outputs.map((file) => dirname(file)))) {
    const files = filesBelow(folder);
    const bytes = files.reduce((sum, file) => sum + statSync(file).size, 0);
    written.push(`${pathOf(folder)}/  ${inBytes(bytes)} in ${files.length} files`);
  }
  return { title, written };
}

/** With forward slashes, as the documentation has it. */
function pathOf(file) {
  return relative(ROOT, file).replaceAll('\\', '/');
}

function inBytes(bytes) {
  return bytes < 1e6 ? `${Math.ceil(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
