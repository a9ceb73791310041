import { readFileSync, writeFileSync } from 'node:fs';
import { printChartDocument } from '@halfhitch/core';
import { beforeAll, describe, expect, it } from 'vitest';
import { pngOf, textOf, waveBand } from './support/charts.js';
import { halfhitch, isPlainRefusal, useTool } from './support/halfhitch.js';

const { folder, path } = useTool();
const band = waveBand(60, 40, 6);

beforeAll(() => {
  writeFileSync(path('band.png'), pngOf(band));
  writeFileSync(path('band.txt'), textOf(band));
  writeFileSync(path('band.json'), printChartDocument(band));
});

interface Report {
  ok: boolean;
  chart: { rows: number; columns: number; colours: number };
  knots: number;
  halfHitches: number;
  changes: Record<string, number>;
  findings: {
    grade: string;
    code: string;
    row: number | null;
    column: number | null;
    message: string;
  }[];
}

async function report(words: string[], options = {}): Promise<Report> {
  const { stdout, stderr } = await halfhitch([...words, '--json'], options);
  expect(stderr).toBe('');
  expect(stdout.endsWith('\n')).toBe(true);
  return JSON.parse(stdout) as Report;
}

describe('check', () => {
  it('answers with the keys and in the order that are promised', async () => {
    const outcome = await halfhitch(['check', path('band.png'), '--json']);
    expect(outcome.code).toBe(0);
    const found = JSON.parse(outcome.stdout) as Report;
    expect(Object.keys(found)).toEqual([
      'ok',
      'chart',
      'knots',
      'halfHitches',
      'changes',
      'findings',
    ]);
    expect(Object.keys(found.chart)).toEqual(['rows', 'columns', 'colours']);
    expect(Object.keys(found.changes)).toEqual([
      'withinRow',
      'afterFirstKnot',
      'lastKnot',
      'turn',
      'start',
    ]);
    for (const finding of found.findings) {
      expect(Object.keys(finding)).toEqual(['grade', 'code', 'row', 'column', 'message']);
    }
    expect(found).toMatchObject({
      ok: true,
      chart: { rows: 60, columns: 40, colours: 6 },
      knots: 2400,
      halfHitches: 4800,
    });
  });

  it('counts the changes that are drawn', async () => {
    // Counted here from the drawing alone: every two neighbours along the lead's way that differ.
    const { rows, columns, cells } = band;
    const way: number[] = [];
    for (let row = 0; row < rows; row++) {
      const line = [...cells.subarray(row * columns, (row + 1) * columns)];
      way.push(...(row % 2 === 0 ? line : line.reverse()));
    }
    const counted = { withinRow: 0, afterFirstKnot: 0, lastKnot: 0, turn: 0, start: 6 };
    for (let i = 1; i < way.length; i++) {
      if (way[i] === way[i - 1]) continue;
      const order = i % columns;
      if (order === 0) counted.turn++;
      else if (order === columns - 1) counted.lastKnot++;
      else if (order === 1) counted.afterFirstKnot++;
      else counted.withinRow++;
    }
    expect((await report(['check', path('band.png')])).changes).toEqual(counted);
  });

  it('answers alike for the same chart as picture, text, document and standard input', async () => {
    const asPicture = await report(['check', path('band.png')]);
    for (const name of ['band.txt', 'band.json']) {
      expect(await report(['check', path(name)])).toEqual(asPicture);
    }
    const piped = await report(['check', '-'], { input: readFileSync(path('band.png')) });
    expect(piped).toEqual(asPicture);
  });

  it('keeps to the edge technique and the side asked for', async () => {
    const text = await halfhitch([
      'plan',
      path('band.txt'),
      '--edge',
      'wrapped',
      '--start',
      'right',
    ]);
    expect(text.stdout).toContain('wrapped edges');
    expect(text.stdout).toContain('Row 1, from right to left');
    for (const edge of ['straight', 'wrapped']) {
      for (const start of ['left', 'right']) {
        const found = await report(['check', path('band.png'), '--edge', edge, '--start', start]);
        expect(found.ok).toBe(true);
      }
    }
  });

  it('says in words what it found', async () => {
    const { stdout, code } = await halfhitch(['check', 'band.png'], { cwd: folder });
    expect(code).toBe(0);
    expect(stdout).toMatch(/^band\.png: it knots out as drawn\.\n60 rows, 40 columns, 6 colours; /);
    expect(stdout).toMatch(/^Weak, row 1, column \d+: /m);
  });

  it('tells what the reader of a picture did as notes', async () => {
    const { encode } = await import('fast-png');
    // One pixel is half transparent.
    const data = Uint8Array.from([31, 95, 153, 255, 242, 239, 230, 128]);
    writeFileSync(path('alpha.png'), encode({ width: 2, height: 1, data, channels: 4, depth: 8 }));
    const outcome = await halfhitch(['check', path('alpha.png'), '--json']);
    const found = JSON.parse(outcome.stdout) as Report;
    expect(outcome.code).toBe(0);
    expect(found.findings[0]).toMatchObject({ grade: 'note', row: null, column: null });
    expect(found.findings[0]?.message).toMatch(/see-through/);
    const text = await halfhitch(['check', path('alpha.png')]);
    expect(text.stdout).toMatch(/^Note: .*see-through/m);
  });

  it('ends with 1 for a chart whose own knots do not knot it', async () => {
    // The last knot of row 1 is an ordinary one: the lead ends outside the edge string.
    const wrong = { ...waveBand(2, 3, 1), knots: Uint8Array.from([3, 0, 0, 3, 1, 2]) };
    writeFileSync(path('wrong.json'), printChartDocument(wrong));
    const outcome = await halfhitch(['check', path('wrong.json'), '--json']);
    expect(outcome.code).toBe(1);
    const found = JSON.parse(outcome.stdout) as Report;
    expect(found.ok).toBe(false);
    expect(found.findings).toContainEqual(
      expect.objectContaining({ grade: 'wrong', row: expect.any(Number) }),
    );
    const plan = await halfhitch(['plan', path('wrong.json')]);
    expect(plan.code).toBe(1);
    expect(plan.stderr).toMatch(/^halfhitch: .*wrong\.json: it does not knot out as drawn\.\n/);
    const trace = await halfhitch(['trace', path('wrong.json')]);
    expect(trace.code).toBe(1);
    expect(trace.stderr).not.toMatch(/\n\s+at /);
  });
});

