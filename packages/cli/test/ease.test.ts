import { writeFileSync } from 'node:fs';
import { type Chart, effortOf } from '@halfhitch/core';
import { beforeAll, describe, expect, it } from 'vitest';
import { textOf, waveBand } from './support/charts.js';
import { halfhitch, isPlainRefusal, useTool } from './support/halfhitch.js';

const { path } = useTool();
const wave = waveBand(24, 12, 3);
const cells = wave.cells.map((cell, at) => (at % 37 === 5 ? (cell + 1) % 3 : cell));
const strewn: Chart = { ...wave, cells };

beforeAll(() => writeFileSync(path('strewn.txt'), textOf(strewn)));

interface Answer {
  ok: boolean;
  effort: Record<string, number>;
  suggestions: {
    kind: string;
    start: 'left' | 'right';
    cells: { row: number; column: number; from: string; to: string }[];
    saves: Record<string, number>;
    message: string;
  }[];
  ways: { start: string; mirroring: string; state: string; effort: Record<string, number> }[];
}

async function ease(...words: string[]): Promise<Answer> {
  const outcome = await halfhitch(['ease', path('strewn.txt'), '--json', ...words]);
  expect(outcome.stderr).toBe('');
  expect(outcome.code).toBe(0);
  return JSON.parse(outcome.stdout) as Answer;
}

describe('ease', () => {
  it('gives suggestions that save what they say', async () => {
    const { ok, effort, suggestions } = await ease();
    expect(ok).toBe(true);
    expect(suggestions.length).toBeGreaterThan(3);
    const keys = strewn.colours.map(({ key }) => key);
    for (const { start, cells: edits, saves, message } of suggestions) {
      const changed = strewn.cells.slice();
      for (const { row, column, from, to } of edits) {
        const at = (row - 1) * strewn.columns + column - 1;
        expect(keys[changed[at] as number]).toBe(from);
        changed[at] = keys.indexOf(to);
      }
      const after = effortOf({ ...strewn, cells: changed }, { edge: 'straight', start });
      expect(saves['changes']).toBe((effort['changes'] ?? 0) - after.effort.changes);
      expect(message).toMatch(/Saves|alone in its colour/);
    }
  });

  it('lists the ways to start, the best first', async () => {
    expect((await ease()).ways).toHaveLength(2);
    const { ways } = await ease('--may-mirror');
    expect(ways).toHaveLength(8);
    const changes = ways.map(({ effort }) => effort['changes'] ?? 0);
    expect(changes).toEqual([...changes].sort((one, other) => one - other));
    for (const { state } of ways) expect(state).toBe('proven');
  });

  it('says it in words', async () => {
    const { stdout, code } = await halfhitch(['ease', path('strewn.txt'), '--most', '2']);
    expect(code).toBe(0);
    expect(stdout).toMatch(/colour changes, \d+ floats of \d+ knots together/);
    expect(stdout).toMatch(/ {2}.*Saves \d+ colour changes/);
    expect(stdout).toMatch(/from the left, as drawn \(as now\)/);
  });

  it('refuses a number that is none', async () => {
    const outcome = await halfhitch(['ease', path('strewn.txt'), '--most', '0']);
    expect(outcome.code).toBe(2);
    expect(outcome.stderr).toMatch(/from 1 to 100/);
    isPlainRefusal(outcome);
  });
});
