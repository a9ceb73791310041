import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe } from 'vitest';
import { runNode, runProcess } from '../../scripts/lib/child-process.mjs';
import { packageFolder, ROOT, readJson } from '../../scripts/lib/repository.mjs';
import { expect } from '../browser.js';
import { type ServedFolder, serveFolder } from '../serve-folder.js';
import { bundled, loadedAtFirst } from './bundled.js';
import { type Entry, type FreshProject, freshProject } from './fresh-project.js';
import { importMapOf } from './import-map.js';
import { coloursOf, namesInPage, pageWith, test } from './pages.js';
import {
  handingOn,
  importingAll,
  nodeProgram,
  TYPED_PAGE,
  TYPED_USE,
  USING_ALL,
} from './programs.js';
import { typeFindings } from './type-check.js';

let project: FreshProject;
let served: ServedFolder;
let entries: readonly Entry[];

/** The bundle defines the elements on its own, and so needs a page and no bundler. */
const isBundle = ({ specifier }: Entry): boolean => specifier.endsWith('/bundle');

/**
 * What a bundler makes of a part of a package, in characters. None may grow to hold the whole, and
 * none may be empty that is used.
 */
const TREE_SHAKEN = [
  { code: "import '@halfhitch/core';", least: 0, most: 100 },
  { code: "import '@halfhitch/geometry/thread';", least: 0, most: 100 },
  { code: "import { mirrorKnot as used } from '@halfhitch/core';", least: 40, most: 2_000 },
  { code: "import { planAlpha as used } from '@halfhitch/core';", least: 2_000, most: 20_000 },
  { code: "import { texOfNe as used } from '@halfhitch/geometry/thread';", least: 40, most: 2_000 },
  {
    code: "import { knotPicture as used } from '@halfhitch/simulator/picture';",
    least: 5_000,
    most: 60_000,
  },
  { code: "import '@halfhitch/simulator';", least: 60_000, most: 140_000 },
];

const namesOf = (some: readonly Entry[]) =>
  Object.fromEntries(some.map(({ specifier, values }) => [specifier, values]));

beforeAll(async () => {
  project = await freshProject();
  entries = project.entries();
  served = await serveFolder(project.folder);
}, 240_000);

afterAll(() => {
  served?.close();
  project?.remove();
});

