import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { anyHostilePiece } from '../../../testing/hostile/pieces.js';
import { fuzzRuns } from '../../../testing/hostile/runs.js';
import { run } from '../src/run.js';
import { textOf, waveBand } from './support/charts.js';

const folder = mkdtempSync(join(tmpdir(), 'halfhitch-words-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const chart = join(folder, 'band.txt');
writeFileSync(chart, textOf(waveBand(4, 4, 2)));
const pattern = join(folder, 'chevrons.txt');
writeFileSync(
  pattern,
  'pattern diagonal\nb #1f6fb2 lake blue\no #e8742c buoy orange\n\nbobo\n\n\\/\n<\n\\/\n>\n',
);

/** Command lines that are right. None of them writes to a file, and none reads standard input. */
const LINES: readonly (readonly string[])[] = [
  ['check', chart, '--edge', 'wrapped', '--start', 'right', '--json'],
  ['check', pattern, '--order'],
  ['plan', chart, '--format', 'json'],
  ['plan', pattern, '--format', 'text'],
  ['trace', chart],
  ['cut', chart, '--diameter', '0.6', '--strands', '2', '--length', '150', '--margin', '10'],
  ['cut', chart, '--tex', '240', '--wrist', '160', '--swatch', '10,6,12,20', '--json'],
  ['cut', pattern, '--tails', '100', '--put-up', '8000', '--workable', '5000'],
  ['ease', chart, '--most', '3', '--may-mirror'],
  ['solve', pattern, '--time', '1', '--prefer', 'none', '--most', 'b=4', '--json'],
  ['solve', chart, '--strings', '5', '--first', '1', '--start', '?????', '--fewest', 'b'],
  ['diagnose', pattern, '--seen', pattern],
  ['verify', chart, '--chart', chart],
  ['help', 'cut'],
  ['--version'],
];

const anyChange = fc.record({
  what: fc.constantFrom('replace' as const, 'drop' as const, 'double' as const, 'insert' as const),
  at: fc.nat(),
  word: fc.oneof(
    anyHostilePiece,
    fc.constantFrom(...['--json', '--edge', '--most', '--swatch', '--nothing', '--', '']),
    fc.constantFrom(
      ...['1e999', '-5', '0', '1,2', '1,2,3,4,5', 'b=99999999', chart, pattern, folder],
    ),
  ),
});

const anyLine = fc
  .tuple(fc.constantFrom(...LINES), fc.array(anyChange, { minLength: 1, maxLength: 3 }))
  .map(([line, changes]) => {
    const words = [...line];
    for (const { what, at, word } of changes) {
      const i = at % Math.max(1, words.length);
      if (what === 'drop') words.splice(i, 1);
      else if (what === 'double') words.splice(i, 0, words[i] ?? '');
      else words.splice(i, what === 'replace' ? 1 : 0, word);
    }
    // Neither a place to write to nor standard input may come of a change.
    return words.filter((word) => !/^-o|^--output|^-$/.test(word));
  });

describe('the words of a command line', () => {
  it('however they are mixed up, end in an answer or in a plain refusal, and write no file', async () => {
    let told = '';
    let answered = '';
    const out = vi
      .spyOn(process.stdout, 'write')
      .mockImplementation((chunk, ...rest: unknown[]) => {
        answered += String(chunk);
        (rest.at(-1) as (() => void) | undefined)?.();
        return true;
      });
    const err = vi.spyOn(process.stderr, 'write').mockImplementation((chunk) => {
      told += String(chunk);
      return true;
    });
    const codes = new Map<number, number>();
    try {
      await fc.assert(
        fc.asyncProperty(anyLine, async (words) => {
          told = '';
          answered = '';
          const code = await run(words);
          codes.set(code, (codes.get(code) ?? 0) + 1);
          expect([0, 1, 2, 3]).toContain(code);
          expect(told).not.toMatch(/should not have happened|\n\s+at /);
          if (code === 2) expect(told).toMatch(/\S/);
          // Of a command line that cannot be used nothing is answered, but help that it lacked.
          else expect(answered + told).toMatch(/\S/);
        }),
        fuzzRuns(120),
      );
    } finally {
      out.mockRestore();
      err.mockRestore();
    }
    expect(codes.get(2) ?? 0).toBeGreaterThan(0);
    expect(readdirSync(folder).sort()).toEqual(['band.txt', 'chevrons.txt']);
  });
});
