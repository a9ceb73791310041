import { readFileSync, writeFileSync } from 'node:fs';
import {
  chevrons,
  type DiagonalPattern,
  makeDiagonalMistakes,
  printDiagonalDocument,
  printDiagonalPicture,
  printDiagonalText,
  simulateDiagonal,
} from '@halfhitch/core';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { textOf, waveBand } from './support/charts.js';
import { halfhitch, isPlainRefusal, useTool } from './support/halfhitch.js';

const { folder, path } = useTool();

const COLOURS = [
  { key: 'b', hex: '#1f5f99', name: 'lake blue' },
  { key: 'o', hex: '#e2711d', name: 'buoy orange' },
  { key: 'c', hex: '#f2efe6', name: 'chalk' },
];
const pennant: DiagonalPattern = chevrons({ strings: 8, colours: COLOURS, rows: 12 });

beforeAll(() => {
  writeFileSync(path('pennant.txt'), printDiagonalText(pennant));
  writeFileSync(path('pennant.json'), printDiagonalDocument(pennant));
  writeFileSync(path('picture.txt'), printDiagonalPicture(simulateDiagonal(pennant).picture));
  writeFileSync(path('band.txt'), textOf(waveBand(4, 5, 2)));
});

const run = (...words: string[]) => halfhitch(words, { cwd: folder });

describe('check, of a diagonal pattern', () => {
  it('answers with the keys and in the order that are promised', async () => {
    const { code, stdout, stderr } = await run('check', 'pennant.txt', '--order', '--json');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const found = JSON.parse(stdout);
    expect(Object.keys(found)).toEqual([
      'ok',
      'pattern',
      'knots',
      'halfHitches',
      'kinds',
      'repeat',
      'order',
      'findings',
    ]);
    expect(found.pattern).toEqual({ strings: 8, rows: 12, first: 1, colours: 3 });
    expect(Object.keys(found.kinds)).toEqual([
      'forward',
      'backward',
      'forward-backward',
      'backward-forward',
    ]);
    expect(Object.keys(found.repeat)).toEqual([
      'sidesClose',
      'rowsApart',
      'permutation',
      'cycles',
      'order',
      'coloursCloseAfter',
      'knotsRepeatRows',
      'stringsRepeatRows',
      'smallestRepeatRows',
      'shiftedRepeat',
    ]);
    const { order } = simulateDiagonal(pennant);
    const ids = (row: number) =>
      [...order.slice(8 * row, 8 * row + 8)].map((string) => `S${string + 1}`);
    expect(found.order).toEqual(Array.from({ length: 13 }, (_, row) => ids(row)));
    const after = ids(12);
    expect(found.repeat.permutation).toEqual(ids(0).map((id) => after.indexOf(id) + 1));
  });

  it('says the same in words, and of the document as of the text', async () => {
    const [text, document] = await Promise.all([
      run('check', 'pennant.txt', '--order'),
      run('check', 'pennant.json', '--order'),
    ]);
    expect(text.code).toBe(0);
    expect(document.stdout.replace('.json', '.txt')).toBe(text.stdout);
    expect(text.stdout).toMatch(
      /^pennant\.txt: it knots out as drawn\.\nA diagonal pattern: 8 str/,
    );
    expect(text.stdout).toMatch(/^ {2}after row 12: S\d/m);
    expect(text.stdout).toMatch(/What is seen begins anew after /);
  });
});

