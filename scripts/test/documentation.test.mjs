import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  documentationBlocks,
  documentationFiles,
  needsPage,
  placeOf,
} from '../../testing/doc-blocks.mjs';
import { ensureBuilt } from '../lib/build-targets.mjs';
import { runNode } from '../lib/child-process.mjs';
import { checkDocPictures, PICTURES } from '../lib/doc-pictures.mjs';
import { LIBRARIES, PACKAGES, packageFolder, ROOT, readJson } from '../lib/repository.mjs';

const blocks = documentationBlocks();
const of = (...languages) => blocks.filter(({ language }) => languages.includes(language));
const TOOL = join(packageFolder('cli'), 'dist', 'halfhitch.js');

/** A folder in which the commands and programs of the documentation are run. */
let folder = '';

beforeAll(async () => {
  await ensureBuilt('libraries', 'cli');
  folder = mkdtempSync(join(tmpdir(), 'halfhitch-docs-'));
  mkdirSync(join(folder, 'node_modules', '@halfhitch'), { recursive: true });
  for (const name of LIBRARIES) {
    symlinkSync(packageFolder(name), join(folder, 'node_modules', '@halfhitch', name), 'dir');
  }
  writeFileSync(join(folder, 'package.json'), '{"type": "module"}');
  cpSync(join(ROOT, 'examples'), join(folder, 'examples'), { recursive: true });
  copyFileSync(join(ROOT, 'examples', 'wave-band.png'), join(folder, 'pennant.png'));
  const pennant = blocks.find(
    ({ file, language }) => file === 'docs/tutorial.md' && language === 'text',
  );
  mkdirSync(join(folder, 'charts'));
  for (const path of ['pennant.txt', 'charts/pennant.txt']) {
    writeFileSync(join(folder, path), pennant.text);
  }
  await tool(['plan', 'pennant.png', '--format', 'json', '-o', 'plan.json']);
  writeFileSync(join(folder, 'rows.txt'), 'row 2 right edge pulls in\n');
}, 240_000);

afterAll(() => {
  if (folder !== '') rmSync(folder, { recursive: true, force: true });
});

function tool(words) {
  return runNode([TOOL, ...words], { cwd: folder, output: 'none' });
}

