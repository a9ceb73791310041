import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { pinnedPnpm } from '../../../scripts/lib/pnpm.mjs';
import { pngOf, waveBand } from './support/charts.js';
import { type Outcome, outcomeOf, useTool } from './support/halfhitch.js';

const { path } = useTool();
const PACKAGE = fileURLToPath(new URL('..', import.meta.url));
const OFFLINE = /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ETIMEDOUT|ECONNRESET|ENETUNREACH|ENOTCACHED/;

function run(program: string, words: readonly string[], cwd: string): Promise<Outcome> {
  // Words for npm from the run of the tests would lead it back to this repository.
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !/^npm_(?!config_registry)/i.test(name)),
  );
  return outcomeOf(spawn(program, words, { cwd, env, shell: process.platform === 'win32' }));
}

describe('the package', () => {
  it('works where it is installed from what is published', { timeout: 240_000 }, async (test) => {
    const packs = path('packs');
    const elsewhere = path('elsewhere');
    mkdirSync(packs);
    mkdirSync(elsewhere);
    const packed = await run(
      'npx',
      ['--yes', pinnedPnpm(), 'pack', '--pack-destination', packs],
      PACKAGE,
    );
    test.skip(OFFLINE.test(packed.stderr), 'pnpm could not be fetched');
    expect(packed.code, packed.stderr + packed.stdout).toBe(0);
    const [archive] = readdirSync(packs);
    writeFileSync(join(elsewhere, 'package.json'), '{"private": true}');
    const installed = await run(
      'npm',
      [
        'install',
        '--prefer-offline',
        '--no-audit',
        '--no-fund',
        '--ignore-scripts',
        join(packs, archive as string),
      ],
      elsewhere,
    );
    test.skip(OFFLINE.test(installed.stderr), 'the registry could not be reached');
    expect(installed.code, installed.stderr).toBe(0);
    writeFileSync(join(elsewhere, 'band.png'), pngOf(waveBand(6, 5, 3)));
    const tool = join(elsewhere, 'node_modules', '.bin', 'halfhitch');
    const checked = await run(tool, ['check', 'band.png', '--json'], elsewhere);
    expect(checked.code, checked.stderr).toBe(0);
    expect(JSON.parse(checked.stdout)).toMatchObject({ ok: true, knots: 30 });
    const drawn = await run(tool, ['render', 'band.png', '-o', 'out.png'], elsewhere);
    expect(drawn.code, drawn.stderr).toBe(0);
    expect(readdirSync(elsewhere)).toContain('out.png');
  });
});
