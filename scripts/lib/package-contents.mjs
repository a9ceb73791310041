import { posix } from 'node:path';

/** What every package brings besides its code. */
const ALWAYS = ['package.json', 'README.md', 'LICENSE'];

const LIBRARY = [
  /^src\/[\w/-]+(?:\.data)?\.ts$/,
  /^dist\/[\w/-]+(?:\.data)?\.(?:js|d\.ts)(?:\.map)?$/,
];

/** By the package's name: the files that it may hold, and some that it must hold, besides those. */
const CONTENTS = {
  '@halfhitch/core': {
    may: [...LIBRARY, /^schema\/[a-z-]+-\d\.schema\.json$/],
    must: ['dist/index.js', 'dist/solve/index.js', 'schema/chart-1.schema.json'],
  },
  '@halfhitch/geometry': { may: LIBRARY, must: ['dist/index.js'] },
  '@halfhitch/simulator': {
    may: [
      ...LIBRARY,
      /^dist\/bundle\/halfhitch(?:-[\w-]+)?\.js$/,
      /^dist\/(?:custom-elements\.json|bundle\/third-party-licences\.md)$/,
    ],
    must: [
      'dist/index.js',
      'dist/custom-elements.json',
      'dist/bundle/halfhitch.js',
      'dist/bundle/halfhitch-3d.js',
      'dist/bundle/halfhitch-all.js',
      'dist/bundle/third-party-licences.md',
    ],
  },
  halfhitch: {
    may: [],
    must: ['dist/halfhitch.js', 'dist/third-party-licences.md'],
  },
};

/**
 * What is amiss with the files of a packed package, one line of text each: files that have no
 * business there, files that are missing, outputs whose source is gone, source maps that lead
 * nowhere, and paths of the machine on which it was packed.
 *
 * @param {string} name of the package
 * @param {ReadonlyMap<string, string>} files text by path, without the leading `package/`
 * @param {string} root folder of the repository
 */
export function contentFindings(name, files, root) {
  const { may, must } = CONTENTS[name] ?? { may: [], must: [] };
  const required = [...ALWAYS, ...must];
  const found = [];
  for (const path of required) if (!files.has(path)) found.push(`${path} is missing`);
  for (const [path, text] of files) {
    if (!required.includes(path) && !may.some((pattern) => pattern.test(path))) {
      found.push(`${path} has no business in the package`);
    }
    if (text.includes(root)) found.push(`${path} holds a path of this machine`);
    const stem = /^dist\/(?!bundle\/)(.+?)(?:\.d\.ts|\.js)(?:\.map)?$/.exec(path)?.[1];
    if (stem !== undefined && name !== 'halfhitch' && !files.has(`src/${stem}.ts`)) {
      found.push(`${path} was made from a source that is gone`);
    }
    if (!path.endsWith('.map')) continue;
    for (const source of JSON.parse(text).sources) {
      const place = posix.join(posix.dirname(path), source);
      if (!files.has(place)) found.push(`${path} leads to ${place}, which is not in the package`);
    }
  }
  return found.map((line) => `${name}: ${line}`);
}