describe('plan and verify, of a diagonal pattern', () => {
  it('go round: what is planned is verified, against the pattern and against its picture', async () => {
    expect(await run('plan', 'pennant.txt', '-f', 'json', '-o', 'plan.json')).toMatchObject({
      code: 0,
      stdout: '',
      stderr: '',
    });
    for (const chart of ['pennant.json', 'picture.txt']) {
      const { code, stdout } = await run('verify', 'plan.json', '--chart', chart, '--json');
      expect(code).toBe(0);
      const found = JSON.parse(stdout);
      expect(found).toMatchObject({ ok: true, knots: 42, halfHitches: 84, order: null });
      expect(found.repeat === null).toBe(chart === 'picture.txt');
    }
    const changed = readFileSync(path('plan.json'), 'utf8').replace(/^ *\{"do": "knot".*,\n/m, '');
    expect(changed).not.toBe(readFileSync(path('plan.json'), 'utf8'));
    writeFileSync(path('changed.json'), changed);
    const broken = await run('verify', 'changed.json', '--chart', 'pennant.txt', '--json');
    expect(broken.code).toBe(1);
    const [first] = JSON.parse(broken.stdout).findings;
    expect(Object.keys(first)).toEqual(['grade', 'code', 'row', 'place', 'slot', 'message']);
    expect(first).toMatchObject({ grade: 'wrong', row: 1 });
  });

  it('writes the instructions as text and as a page', async () => {
    const text = await run('plan', 'pennant.txt');
    expect(text.code).toBe(0);
    expect(text.stdout).toContain('Row 12, slots 2-3 to 6-7');
    const page = await run('plan', 'pennant.txt', '-f', 'html');
    expect(page.stdout).toMatch(/^<!DOCTYPE html>/);
  });
});

describe('trace, render and cut, of a diagonal pattern', () => {
  it('traces every knot', async () => {
    const { code, stdout } = await run('trace', 'pennant.json');
    expect(code).toBe(0);
    const lines = stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(lines).toHaveLength(42);
    expect(Object.keys(lines[0])).toEqual([
      'row',
      'place',
      'slot',
      'kind',
      'tying',
      'held',
      'colour',
      'front',
    ]);
    const { order } = simulateDiagonal(pennant);
    expect(lines.at(-1).front).toEqual([...order.slice(96)].map((string) => `S${string + 1}`));
  });

  it('draws it as SVG and as PNG', async () => {
    expect((await run('render', 'pennant.txt', '-o', 'out.svg')).code).toBe(0);
    const svg = readFileSync(path('out.svg'), 'utf8');
    expect(svg.match(/data-row="/g)).toHaveLength(42);
    expect((await run('render', 'pennant.txt', '-o', 'out.png')).code).toBe(0);
    expect([...readFileSync(path('out.png')).subarray(1, 4)]).toEqual([0x50, 0x4e, 0x47]);
  });

  it('says what to cut for each string', async () => {
    const { code, stdout } = await run('cut', 'pennant.txt', '--json', '--length', '150');
    expect(code).toBe(0);
    const list = JSON.parse(stdout);
    expect(Object.keys(list)).toEqual([
      'rows',
      'repeats',
      'coloursClose',
      'thread',
      'size',
      'uncertainty',
      'swatch',
      'strings',
      'totals',
      'swaps',
      'putUp',
    ]);
    expect(Object.keys(list.strings[0])).toEqual([
      'string',
      'slot',
      'colour',
      'name',
      'knotsTied',
      'knotsHeld',
      'parts',
      'length',
      'cut',
    ]);
    expect(list.strings).toHaveLength(8);
    const text = await run('cut', 'pennant.txt');
    expect(text.stdout).toMatch(/^ {2}S8: \d+ mm \(± \d+\), /m);
  });
});

describe('diagnose, of a diagonal piece', () => {
  it('finds a mistake from its colours, and says how to go on', async () => {
    const mistake = { kind: 'missing-knot', row: 3, place: 1 } as const;
    const made = makeDiagonalMistakes(pennant, [mistake], { rows: 8 }).seen;
    const input = printDiagonalPicture(made);
    const { code, stdout } = await halfhitch(['diagnose', 'pennant.txt', '--seen', '-'], {
      cwd: folder,
      input,
    });
    expect(code).toBe(1);
    expect(stdout).toContain('The knot in row 4 at slots 4-5 is left out.');
    expect(stdout).toMatch(/Undo \d+ knots, those tied last first, back to row 4 at slots 4-5/);
    expect(stdout).toContain(
      'Left as it is and tied on as the pattern has it, 1 knot shows another',
    );
    await run('plan', 'pennant.txt', '-f', 'json', '-o', 'plan.json');
    const json = await halfhitch(['diagnose', 'plan.json', '--seen', '-', '--json'], {
      cwd: folder,
      input,
    });
    const answer = JSON.parse(json.stdout);
    expect(Object.keys(answer)).toEqual([
      'ok',
      'rows',
      'strings',
      'differing',
      'complete',
      'explanations',
    ]);
    const [first] = answer.explanations;
    expect(Object.keys(first)).toEqual([
      'mistakes',
      'unexplained',
      'likelihood',
      'alike',
      'question',
      'alternatives',
    ]);
    const [alternative] = first.alternatives;
    expect(Object.keys(alternative)).toEqual([
      'likelihood',
      'mistakes',
      'differing',
      'orderBack',
      'effect',
      'ways',
    ]);
    expect(alternative.mistakes[0]).toMatchObject({ kind: 'missing-knot', row: 4, place: 2 });
    expect(Object.keys(alternative.ways[0])).toEqual([
      'way',
      'row',
      'place',
      'tied',
      'slots',
      'knots',
      'differing',
      'message',
    ]);
  });

  it('ends with 0 when nothing differs', async () => {
    const { code, stdout } = await run('diagnose', 'pennant.json', '--seen', 'picture.txt');
    expect(code).toBe(0);
    expect(stdout).toContain('Nothing differs');
  });
});

describe('what does not go with a diagonal pattern', () => {
  it.each([
    ['an edge technique', ['check', 'pennant.txt', '--edge', 'straight'], /--edge is for charts/],
    ['ease', ['ease', 'pennant.txt'], /pennant\.txt: This is a diagonal pattern, and ease is for/],
    ['a picture as a pattern', ['check', 'picture.txt'], /picture\.txt.*picture wanted/],
    ['the order of a chart', ['check', 'band.txt', '--order'], /--order is for diagonal patterns/],
    [
      'a chart as what was seen',
      ['diagnose', 'pennant.txt', '--seen', 'band.txt'],
      /band\.txt: This is a chart/,
    ],
    ['a pattern as a plan', ['verify', 'pennant.json', '--chart', 'pennant.txt'], /pennant\.json/],
  ])('%s is refused in one line', async (_, words, says) => {
    const outcome = await run(...words);
    expect(isPlainRefusal(outcome), JSON.stringify(outcome)).toBe(true);
    expect(outcome.stderr).toMatch(says);
  });

  it('ends in an answer or a refusal, whatever the text', async () => {
    const lines = printDiagonalText(pennant).split('\n');
    const commands = ['check', 'trace', 'cut', 'diagnose'] as const;
    await fc.assert(
      fc.asyncProperty(
        fc.nat(lines.length - 1),
        fc.oneof(fc.constantFrom('', '\\\\\\', 'first 2', 'bbb', '? . .'), fc.string()),
        fc.constantFrom(...commands),
        async (at, line, command) => {
          const input = lines.map((one, i) => (i === at ? line : one)).join('\n');
          const more = command === 'diagnose' ? ['--seen', 'picture.txt'] : [];
          const outcome = await halfhitch([command, '-', ...more], { cwd: folder, input });
          const answered = [0, 1].includes(outcome.code ?? 9) && outcome.stderr === '';
          expect(answered || isPlainRefusal(outcome), JSON.stringify(outcome)).toBe(true);
        },
      ),
      { numRuns: 3 },
    );
  }, 60_000);
});