/** The commands of a block, lines that go on joined, comments and redirections taken off. */
function commandsOf({ text }) {
  return text
    .replace(/\n {2,}/g, ' ')
    .split('\n')
    .map((line) =>
      line
        .replace(/\s+#.*$/, '')
        .replace(/\s+>\s*\S+$/, '')
        .trim(),
    )
    .filter((line) => line !== '');
}

const commands = of('sh').flatMap((block) =>
  commandsOf(block).map((command) => ({ place: placeOf(block), command })),
);
const isSynopsis = (command) => command.includes('[');
const toolWords = (command) =>
  /^(?:npm run --silent halfhitch --|halfhitch) (.*)$/.exec(command)?.[1].split(' ');

describe('the documentation', () => {
  it('has only blocks that something here runs, reads or knows to be no code', () => {
    const known = ['sh', 'js', 'json', 'html', 'text'];
    expect(blocks.filter(({ language }) => !known.includes(language)).map(placeOf)).toEqual([]);
    expect(blocks.length).toBeGreaterThan(40);
  });

  it('links to pages and headings that are there', () => {
    const broken = [];
    for (const file of documentationFiles()) {
      const text = readFileSync(file, 'utf8').replace(/^```[\s\S]*?^```/gm, '');
      for (const [, link, image] of text.matchAll(/\]\(([^)\s]+)\)|<img src="([^"]+)"/g)) {
        const target = link ?? image;
        if (/^[a-z]+:/.test(target)) continue;
        const [path, heading] = target.split('#');
        const page = path === '' ? file : join(dirname(file), path);
        if (!existsSync(page)) broken.push(`${file}: ${target}`);
        else if (heading !== undefined && !headingsOf(page).includes(heading)) {
          broken.push(`${file}: ${target}`);
        }
      }
    }
    expect(broken).toEqual([]);
  });

  it('calls npm scripts and packages by their names', () => {
    const { scripts } = readJson(join(ROOT, 'package.json'));
    const names = PACKAGES.map((name) => readJson(join(packageFolder(name), 'package.json')).name);
    const unknown = commands.filter(({ command }) => {
      if (toolWords(command) !== undefined) return false;
      const script = /^npm (?:run )?(start|test|[\w:]+)(?: --.*)?$/.exec(command)?.[1];
      const install = /^npm install (?:--global )?(\S+)$/.exec(command)?.[1];
      return install === undefined ? scripts[script] === undefined : !names.includes(install);
    });
    expect(unknown).toEqual([]);
  });

  it('shows commands that run', { timeout: 240_000 }, async () => {
    const failed = [];
    // What several pages show is run once.
    const once = new Map(
      commands.map(({ place, command }) => [toolWords(command)?.join(' '), place]),
    );
    for (const [command, place] of once) {
      const words = command?.split(' ');
      if (words === undefined || isSynopsis(command)) continue;
      const { code, tail } = await tool(words);
      // 1 is an answer too: of a chart that does not knot out as drawn, or of mistakes found.
      if (code > 1) failed.push({ place, command, code, tail });
    }
    expect(failed).toEqual([]);
  });

  it('lists the options that each command has, all of them', async () => {
    for (const { place, command } of commands.filter(({ command }) => isSynopsis(command))) {
      const [name] = toolWords(command) ?? [];
      const help = (await tool([name, '--help'])).tail;
      const options = (text) => [...new Set(text.match(/--[a-z][a-z-]*/g))].sort();
      const had = options(help.slice(help.indexOf('Options:'))).filter((o) => o !== '--help');
      const short = /-o\b/.test(command) ? ['--output'] : [];
      expect([place, [...new Set([...options(command), ...short])].sort()]).toEqual([place, had]);
    }
  });

  it('shows pictures as our own renderers draw them, each on some page', async () => {
    expect(await checkDocPictures()).toEqual([]);
    const pages = documentationFiles().map((file) => readFileSync(file, 'utf8'));
    const unused = readdirSync(PICTURES).filter(
      (name) => !pages.some((text) => text.includes(`pictures/${name}"`)),
    );
    expect(unused).toEqual([]);
  });

  it('shows documents that are read', async () => {
    const { readChartDocument, readDiagonalDocument, readDiagonalPlan, readPlan } = await import(
      '@halfhitch/core'
    );
    const readers = {
      'halfhitch-chart': readChartDocument,
      'halfhitch-diagonal': readDiagonalDocument,
      'halfhitch-diagonal-plan': readDiagonalPlan,
      'halfhitch-plan': readPlan,
    };
    for (const block of of('json')) {
      const { format } = JSON.parse(block.text);
      if (!block.text.includes('…')) readers[format]?.(block.text);
    }
  });

  it('shows documents that fit their schemas, of every format', () => {
    const { Ajv2020 } = createRequire(join(packageFolder('core'), 'package.json'))(
      'ajv/dist/2020.js',
    );
    const schemas = join(packageFolder('core'), 'schema');
    const ajv = new Ajv2020({ strict: true });
    for (const file of readdirSync(schemas)) ajv.addSchema(readJson(join(schemas, file)));
    const shown = new Set();
    for (const block of of('json')) {
      const document = JSON.parse(block.text);
      if (!/^halfhitch-/.test(document.format) || block.text.includes('…')) continue;
      const name = `${document.format.replace('halfhitch-', '')}-${document.version}.schema.json`;
      const check = ajv.getSchema(name);
      expect([placeOf(block), check?.(document), check?.errors]).toEqual([
        placeOf(block),
        true,
        null,
      ]);
      shown.add(name);
    }
    // A picture that is wanted and a diagonal project are shown as text and told of in words.
    expect([...shown].sort()).toEqual(
      readdirSync(schemas).filter((name) => !/^(diagonal-picture-1|project-2)\./.test(name)),
    );
  });

  it('shows diagonal patterns and wanted pictures that are read', async () => {
    const { readDiagonalPicture, readDiagonalText } = await import('@halfhitch/core');
    const starting = (line) => of('text').filter(({ text }) => text.startsWith(line));
    const patterns = starting('pattern diagonal\n');
    const pictures = starting('picture diagonal\n');
    for (const { text } of patterns) readDiagonalText(text);
    for (const { text } of pictures) readDiagonalPicture(text);
    expect([patterns.length > 0, pictures.length > 0]).toEqual([true, true]);
  });

  it('shows charts and rows that are read', async () => {
    const { planAlpha, readSeen, readTextChart } = await import('@halfhitch/core');
    const drawn = of('text').filter(({ text }) => /^\S #[0-9a-f]{6}/m.test(text));
    const charts = drawn.filter(({ text }) => !/^(pattern|picture) diagonal$/m.test(text));
    const seen = charts.filter(({ text }) => text.includes('?'));
    let plan;
    for (const { text } of charts.filter((block) => !seen.includes(block))) {
      const { chart } = readTextChart(text);
      plan ??= planAlpha(chart);
    }
    for (const { text } of seen) readSeen(new TextEncoder().encode(text), 'rows.txt', plan);
    expect([seen.length > 0, charts.length > seen.length]).toEqual([true, true]);
  });

  it('shows programs that run', { timeout: 240_000 }, async () => {
    const failed = [];
    for (const block of of('js').filter((block) => !needsPage(block))) {
      const file = join(folder, 'program.mjs');
      writeFileSync(file, block.text);
      const { code, tail } = await runNode([file], { cwd: folder, output: 'none' });
      if (code !== 0) failed.push({ place: placeOf(block), tail });
    }
    expect(failed).toEqual([]);
  });
});

/** Names by which the headings of a page are linked to. */
function headingsOf(page) {
  return readFileSync(page, 'utf8')
    .split('\n')
    .filter((line) => /^#+ /.test(line))
    .map((line) =>
      line
        .replace(/^#+ /, '')
        .toLowerCase()
        .replace(/[^\p{L}\p{N} -]/gu, '')
        .replace(/ /g, '-'),
    );
}
