import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contentFindings } from '../lib/package-contents.mjs';
import { keptSizes, sizeFindings } from '../lib/package-sizes.mjs';
import { LIBRARIES, packageFolder, ROOT as REPOSITORY, readJson } from '../lib/repository.mjs';

const ROOT = '/somewhere/halfhitch';
const MAP = JSON.stringify({ sources: ['../src/index.ts'] });

/** A geometry with just what it must hold, and more. */
const geometry = (more = {}) =>
  new Map(
    Object.entries({
      'package.json': '{}',
      'README.md': '',
      LICENSE: '',
      'dist/index.js': '',
      'dist/index.js.map': MAP,
      'src/index.ts': '',
      ...more,
    }),
  );

const findings = (files, name = '@halfhitch/geometry') => contentFindings(name, files, ROOT);

describe('the files of a package', () => {
  it('are well when all have business there', () => {
    expect(findings(geometry())).toEqual([]);
  });

  it.each([
    ['src/index.test.ts', 'has no business'],
    ['dist/.tsbuildinfo', 'has no business'],
    ['test/poses.ts', 'has no business'],
    ['.env', 'has no business'],
    ['dist/old.js', 'was made from a source that is gone'],
  ])('are refused when %s is among them', (path, why) => {
    expect(findings(geometry({ [path]: '' }))).toEqual([
      expect.stringContaining(`@halfhitch/geometry: ${path} ${why}`),
    ]);
  });

  it.each(['LICENSE', 'README.md', 'dist/index.js'])('are refused without %s', (path) => {
    const files = geometry();
    files.delete(path);
    expect(findings(files)).toEqual([`@halfhitch/geometry: ${path} is missing`]);
  });

  it('are refused when a source map leads nowhere or a path of the machine is left', () => {
    const astray = JSON.stringify({ sources: ['../../src/index.ts'] });
    expect(findings(geometry({ 'dist/index.js.map': astray }))).toHaveLength(1);
    expect(findings(geometry({ 'dist/index.js': `"${ROOT}/packages"` }))).toHaveLength(1);
  });

  it('are all refused in a package that is not known', () => {
    expect(findings(geometry(), '@halfhitch/other').length).toBeGreaterThan(2);
  });
});

describe('sizes', () => {
  const kept = {
    within: 0.05,
    packages: { halfhitch: { packed: 100_000, unpacked: 400_000 } },
    entries: { '@halfhitch/core': { first: 1000 } },
  };
  const withFirst = (first) => ({ ...kept, entries: { '@halfhitch/core': { first } } });
  const withPacked = (packed) => ({ ...kept, packages: { halfhitch: { packed, unpacked: 4e5 } } });

  it('may differ a little', () => {
    for (const same of [kept, withPacked(104_900), withPacked(95_100), withFirst(1150)]) {
      expect(sizeFindings(same, kept)).toEqual([]);
    }
  });

  it('are refused when they are too big and when they are too small', () => {
    expect(sizeFindings(withPacked(105_100), kept)[0]).toBe(
      'size of package halfhitch, packed: 105100 bytes are 5.1 % more than the 100000 kept',
    );
    expect(sizeFindings(withPacked(94_900), kept)[0]).toContain('5.1 % less');
    expect(sizeFindings(withFirst(1151), kept)[0]).toContain('15.1 % more');
  });

  it('are refused when one is not kept, or kept for what is gone', () => {
    const more = { ...kept, entries: { ...kept.entries, '@halfhitch/core/new': { first: 9 } } };
    expect(sizeFindings(more, kept)[0]).toContain('no size is kept');
    expect(sizeFindings(kept, more)[0]).toContain('not there any more');
  });

  it('are kept closely, and what a page loads at first is small', () => {
    const { within, entries } = keptSizes();
    expect(within).toBeLessThanOrEqual(0.05);
    // All that a page with the elements loads at first, and 3D with three in all.
    expect(entries['@halfhitch/simulator/bundle'].first).toBeLessThan(40_000);
    expect(entries['@halfhitch/simulator/bundle'].later).toBeLessThan(300_000);
  });
});

describe('notes of changes', () => {
  const folder = join(REPOSITORY, '.changeset');
  const published = [...LIBRARIES, 'cli'].map((name) =>
    readJson(join(packageFolder(name), 'package.json')),
  );

  it('name packages that are published, how much changes, and what', () => {
    const notes = readdirSync(folder).filter((name) => name.endsWith('.md'));
    for (const note of notes) {
      const text = readFileSync(join(folder, note), 'utf8');
      const [, head = '', sentence = ''] = /^---\n([\s\S]*?)\n---\n\n([\s\S]+)$/.exec(text) ?? [];
      const named = head.split('\n').map((line) => /^'(.+)': (major|minor|patch)$/.exec(line)?.[1]);
      expect([note, named.length > 0, sentence.length > 20]).toEqual([note, true, true]);
      for (const name of named) expect(published.map((one) => one.name)).toContain(name);
    }
  });

  it('go for all published packages, which have one number', () => {
    const { fixed } = readJson(join(folder, 'config.json'));
    expect(new Set(fixed.flat())).toEqual(new Set(published.map(({ name }) => name)));
    expect(new Set(published.map(({ version }) => version)).size).toBe(1);
  });
});
