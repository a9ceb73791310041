import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { ensureBuilt } from '../../../../scripts/lib/build-targets.mjs';
import { runProcess } from '../../../../scripts/lib/child-process.mjs';
import { packPackages } from '../../../../scripts/lib/packages.mjs';
import { test } from './bundle-page.js';
import { colourCount, pixelsOf, settled } from './stage.js';

/** A project elsewhere, into which npm has installed the packed packages. */
let elsewhere = '';

beforeAll(async () => {
  await ensureBuilt('libraries', 'elements');
  elsewhere = mkdtempSync(join(tmpdir(), 'halfhitch-elsewhere-'));
  const packed = await packPackages(join(elsewhere, 'packed'));
  const needed = packed.filter((file) =>
    /halfhitch-(core|geometry|simulator)-[\d.]+\.tgz$/.test(file),
  );
  expect(needed).toHaveLength(3);
  writeFileSync(
    join(elsewhere, 'package.json'),
    '{"name":"elsewhere","type":"module","private":true}',
  );
  const quiet = ['--prefer-offline', '--no-audit', '--no-fund', '--ignore-scripts'];
  const { code } = await runProcess('npm', ['install', ...quiet, ...needed], {
    cwd: elsewhere,
    output: 'on failure',
  });
  expect(code).toBe(0);
}, 240_000);

afterAll(() => {
  if (elsewhere !== '') rmSync(elsewhere, { recursive: true, force: true });
});

interface Installed {
  readonly version?: string;
  readonly dependencies?: Readonly<Record<string, Installed>>;
}

/** All places at which a package lies in a tree of `npm ls`. */
function versionsOf(name: string, tree: Installed): string[] {
  return Object.entries(tree.dependencies ?? {}).flatMap(([found, inside]) => [
    ...(found === name && inside.version !== undefined ? [inside.version] : []),
    ...versionsOf(name, inside),
  ]);
}

describe('the package, packed and installed elsewhere', () => {
  test('brings lit and three with it once, to be shared with the page', () => {
    const listed = spawnSync('npm', ['ls', '--all', '--json'], {
      cwd: elsewhere,
      encoding: 'utf8',
    });
    // npm fails when something is missing or of a version that is not asked for.
    expect(listed.status).toBe(0);
    const tree = JSON.parse(listed.stdout) as Installed;
    for (const name of ['lit', 'three', '@halfhitch/core']) {
      expect([name, new Set(versionsOf(name, tree)).size]).toEqual([name, 1]);
    }
    expect(readdirSync(join(elsewhere, 'node_modules', '@halfhitch')).sort()).toEqual([
      'core',
      'geometry',
      'simulator',
    ]);
    const simulator = join(elsewhere, 'node_modules', '@halfhitch', 'simulator');
    expect(readdirSync(simulator)).not.toContain('node_modules');
    const manifest = JSON.parse(readFileSync(join(simulator, 'package.json'), 'utf8')) as {
      readonly dependencies: object;
      readonly peerDependencies: object;
    };
    expect(Object.keys(manifest.peerDependencies).sort()).toEqual(['lit', 'three']);
    expect(Object.keys(manifest.dependencies).sort()).toEqual([
      '@halfhitch/core',
      '@halfhitch/geometry',
    ]);
  });

  test('draws pictures and makes lessons in Node, without a DOM', () => {
    const script = [
      "import { knotPicture } from '@halfhitch/simulator/picture';",
      "import { lessonList, lessonNamed } from '@halfhitch/simulator/lessons';",
      "const { pages } = lessonNamed('turn', { lang: 'de' });",
      "process.stdout.write([knotPicture().slice(0, 4), pages.length, lessonList().length].join(' '));",
    ].join('\n');
    const run = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
      cwd: elsewhere,
      encoding: 'utf8',
    });
    expect(run.stderr).toBe('');
    expect(run.stdout).toBe('<svg 3 4');
  });

  test('brings the bundle and the manifest', () => {
    const dist = join(elsewhere, 'node_modules', '@halfhitch', 'simulator', 'dist');
    expect(readdirSync(dist)).toContain('custom-elements.json');
    expect(readdirSync(join(dist, 'bundle'))).toEqual(
      expect.arrayContaining(['halfhitch.js', 'halfhitch-3d.js', 'third-party-licences.md']),
    );
  });

  test('is bundled by a bundler with three apart, and the page made so draws a knot', async ({
    browser,
  }) => {
    writeFileSync(join(elsewhere, 'entry.js'), "import '@halfhitch/simulator';\n");
    writeFileSync(
      join(elsewhere, 'index.html'),
      '<!doctype html><html lang="en"><title>Tarn Ellerby</title><link rel="icon" href="data:,"><script type="module" src="/entry.js"></script><halfhitch-knot kind="backward" position="1.5" style="inline-size:400px"></halfhitch-knot></html>',
    );
    const result = await build({ root: elsewhere, configFile: false, logLevel: 'silent' });
    const outputs = (Array.isArray(result) ? result : [result]).flatMap((one) =>
      'output' in one ? one.output : [],
    );
    const chunks = outputs.filter((output) => output.type === 'chunk');
    const entry = chunks.find(({ isEntry }) => isEntry);
    const three = chunks.filter(({ code }) => code.includes('WebGLRenderer'));
    expect(entry?.code).toContain('halfhitch-lesson');
    expect(three).toHaveLength(1);
    const atFirst = new Set<string>();
    const follow = (name: string): void => {
      if (atFirst.has(name)) return;
      atFirst.add(name);
      for (const next of chunks.find(({ fileName }) => fileName === name)?.imports ?? [])
        follow(next);
    };
    follow(entry?.fileName ?? '');
    expect(atFirst.has(three[0]?.fileName ?? '')).toBe(false);

    const server = createServer((request, response) => {
      const path = new URL(request.url ?? '/', 'http://localhost').pathname;
      response.setHeader('content-type', path === '/' ? 'text/html' : 'text/javascript');
      response.end(readFileSync(join(elsewhere, 'dist', path === '/' ? 'index.html' : path)));
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const page = await browser.newPage();
    try {
      const said: string[] = [];
      page.on('pageerror', (error) => said.push(error.message));
      page.on('console', (message) => {
        // three says so when a page has two copies of it.
        if (message.type() === 'error' || message.text().includes('Multiple instances')) {
          said.push(message.text());
        }
      });
      await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
      const canvas = page.locator('halfhitch-knot canvas');
      await canvas.waitFor();
      await settled(page);
      expect(colourCount(await pixelsOf(canvas))).toBeGreaterThan(60);
      expect(said).toEqual([]);
    } finally {
      await page.close();
      server.closeAllConnections();
      server.close();
    }
  }, 120_000);
});

describe('the bundle', () => {
  test('is small enough at first: 40 kB packed, and 160 kB for 3D with three', () => {
    const size = (name: string): number => {
      const file = fileURLToPath(new URL(`../../dist/bundle/${name}`, import.meta.url));
      return gzipSync(readFileSync(file), { level: 9 }).length;
    };
    expect(size('halfhitch.js')).toBeLessThan(40_000);
    expect(size('halfhitch-3d.js')).toBeLessThan(160_000);
  });
});