describe('what is published, packed and installed elsewhere', () => {
  test('has an entry for everything that a pinned report is kept of', () => {
    expect(entries.map(({ specifier }) => specifier)).toEqual([
      '@halfhitch/core',
      '@halfhitch/core/solve',
      '@halfhitch/geometry',
      '@halfhitch/geometry/knot',
      '@halfhitch/geometry/row',
      '@halfhitch/geometry/plan',
      '@halfhitch/geometry/fabric',
      '@halfhitch/geometry/diagonal',
      '@halfhitch/geometry/thread',
      '@halfhitch/simulator',
      '@halfhitch/simulator/lessons',
      '@halfhitch/simulator/picture',
      '@halfhitch/simulator/bundle',
    ]);
    for (const { specifier, values } of entries) {
      expect([specifier, values.length > 2]).toEqual([specifier, true]);
    }
  });

  test('is there once, and leaves lit and three to be shared with the page', () => {
    for (const name of ['core', 'geometry', 'simulator']) {
      expect(readdirSync(project.path('node_modules', '@halfhitch', name))).not.toContain(
        'node_modules',
      );
    }
    const { dependencies, peerDependencies } = project.manifest('@halfhitch/simulator');
    expect(peerDependencies).toEqual({ lit: '^3.3.0', three: '^0.187.0' });
    // What reads "workspace:" here must have become a version.
    expect(dependencies).toEqual({ '@halfhitch/core': '0.1.0', '@halfhitch/geometry': '0.1.0' });
  });

  test('exports in Node what the pinned reports say, and does its work there', async () => {
    const some = entries.filter((entry) => !isBundle(entry));
    const program = project.write('program.js', nodeProgram(some));
    const { code, tail } = await runNode([program], { cwd: project.folder, output: 'none' });
    expect(code, tail).toBe(0);
    const { names, ...done } = readJson(project.path('found.json'));
    expect(done).toEqual({
      wrong: 0,
      picture: '<svg',
      lessons: [3, 4],
      schema: 'https://json-schema.org/draft/2020-12/schema',
      manifest: 5,
    });
    expect(names).toEqual(namesOf(some));
  });

  test('has types that hold in every project, with and without a page', () => {
    const write = (some: readonly Entry[], use: string): string[] => [
      ...some.map((entry) =>
        project.write(`${entry.specifier.replace(/\W+/g, '-').slice(1)}.ts`, handingOn(entry)),
      ),
      project.write(`use-of-${some.length}.ts`, use),
    ];
    const pure = write(
      entries.filter(({ specifier }) => !specifier.startsWith('@halfhitch/simulator')),
      TYPED_USE,
    );
    const all = write(entries, TYPED_PAGE);
    // A name that no entry has must be seen by this, or nothing is.
    const broken = project.write('broken.ts', "export type { Nothing } from '@halfhitch/core';\n");
    const page = ['es2022', 'dom'];
    expect([
      ...typeFindings([...pure, broken], 'nodenext', ['es2022']),
      ...typeFindings(all, 'nodenext', page),
      ...typeFindings([...all, ...pure], 'bundler', page),
    ]).toEqual([expect.stringContaining("has no exported member 'Nothing'")]);
  });

  test('is bundled whole, with three apart, and the page made so draws a knot', async ({
    openPublished,
  }) => {
    const some = entries.filter((entry) => !isBundle(entry));
    project.write('main.js', importingAll(some));
    project.write(
      'index.html',
      pageWith(
        '<script type="module" src="/main.js"></script>',
        '<halfhitch-knot kind="backward" position="1.5"></halfhitch-knot>',
      ),
    );
    const chunks = await bundled(project, 'index.html', { write: true });
    const three = chunks.filter(({ code }) => code.includes('WebGLRenderer'));
    expect(three).toHaveLength(1);
    expect(loadedAtFirst(chunks)).not.toContain(three[0]);
    const site = await serveFolder(project.path('dist'));
    try {
      const page = await openPublished(`${site.address}/`);
      expect(await namesInPage(page)).toEqual(namesOf(some));
      expect(await coloursOf(page.locator('halfhitch-knot canvas').first())).toBeGreaterThan(60);
    } finally {
      site.close();
    }
  });

  test.for(TREE_SHAKEN)('lets a bundler drop what is not used: $code', async (part) => {
    const { code, least, most } = part;
    project.write('part.js', `${code}\n${code.includes('used') ? 'console.log(used);\n' : ''}`);
    const chunks = await bundled(project, 'part.js');
    const size = loadedAtFirst(chunks).reduce((sum, chunk) => sum + chunk.code.length, 0);
    expect(size).toBeGreaterThanOrEqual(least);
    expect(size).toBeLessThanOrEqual(most);
  });

  test('works from its files as they are, by a browser import map', async ({ openPublished }) => {
    const libraries = entries.map(({ specifier }) => specifier.split('/').slice(0, 2).join('/'));
    const map = importMapOf(project.folder, [...new Set(libraries), ...project.linked]);
    project.write('all.js', `${importingAll(entries)}${USING_ALL}`);
    project.write(
      'map.html',
      pageWith(
        `<script type="importmap">${map}</script><script type="module" src="/all.js"></script>`,
        '<halfhitch-knot kind="forward-backward"></halfhitch-knot>',
      ),
    );
    const page = await openPublished(`${served.address}/map.html`);
    const names = await namesInPage(page);
    const bundle = '@halfhitch/simulator/bundle';
    // Its files share what they need under names of one letter.
    const promised = names[bundle]?.filter((name) => name.length > 1);
    expect({ ...names, [bundle]: promised }).toEqual(namesOf(entries));
    expect(await page.evaluate('useAll()')).toEqual({
      wrong: 0,
      solved: 'solved',
      longer: true,
      row: 300,
      plan: true,
      fabric: 1,
      diagonal: 6,
      thread: true,
      picture: '<svg',
      lesson: 3,
      elements: true,
    });
    expect(await coloursOf(page.locator('halfhitch-knot canvas').first())).toBeGreaterThan(60);
  });

  test('has a command that checks and draws a chart', async () => {
    const tool = project.path('node_modules', '.bin', 'halfhitch');
    const chart = join(ROOT, 'examples', 'wave-band.png');
    const run = (words: string[]) =>
      runProcess(tool, words, { cwd: project.folder, output: 'none' });
    const checked = await run(['check', chart, '--json']);
    expect(JSON.parse(checked.tail)).toMatchObject({ ok: true });
    const drawn = await run(['render', chart, '-o', 'out.png']);
    expect(drawn.code, drawn.tail).toBe(0);
    expect(readdirSync(project.folder)).toContain('out.png');
    expect(project.manifest('halfhitch').version).toBe(
      (readJson(join(packageFolder('cli'), 'package.json')) as { version: string }).version,
    );
  });
});