describe('what cannot be used', () => {
  it('is refused in one line that names the file, the place and the remedy', async () => {
    writeFileSync(path('bad.txt'), 'a = #1f5f99 lake blue\n\naaa\naxa\n');
    const outcome = await halfhitch(['check', 'bad.txt'], { cwd: folder });
    expect(isPlainRefusal(outcome)).toBe(true);
    expect(outcome.stderr).toMatch(/^halfhitch: bad\.txt, line 4.*"x"/);
  });

  it.each([
    ['a missing file', ['check', 'none.png'], /none\.png: There is no such file\. Check/],
    ['a folder', ['check', '.'], /This is a folder\. Name a file/],
    ['a name under a file', ['check', 'band.png/x'], /There is no such file/],
    ['an empty file', ['check', 'empty'], /empty: The file is empty/],
    ['a missing argument', ['check'], /missing required argument/],
    ['an unknown option', ['check', 'band.png', '--fast'], /unknown option '--fast'/],
    ['an unknown edge', ['check', 'band.png', '--edge', 'round'], /straight, wrapped/],
    ['an unknown side', ['check', 'band.png', '--start', 'top'], /left, right/],
    ['an unknown command', ['knit', 'band.png'], /unknown command 'knit'/],
    ['too much', ['check', 'band.png', 'band.txt'], /too many arguments/],
    ['a render without output', ['render', 'band.png'], /'-o, --output <file>' not specified/],
    ['an unknown ending', ['render', 'band.png', '-o', 'x.jpg'], /x\.jpg: The ending ".jpg"/],
    ['no ending', ['render', 'band.png', '-o', 'x'], /has no ending/],
    ['no such folder', ['plan', 'band.png', '-o', 'no/x.txt'], /The folder does not exist/],
    ['a folder as output', ['plan', 'band.png', '-o', '.'], /This is a folder/],
    ['verify without a chart', ['verify', 'band.json'], /'-c, --chart <file>' not specified/],
    ['a chart as a plan', ['verify', 'band.json', '--chart', 'band.png'], /band\.json/],
    ['standard input twice', ['verify', '-', '--chart', '-'], /cannot both come from/],
    ['nothing at all', [], /Usage: halfhitch/],
  ])('%s', async (_, words, says) => {
    writeFileSync(path('empty'), '');
    const outcome = await halfhitch(words, { cwd: folder });
    expect(outcome.code).toBe(2);
    expect(outcome.stdout).toBe('');
    expect(outcome.stderr).toMatch(says);
    expect(outcome.stderr).not.toMatch(/\n\s+at |should not have happened/);
  });

  it('keeps control characters of a name out of the terminal', async () => {
    const { stderr } = await halfhitch(['check', 'a\u001b[31mb.png'], { cwd: folder });
    expect(stderr).not.toContain('\u001b');
  });
});

describe('help and version', () => {
  it.each([[['--help']], [['-h']], [['help', 'check']], [['check', '--help']]])(
    '%j ends with 0',
    async (words) => {
      const outcome = await halfhitch(words);
      expect(outcome.code).toBe(0);
      expect(outcome.stdout).toMatch(/^Usage: halfhitch/);
      expect(outcome.stderr).toBe('');
    },
  );

  it('prints the version of its package', async () => {
    const file = new URL('../package.json', import.meta.url);
    const { version } = JSON.parse(readFileSync(file, 'utf8')) as { version: string };
    expect((await halfhitch(['--version'])).stdout).toBe(`${version}\n`);
  });
});
