import { writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { textOf, waveBand } from './support/charts.js';
import { halfhitch, isPlainRefusal, useTool } from './support/halfhitch.js';

const { path } = useTool();
const band = waveBand(30, 12, 3);

beforeAll(() => writeFileSync(path('band.txt'), textOf(band)));

interface Answer {
  rows: number;
  columns: number;
  thread: { tex: number; diameter: number };
  size: { width: { mm: number }; length: { mm: number } };
  uncertainty: number;
  swatch: { diameter: number; residual: { width: number; length: number } } | null;
  strings: {
    string: string;
    role: string;
    knotsTied: number;
    parts: Record<string, number>;
    length: { mm: number; plusMinus: number };
    cut: number;
    joinedInRow: number | null;
  }[];
  totals: { pieces: number; putUps: number; length: { mm: number } }[];
  joins: { row: number; column: number }[];
}

async function cut(...words: string[]): Promise<Answer> {
  const outcome = await halfhitch(['cut', path('band.txt'), '--json', ...words]);
  expect(outcome.stderr).toBe('');
  expect(outcome.code).toBe(0);
  return JSON.parse(outcome.stdout) as Answer;
}

describe('cut', () => {
  it('lists every string with what its length is made of', async () => {
    const list = await cut('--diameter', '0.7');
    expect(list.strings).toHaveLength(12 + 3);
    expect(list.strings.reduce((sum, string) => sum + string.knotsTied, 0)).toBe(360);
    for (const string of list.strings) {
      const sum = Object.values(string.parts).reduce((a, b) => a + b, 0);
      expect(string.length.mm).toBeGreaterThanOrEqual(sum - 0.05);
      expect(string.cut).toBeGreaterThanOrEqual(string.length.mm);
      expect(string.length.plusMinus).toBeGreaterThan(0);
    }
  });

  it('scales with the thread, by Peirce for its tex', async () => {
    const fine = await cut('--tex', '60', '--tails', '0', '--margin', '0');
    const thick = await cut('--tex', '60', '--strands', '4', '--tails', '0', '--margin', '0');
    expect(fine.thread.diameter).toBeCloseTo(0.0374 * Math.sqrt(60), 2);
    for (const [i, string] of fine.strings.entries()) {
      expect((thick.strings[i]?.length.mm ?? 0) / string.length.mm).toBeCloseTo(2, 1);
    }
  });

  it('repeats the chart for a wrist, and joins leads that grow too long', async () => {
    const list = await cut('--wrist', '160', '--workable', '2000');
    expect(list.size.length.mm).toBeGreaterThan(165);
    expect(list.joins.length).toBeGreaterThan(0);
    expect(list.strings.filter(({ joinedInRow }) => joinedInRow !== null)).toHaveLength(
      list.joins.length,
    );
  });

  it('fits a swatch', async () => {
    const list = await cut('--swatch', '20,12,24,40');
    expect(list.size.width.mm).toBeCloseTo(24, 1);
    expect(list.size.length.mm).toBeCloseTo(60, 1);
    expect(list.swatch).not.toBeNull();
    expect(list.uncertainty).toBeLessThan((await cut()).uncertainty);
  });

  it('says it in words, with what it may be off by', async () => {
    const { stdout, code } = await halfhitch(['cut', path('band.txt')]);
    expect(code).toBe(0);
    expect(stdout).toMatch(/Knotted part: \d+ mm \(± \d+\) wide/);
    expect(stdout).toMatch(/12 of \d+ mm \(± \d+\)/);
    expect(stdout).toMatch(/L3: \d+ mm/);
    expect(stdout).toMatch(/put-up/);
    expect(stdout).toMatch(/small children/);
  });

  it.each([
    [['--tex', '0'], /outside what a thread can have/],
    [['--tex', 'fine'], /Give a number/],
    [['--swatch', '1,2'], /does not describe a swatch/],
    [['--length', '10', '--wrist', '150'], /Both a length and a wrist/],
    [['--tails', '-3'], /from 0 to 2000/],
  ])('refuses %j', async (words, message) => {
    const outcome = await halfhitch(['cut', path('band.txt'), ...words]);
    expect(outcome.code).toBe(2);
    expect(outcome.stderr).toMatch(message);
    isPlainRefusal(outcome);
  });
});
