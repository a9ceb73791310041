import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe } from 'vitest';
import { ensureBuilt } from '../../scripts/lib/build-targets.mjs';
import { LIBRARIES, packageFolder } from '../../scripts/lib/repository.mjs';
import { expect } from '../browser.js';
import { type DocBlock, documentationBlocks, needsPage, placeOf } from '../doc-blocks.mjs';
import { type ServedFolder, serveFolder } from '../serve-folder.js';
import { whatIsNeeded } from './fresh-project.js';
import { coloursOf, pageWith, test } from './pages.js';

const blocks: readonly DocBlock[] = documentationBlocks().filter(needsPage);

/** Whether a block names packages that a bundler has to find. */
const needsBundler = ({ text }: DocBlock): boolean =>
  /['"]@halfhitch\//.test(text) && !text.includes('importmap');

const nameOf = (block: DocBlock): string => `page-${blocks.indexOf(block)}.html`;

let folder = '';
let plain: ServedFolder;
let bundled: ServedFolder;

/** A block as a reader would put it into a page: what it looks for is there. */
function pageOf({ language, text }: DocBlock): string {
  if (text.startsWith('<!doctype html>')) return text;
  if (language === 'html') return pageWith('', text);
  const wanted = [...text.matchAll(/querySelector\('(halfhitch-\w+)'\)/g)].map(([, name]) => name);
  const made = text.includes('document.createElement(');
  const shown = wanted.length > 0 || made ? wanted : ['halfhitch-knot'];
  const elements = shown.map((name) => `<${name} lang="fr"></${name}>`).join('');
  return pageWith('', `${elements}<script type="module">\n${text}</script>`);
}

beforeAll(async () => {
  await ensureBuilt('libraries', 'elements');
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'halfhitch-documented-')));
  const bundle = join(packageFolder('simulator'), 'dist', 'bundle');
  // The documentation tells to copy the files beside the page, or the folder.
  cpSync(bundle, folder, { recursive: true });
  cpSync(bundle, join(folder, 'halfhitch'), { recursive: true });
  const packages = new Map(LIBRARIES.map((name) => [`@halfhitch/${name}`, packageFolder(name)]));
  for (const [name, from] of [...packages, ...whatIsNeeded()]) {
    const to = join(folder, 'node_modules', name);
    mkdirSync(dirname(to), { recursive: true });
    symlinkSync(from, to, 'dir');
  }
  for (const block of blocks) writeFileSync(join(folder, nameOf(block)), pageOf(block));
  await build({
    root: folder,
    configFile: false,
    logLevel: 'silent',
    build: {
      target: 'es2022',
      rolldownOptions: {
        input: blocks.filter(needsBundler).map((block) => join(folder, nameOf(block))),
      },
    },
  });
  [plain, bundled] = await Promise.all([serveFolder(folder), serveFolder(join(folder, 'dist'))]);
}, 240_000);

afterAll(() => {
  plain?.close();
  bundled?.close();
  if (folder !== '') rmSync(folder, { recursive: true, force: true });
});

/** Shades that a picture has at the least; one that is still blank has three or four. */
const DRAWN = 24;

/** What blocks put into a page. */
const SHOWN = ['halfhitch-knot', 'halfhitch-lesson', 'halfhitch-piece', 'halfhitch-row', 'svg'];

/** Elements that reach over what follows them, or hold more than they have room for. */
function crowded(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const elements = [...document.querySelectorAll<HTMLElement>('body > *')].filter(
      ({ localName }) => localName.startsWith('halfhitch-'),
    );
    return elements.filter((e) => e.scrollHeight > e.clientHeight + 1).map((e) => e.outerHTML);
  });
}

describe('blocks of the documentation that need a page', () => {
  test('are all of these', () => {
    expect(blocks.length).toBeGreaterThanOrEqual(12);
    expect(blocks.filter(needsBundler).length).toBeGreaterThanOrEqual(5);
  });

  test.for(blocks.map((block) => [placeOf(block), block] as const))(
    '%s draws what it says',
    async ([, block], { openPublished }) => {
      const fromDisk = block.text.includes('<script src="halfhitch-all.js">');
      const page = await openPublished(
        fromDisk
          ? pathToFileURL(join(folder, nameOf(block))).href
          : `${(needsBundler(block) ? bundled : plain).address}/${nameOf(block)}`,
      );
      const shown = page.locator(`body > :is(${SHOWN.join(', ')})`);
      await shown.first().waitFor();
      for (let i = 0; i < (await shown.count()); i++) {
        const element = shown.nth(i);
        // It is drawn when it first comes into sight.
        await element.scrollIntoViewIfNeeded();
        const isDrawing = await element.evaluate(({ localName }) => localName === 'svg');
        const drawing = isDrawing ? element : element.locator('canvas').first();
        await expect.poll(() => coloursOf(drawing)).toBeGreaterThan(DRAWN);
      }
      expect(await crowded(page)).toEqual([]);
      for (const [, said] of block.text.matchAll(
        /MESSAGES\.add\('fr', \{ '[\w.]+': '(\w+)' \}\)/g,
      )) {
        await page
          .getByRole('button', { name: said as string })
          .first()
          .waitFor();
      }
    },
  );
});
