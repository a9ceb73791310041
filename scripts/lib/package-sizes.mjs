import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, isAbsolute, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { LIBRARIES, packageFolder, ROOT, readJson } from './repository.mjs';

/** The sizes that were found good, with the share by which they may differ either way. */
export const SIZES_FILE = join(ROOT, 'testing', 'package-sizes.json');

/** What a size may always differ by, bytes, so that tiny entries can change at all. */
const SLACK = 150;

/**
 * Sizes in bytes of what is published. `packages`: each tarball, and what it unpacks to. `entries`:
 * what a page loads for an entry, bundled and minified without what belongs to other packages, as
 * gzip: `first`, and `later` in all that it fetches only when needed. The bundle for pages without
 * a bundler holds its dependencies; `whole` is that in a single file.
 *
 * @param {readonly { name: string, packed: number, unpacked: number }[]} packages
 */
export async function sizesNow(packages) {
  const sizes = { packages: {}, entries: {} };
  for (const { name, packed, unpacked } of packages) sizes.packages[name] = { packed, unpacked };
  for (const library of LIBRARIES) {
    const folder = packageFolder(library);
    const { name, exports } = readJson(join(folder, 'package.json'));
    for (const [entry, target] of Object.entries(exports)) {
      if (target.default === undefined) continue;
      const bundled = target.default.startsWith('./dist/bundle/');
      const measure = bundled ? sizeOfBundle : sizeOfEntry;
      sizes.entries[`${name}${entry.slice(1)}`] = await measure(join(folder, target.default));
    }
  }
  return sizes;
}

const packedSize = (code) => gzipSync(code, { level: 9 }).length;

const sum = (numbers) => numbers.reduce((total, one) => total + one, 0);

function sizeOfBundle(file) {
  const folder = dirname(file);
  const sizes = { first: 0, later: 0, whole: 0 };
  for (const name of readdirSync(folder).filter((name) => name.endsWith('.js'))) {
    const which =
      name === basename(file) ? 'first' : name === 'halfhitch-all.js' ? 'whole' : 'later';
    sizes[which] += packedSize(readFileSync(join(folder, name)));
  }
  return sizes;
}

async function sizeOfEntry(file) {
  const { build } = await import('vite');
  const result = await build({
    root: ROOT,
    configFile: false,
    logLevel: 'silent',
    publicDir: false,
    build: {
      write: false,
      target: 'es2022',
      modulePreload: false,
      lib: { entry: file, formats: ['es'], fileName: 'entry' },
      rolldownOptions: {
        external: (id) => !id.startsWith('.') && !isAbsolute(id),
        output: { minify: true },
      },
    },
  });
  const chunks = [result].flat().flatMap(({ output }) => output);
  const byName = new Map(chunks.map((chunk) => [chunk.fileName, chunk]));
  const atFirst = new Set();
  const follow = (chunk) => {
    if (chunk === undefined || atFirst.has(chunk)) return;
    atFirst.add(chunk);
    for (const next of chunk.imports) follow(byName.get(next));
  };
  follow(chunks.find(({ isEntry }) => isEntry));
  const total = (some) => sum(some.map(({ code }) => packedSize(code)));
  const later = total(chunks.filter((chunk) => !atFirst.has(chunk)));
  return { first: total([...atFirst]), ...(later > 0 ? { later } : {}) };
}

/**
 * How sizes differ from those kept, one line of text each. Too small counts too: a budget far above
 * what is needed no longer sees anything grow.
 */
export function sizeFindings(now, kept) {
  const [before, after] = [flat(kept), flat(now)];
  const found = [];
  for (const [what, size] of after) {
    const expected = before.get(what);
    if (expected === undefined) found.push(`${what}: ${size} bytes, and no size is kept for it`);
    else if (Math.abs(size - expected) > Math.max(SLACK, kept.within * expected)) {
      const share = ((100 * size) / expected - 100).toFixed(1);
      found.push(
        `${what}: ${size} bytes are ${Math.abs(share)} % ${share > 0 ? 'more' : 'less'} than the ${expected} kept`,
      );
    }
  }
  for (const what of before.keys()) {
    if (!after.has(what))
      found.push(`${what}: a size is kept for it, but it is not there any more`);
  }
  if (found.length === 0) return [];
  return [
    ...found,
    'If that is as it should be: npm run check:packages -- --write, and say why in the commit.',
  ];
}

/** All sizes as "whose which" to bytes. */
function flat({ packages, entries }) {
  return new Map(
    Object.entries({ ...prefixed('package', packages), ...prefixed('entry', entries) }).flatMap(
      ([name, sizes]) => Object.entries(sizes).map(([which, size]) => [`${name}, ${which}`, size]),
    ),
  );
}

function prefixed(prefix, sizes) {
  return Object.fromEntries(
    Object.entries(sizes).map(([name, size]) => [`size of ${prefix} ${name}`, size]),
  );
}

export function keptSizes() {
  return existsSync(SIZES_FILE)
    ? readJson(SIZES_FILE)
    : { within: 0.05, packages: {}, entries: {} };
}

export function keepSizes(now) {
  const { within } = keptSizes();
  writeFileSync(SIZES_FILE, `${JSON.stringify({ within, ...now }, null, 2)}\n`);
}
