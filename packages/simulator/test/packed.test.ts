import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt } from '../../../scripts/lib/build-targets.mjs';
import { packPackages } from '../../../scripts/lib/packages.mjs';

const PACKAGES = fileURLToPath(new URL('../../', import.meta.url));

/** A project elsewhere, with the packed packages in its node_modules and nothing of the workspace. */
let elsewhere = '';

function unpack(tarball: string, into: string): void {
  mkdirSync(into, { recursive: true });
  const run = spawnSync('tar', ['-xzf', tarball, '-C', into, '--strip-components=1']);
  if (run.status !== 0) throw new Error(String(run.stderr));
}

/** Puts what a packed package says it needs beside it, from where its sources have it. */
function installNeedsOf(name: string): void {
  const modules = join(elsewhere, 'node_modules');
  const manifest = readFileSync(join(modules, '@halfhitch', name, 'package.json'), 'utf8');
  const { dependencies = {} } = JSON.parse(manifest) as { dependencies?: Record<string, string> };
  for (const needed of Object.keys(dependencies)) {
    const target = join(modules, ...needed.split('/'));
    if (needed.startsWith('@halfhitch/') || existsSync(target)) continue;
    mkdirSync(dirname(target), { recursive: true });
    symlinkSync(realpathSync(join(PACKAGES, name, 'node_modules', needed)), target);
  }
}

beforeAll(async () => {
  await ensureBuilt('libraries', 'elements');
  elsewhere = mkdtempSync(join(tmpdir(), 'halfhitch-elsewhere-'));
  const packed = await packPackages(join(elsewhere, 'packed'));
  for (const name of ['core', 'geometry', 'simulator']) {
    const tarball = packed.find((file) =>
      new RegExp(`halfhitch-${name}-[\\d.]+\\.tgz$`).test(file),
    );
    if (tarball === undefined) throw new Error(`${name} was not packed.`);
    unpack(tarball, join(elsewhere, 'node_modules', '@halfhitch', name));
    installNeedsOf(name);
  }
  writeFileSync(join(elsewhere, 'package.json'), '{"type":"module","private":true}');
}, 240_000);

afterAll(() => {
  if (elsewhere !== '') rmSync(elsewhere, { recursive: true, force: true });
});

describe('the package, packed and installed elsewhere', () => {
  it('draws pictures and makes lessons in Node, without a DOM', () => {
    const script = [
      "import { knotPicture } from '@halfhitch/simulator/picture';",
      "import { lessonNamed } from '@halfhitch/simulator/lessons';",
      "const { pages } = lessonNamed('turn', { lang: 'de' });",
      "process.stdout.write(knotPicture().slice(0, 4) + ' ' + pages.length);",
    ].join('\n');
    const run = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
      cwd: elsewhere,
      encoding: 'utf8',
    });
    expect(run.stderr).toBe('');
    expect(run.stdout).toBe('<svg 3');
  });

  it('brings the bundle and the manifest', () => {
    const dist = join(elsewhere, 'node_modules', '@halfhitch', 'simulator', 'dist');
    expect(readdirSync(dist)).toContain('custom-elements.json');
    expect(readdirSync(join(dist, 'bundle'))).toEqual(
      expect.arrayContaining(['halfhitch.js', 'halfhitch-3d.js', 'third-party-licences.md']),
    );
  });

  it('is bundled by a bundler, with three in a file of its own that is not loaded at first', async () => {
    writeFileSync(join(elsewhere, 'entry.js'), "import '@halfhitch/simulator';\n");
    const result = await build({
      root: elsewhere,
      configFile: false,
      logLevel: 'silent',
      build: { write: false, rolldownOptions: { input: join(elsewhere, 'entry.js') } },
    });
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
  }, 120_000);
});

describe('the bundle', () => {
  it('is small enough at first: 40 kB packed', () => {
    const file = fileURLToPath(new URL('../dist/bundle/halfhitch.js', import.meta.url));
    expect(gzipSync(readFileSync(file), { level: 9 }).length).toBeLessThan(40_000);
  });
});
