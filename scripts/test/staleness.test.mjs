import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { fingerprint, isFresh, writeStamp } from '../lib/fingerprint.mjs';
import { withLock } from '../lib/run-lock.mjs';

let folder;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfhitch-scripts-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('a fingerprint', () => {
  const sources = () => join(folder, 'src');
  const take = () => fingerprint([sources(), join(folder, 'missing.json')], folder);
  beforeEach(() => {
    mkdirSync(join(sources(), 'deep'), { recursive: true });
    writeFileSync(join(sources(), 'deep', 'a.ts'), 'a');
    utimesSync(join(sources(), 'deep', 'a.ts'), 1, 1);
  });

  test('stays while nothing changes', () => expect(take()).toBe(take()));

  test.each([
    ['a file is written to', () => writeFileSync(join(sources(), 'deep', 'a.ts'), 'ab')],
    [
      'a file is saved with the same size',
      () => writeFileSync(join(sources(), 'deep', 'a.ts'), 'b'),
    ],
    ['a file is added', () => writeFileSync(join(sources(), 'b.ts'), '')],
    ['a file is removed', () => rmSync(join(sources(), 'deep', 'a.ts'))],
    ['a file that was missing comes', () => writeFileSync(join(folder, 'missing.json'), '')],
  ])('changes when %s', (_, change) => {
    const before = take();
    change();
    expect(take()).not.toBe(before);
  });

  test('is fresh only with its stamp and its outputs', () => {
    const stamp = join(folder, 'cache', 'stamp');
    expect(isFresh(stamp, 'x')).toBe(false);
    writeStamp(stamp, 'x');
    expect(isFresh(stamp, 'x')).toBe(true);
    expect(isFresh(stamp, 'y')).toBe(false);
    expect(isFresh(stamp, 'x', [join(folder, 'gone.js')])).toBe(false);
  });
});

describe('the lock', () => {
  const lock = () => join(folder, 'lock');

  test('lets one at a time through, and all in the end', async () => {
    let inside = 0;
    let most = 0;
    const work = async () => {
      inside += 1;
      most = Math.max(most, inside);
      await new Promise((resolve) => setTimeout(resolve, 5));
      inside -= 1;
    };
    await Promise.all(Array.from({ length: 5 }, () => withLock(work, lock())));
    expect(most).toBe(1);
    expect(existsSync(lock())).toBe(false);
  });

  test('is let go when the work fails', async () => {
    await expect(withLock(() => Promise.reject(new Error('no')), lock())).rejects.toThrow('no');
    expect(existsSync(lock())).toBe(false);
  });

  test('is taken over from a run that was killed', async () => {
    const child = spawn(process.execPath, ['-e', '']);
    await once(child, 'exit');
    writeFileSync(lock(), String(child.pid));
    expect(await withLock(async () => 'done', lock())).toBe('done');
  });

  test('is taken over when its holder gave no sign of life for long', async () => {
    writeFileSync(lock(), String(process.pid));
    utimesSync(lock(), 1, 1);
    expect(await withLock(async () => 'done', lock())).toBe('done');
  });
});
