import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { checkBoundaries } from '../imports/check-boundaries.mjs';
import { STRICT } from '../imports/rules.mjs';
import { ROOT } from '../lib/repository.mjs';

let root;

function write(path, content) {
  const file = join(root, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content));
}

function writePackage(key, manifest = {}, compilerOptions = {}) {
  const name = key === 'cli' ? 'halfhitch' : `@halfhitch/${key}`;
  write(`packages/${key}/package.json`, { name, exports: { '.': './dist/index.js' }, ...manifest });
  write(`packages/${key}/tsconfig.json`, {
    compilerOptions: {
      ...STRICT,
      target: 'ES2022',
      lib: ['ES2022'],
      types: [],
      ...compilerOptions,
    },
    include: ['src'],
  });
  write(`packages/${key}/src/index.ts`, 'export {};\n');
}

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'halfhitch-imports-'));
  write('package.json', { devDependencies: { vitest: '1.0.0' } });
  writePackage('core', { dependencies: { fflate: '1.0.0' } });
  writePackage('geometry', { dependencies: { '@halfhitch/core': '1.0.0' } });
  writePackage(
    'simulator',
    { dependencies: { '@halfhitch/core': '1.0.0', '@halfhitch/geometry': '1.0.0', lit: '3.0.0' } },
    { lib: ['ES2022', 'DOM'] },
  );
});

afterEach(() => rmSync(root, { recursive: true, force: true }));

/** The breaches with one more file in the repository. */
function breachesWith(path, content) {
  write(path, content);
  return checkBoundaries(root);
}

test('this repository keeps its boundaries', () => {
  expect(checkBoundaries(ROOT)).toEqual([]);
});

test('a repository that keeps the rules has no breach', () => {
  write('packages/core/src/chart/text.ts', "import '../index.js';\nimport 'fflate';\n");
  writePackage('core', {
    exports: { '.': './dist/index.js', './schema/*': './schema/*' },
    dependencies: { fflate: '1.0.0' },
  });
  write('packages/geometry/src/path.ts', "import '@halfhitch/core';\n");
  write('packages/geometry/src/schema.ts', "import '@halfhitch/core/schema/a.json';\n");
  write(
    'packages/core/test/text.test.ts',
    "import 'vitest';\nimport 'node:fs';\nimport '../src/index.js';\n",
  );
  write('packages/core/test/seed.test.ts', "import '../../../testing/seed.js';\n");
  expect(checkBoundaries(root)).toEqual([]);
});

describe('is caught with its place', () => {
  const SOURCE_FAULTS = [
    ['an upward import', "import '@halfhitch/geometry';", 'must not import @halfhitch/geometry'],
    ['an upward re-export', "export * from '@halfhitch/simulator';", 'must not import'],
    ['an upward type', "export type A = import('@halfhitch/geometry').A;", 'must not import'],
    ['a dynamic import', "void import('@halfhitch/geometry');", 'must not import'],
    ['a required module', "require('node:fs');", 'without Node'],
    ['an old-style import', "import fs = require('fs');", 'without Node'],
    ['an import by template', 'void import(`three`);', 'must not use "three"'],
    ['an import worked out at run time', "void import('th' + 'ree');", 'cannot be checked'],
    ['a renderer', "import { html } from 'lit';", 'must not use "lit"'],
    ['a part of a renderer', "import 'three/addons/a.js';", 'must not use "three"'],
    ['a widened module', "declare module 'lit' { }", 'must not use "lit"'],
    ["a module of Node's", "import { readFileSync } from 'node:fs';", 'without Node'],
    ["a module of Node's by its bare name", "import path from 'path';", 'without Node'],
    ['the types of a page', '/// <reference lib="dom" />', 'types of "dom"'],
    ['the types of Node', '/// <reference types="node" />', 'types of "node"'],
    ['a path into another package', "import '../../geometry/src/index.js';", 'outside'],
    ['a path into the tests', "import '../test/a.js';", 'outside'],
    ['an absolute path', "import '/a.js';", 'absolute'],
    ['an unlisted dependency', "import 'commander';", 'not among the own dependencies'],
    ['a development dependency', "import 'vitest';", 'not among the own dependencies'],
  ];
  test.each(SOURCE_FAULTS)('%s', (_, text, message) => {
    const breaches = breachesWith('packages/core/src/a.ts', `// first line\n${text}\n`);
    expect(breaches.join('\n')).toContain(message);
    // A reference is only one on top of a file; there it is on the second line all the same.
    expect(breaches[0]).toMatch(/^packages\/core\/src\/a\.ts:2: /);
  });

  test('a deep import of what a package does not export', () => {
    const breaches = breachesWith(
      'packages/geometry/src/a.ts',
      "import '@halfhitch/core/dist/a.js';",
    );
    expect(breaches).toEqual([
      'packages/geometry/src/a.ts:1: "@halfhitch/core/dist/a.js" is not exported by @halfhitch/core',
    ]);
  });

  test('a test that imports upwards', () => {
    const breaches = breachesWith('packages/core/test/a.test.ts', "import '@halfhitch/geometry';");
    expect(breaches[0]).toContain(
      'packages/core/test/a.test.ts:1: @halfhitch/core must not import',
    );
  });

  test('a test that reaches into another package', () => {
    const breaches = breachesWith(
      'packages/core/test/a.test.ts',
      "import '../../geometry/src/a.js';",
    );
    expect(breaches[0]).toContain('a test may only reach into its own package');
  });

  test('a manifest that depends upwards or on a renderer', () => {
    writePackage('core', { devDependencies: { '@halfhitch/simulator': '1.0.0', three: '1.0.0' } });
    expect(checkBoundaries(root)).toEqual([
      'packages/core/package.json: @halfhitch/core must not depend on @halfhitch/simulator',
      'packages/core/package.json: @halfhitch/core must not depend on three',
    ]);
  });

  test.each([
    ['page types', { lib: ['ES2022', 'DOM'] }, '"lib" must be ["ES2022"]'],
    ['types of Node', { types: ['node'] }, '"types" must be []'],
    ['a strict setting', { exactOptionalPropertyTypes: false }, '"exactOptionalPropertyTypes"'],
  ])('compiler settings loosened: %s', (_, options, message) => {
    writePackage('core', {}, options);
    expect(checkBoundaries(root).join()).toContain(message);
  });

  test('page types that come in through a dependency', () => {
    write('packages/core/node_modules/leaky/package.json', { name: 'leaky', types: 'a.d.ts' });
    write('packages/core/node_modules/leaky/a.d.ts', '/// <reference lib="dom" />\nexport {};\n');
    writePackage('core', { dependencies: { leaky: '1.0.0' } }, { module: 'NodeNext' });
    const breaches = breachesWith('packages/core/src/a.ts', "import 'leaky';\n");
    expect(breaches).toEqual([
      'packages/core/tsconfig.json: @halfhitch/core sees lib.dom.d.ts, which must not be there',
    ]);
  });
});
