import { readFileSync, writeFileSync } from 'node:fs';
import {
  type DiagonalPicture,
  diagonalStripes,
  printDiagonalPicture,
  readPattern,
  simulateDiagonal,
} from '@halfhitch/core';
import { encode } from 'fast-png';
import { beforeAll, describe, expect, it } from 'vitest';
import { halfhitch, isPlainRefusal, useTool } from './support/halfhitch.js';

const { path } = useTool();
const COLOURS = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#e8702a', name: 'buoy orange' },
  { key: 'g', hex: '#4f7942', name: 'reed green' },
];
const stripes = simulateDiagonal(
  diagonalStripes({ strings: 9, colours: COLOURS, rows: 18 }),
).picture;

/** Four strings for three colours as wide as the work: one knot must differ, or more. */
const BANDS = `picture diagonal
b #1f6fb2 lake blue
o #e8702a buoy orange
g #4f7942 reed green

b b
 b
o o
 o
g g
`;

function shownBy(file: string): DiagonalPicture {
  const reading = readPattern(readFileSync(file), file);
  if (reading.kind !== 'diagonal') throw new Error('no diagonal pattern');
  return simulateDiagonal(reading.pattern).picture;
}

beforeAll(() => {
  writeFileSync(path('stripes.txt'), printDiagonalPicture(stripes));
  writeFileSync(path('bands.txt'), BANDS);
});

describe('solve', () => {
  it('writes a pattern that shows the picture', async () => {
    for (const out of [path('found.txt'), path('found.json')]) {
      const words = ['solve', path('stripes.txt'), '--repeat', '--output', out];
      const { code, stdout, stderr } = await halfhitch(words);
      expect([code, stderr]).toEqual([0, '']);
      expect(stdout).toMatch(/stripes\.txt: it can be knotted as drawn\.\n9 strings, 18 rows/);
      expect(shownBy(out).cells).toEqual(stripes.cells);
    }
  });

  it('tells what conflicts and offers the nearest, its differing knots marked', async () => {
    const { code, stdout } = await halfhitch(['solve', path('bands.txt')]);
    expect(code).toBe(1);
    expect(stdout).toContain('it cannot be knotted as drawn.');
    expect(stdout).toMatch(/These \d knots cannot all show their colours/);
    expect(stdout).toMatch(/in 2 knots \(no pattern is nearer\):\nrow \d/);
    expect(stdout.match(/!/g)).toHaveLength(2);
  });

  it('answers as JSON, the pattern with it', async () => {
    const { code, stdout } = await halfhitch(['solve', path('bands.txt'), '--json']);
    expect(code).toBe(1);
    const answer = JSON.parse(stdout) as Record<string, unknown>;
    expect(Object.keys(answer)).toEqual([
      ...['status', 'picture', 'wrong', 'atLeastWrong', 'conflict', 'tally', 'seconds'],
      ...['notices', 'pattern'],
    ]);
    expect(answer).toMatchObject({
      status: 'impossible',
      picture: { strings: 4, rows: 5, first: 1, colours: 3 },
      atLeastWrong: 2,
      conflict: { minimal: true },
      pattern: { format: 'halfhitch-diagonal' },
    });
    expect(answer['wrong']).toHaveLength(2);
  });

  it('takes knots that may differ, and ends well when they are enough', async () => {
    const few = await halfhitch(['solve', path('bands.txt'), '--at-most-wrong', '1']);
    expect(few.code).toBe(1);
    expect(few.stdout).toContain('cannot be knotted with so few as 1 knot different');
    const enough = await halfhitch(['solve', path('bands.txt'), '--at-most-wrong', '2', '-o', '-']);
    expect([enough.code, enough.stderr]).toEqual([0, '']);
    writeFileSync(path('near.txt'), enough.stdout);
    const shown = shownBy(path('near.txt')).cells;
    const wanted = [0, 0, 0, 255, 1, 1, 1, 255, 2, 2];
    expect([...shown].filter((colour, cell) => colour !== wanted[cell])).toHaveLength(2);
  });

  it('keeps to the colours and numbers of strings that are given', async () => {
    const words = ['solve', path('stripes.txt'), '--json', '--start', `${'?'.repeat(8)}o`];
    const { code, stdout } = await halfhitch([...words, '--most', 'b=3', '--fewest', 'g']);
    expect(code).toBe(0);
    const answer = JSON.parse(stdout) as {
      tally: { strings: unknown; fewestProven: boolean };
      pattern: { start: string };
    };
    expect(answer.pattern.start).toMatch(/o$/);
    expect(answer.tally.strings).toEqual(['b', 'o', 'g'].map((key) => ({ key, strings: 3 })));
    expect(answer.tally.fewestProven).toBe(true);
    const fewer = await halfhitch(['solve', path('stripes.txt'), '--most', 'b=2']);
    expect(fewer.code).toBe(1);
    expect(fewer.stdout).toContain('with so few strings of a colour');
  });

  it('reads a PNG, in which what is see-through may be any colour', async () => {
    const data = new Uint8Array(4 * 6 * 4);
    for (let at = 0; at < 24; at++) {
      const shade = (at >> 2) % 2 === 0 ? 0 : 200;
      data.set([shade, shade, shade, at % 5 === 4 ? 0 : 255], 4 * at);
    }
    writeFileSync(path('drawn.png'), encode({ width: 4, height: 6, data, channels: 4, depth: 8 }));
    const { code, stdout } = await halfhitch(['solve', path('drawn.png'), '--strings', '9']);
    expect(code).toBe(0);
    expect(stdout).toContain('9 strings, 6 rows');
    expect(stdout).toContain('see-through');
  });

  it('stops when its time is over, and tells the best it has', async () => {
    const noise = Array.from({ length: 60 }, (_, row) =>
      Array.from(
        { length: 30 - (row % 2) },
        (_, place) => 'bog'[(row * row * 7 + place * place * 3 + row * place) % 3],
      ).join(' '),
    );
    const legend = BANDS.split('\n').slice(0, 5).join('\n');
    const words = ['solve', '-', '--time', '0.5', '--at-most-wrong', '0', '--json'];
    const { code, stdout } = await halfhitch(words, { input: `${legend}\n${noise.join('\n')}\n` });
    const answer = JSON.parse(stdout) as { status: string; atLeastWrong: number };
    // A quick machine may prove it in time; what is said must agree all the same.
    expect(code).toBe({ solved: 0, impossible: 1, stopped: 3 }[answer.status]);
  });

  it('refuses what it cannot use', async () => {
    const refused = async (...words: string[]) => {
      const outcome = await halfhitch(['solve', ...words]);
      expect(isPlainRefusal(outcome)).toBe(true);
      return outcome.stderr;
    };
    expect(await refused(path('bands.txt'), '--strings', '6')).toContain('is for 4 strings');
    expect(await refused(path('bands.txt'), '--start', 'bxbb')).toContain('has the key "x"');
    expect(await refused(path('bands.txt'), '--repeat')).toContain('even number of rows');
    expect(await refused(path('bands.txt'), '--json', '-o', '-')).toContain('both');
  });
});
