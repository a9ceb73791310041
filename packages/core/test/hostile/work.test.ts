import { afterAll, describe, expect, it } from 'vitest';
import { WorkCounter } from '../../../../testing/hostile/work.js';
import {
  InputError,
  planAlpha,
  readPatternOrPicture,
  readPlan,
  readSeen,
} from '../../src/index.js';
import { drawn } from '../support/charts.js';
import { pngOf } from '../support/write-png.js';

const counter = new WorkCounter();
afterAll(() => counter.close());

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const plan = planAlpha(drawn('ab', 'ba'));

function tried(read: () => unknown): void {
  try {
    read();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
  }
}

const pattern = (bytes: Uint8Array) => tried(() => readPatternOrPicture(bytes, ''));
const seen = (bytes: Uint8Array) => tried(() => readSeen(bytes, '', plan));
const steps = (bytes: Uint8Array) => tried(() => readPlan(new TextDecoder().decode(bytes)));

const IHDR = ['IHDR', Uint8Array.of(0, 0, 0, 9, 0, 0, 0, 9, 8, 0, 0, 0, 0)] as const;
const CHART = '{"format": "halfhitch-chart", "version": 1';
const DIAGONAL = 'pattern diagonal\na #000\n\naaaa\n\n';

/** Files that grow with a number, made to cost a careless reader the square of it, or more. */
const GROWING: Record<string, readonly [(n: number) => Uint8Array, (bytes: Uint8Array) => void]> = {
  'one long line': [(n) => utf8('a'.repeat(n)), pattern],
  'one line of blanks': [(n) => utf8(`a #000\n\n${' '.repeat(n)}a`), pattern],
  'blank lines': [(n) => utf8(`a #000\n${'\n'.repeat(n)}a`), pattern],
  'lines ended in three ways': [(n) => utf8('a\r\nb\rc\n'.repeat(n)), pattern],
  'a legend of many lines': [(n) => utf8(`${'a #000 x\n'.repeat(n)}\naa`), pattern],
  'a legend of nothing but marks': [(n) => utf8(`${'#='.repeat(n)}\n\naa`), pattern],
  'colons and equal signs': [(n) => utf8(`a ${':='.repeat(n)} #000\n\na`), pattern],
  'rows of other widths': [(n) => utf8(`a #000\n\n${'aa\n'.repeat(n)}a\n`), pattern],
  'marks laid apart': [(n) => utf8(`${DIAGONAL}${'\\ '.repeat(n)}`), pattern],
  'many rows of a lattice': [(n) => utf8(`${DIAGONAL}${'\\\\\n\\\n'.repeat(n)}`), pattern],
  'combining marks': [(n) => utf8(`a #000 ${'\u0301'.repeat(n)}\n\na`), pattern],
  'pairs of surrogates': [(n) => utf8(`a #000 ${'\u{1f6a3}'.repeat(n)}\n\na`), pattern],
  brackets: [(n) => utf8('{"a":['.repeat(n)), pattern],
  'closed brackets': [(n) => utf8(`{"a":${'['.repeat(n)}${']'.repeat(n)}}`), pattern],
  'objects side by side': [(n) => utf8(`{"a":[${'{"b":0},'.repeat(n)}0]}`), pattern],
  properties: [
    (n) => utf8(`{${Array.from({ length: n }, (_, i) => `"p${i}":0`).join()}}`),
    pattern,
  ],
  escapes: [(n) => utf8(`{"a":"${'\\u0041\\\\'.repeat(n)}"}`), pattern],
  'a number without end': [(n) => utf8(`{"a":${'9'.repeat(n)}e${'9'.repeat(n)}}`), pattern],
  'a text that does not end': [(n) => utf8(`{"a":"${'x'.repeat(n)}`), pattern],
  'colours of a document': [
    (n) =>
      utf8(
        `${CHART}, "colours": [${Array.from({ length: n }, () => '{"key":"a","hex":"#000000"}').join()}], "rows": ["a"]}`,
      ),
    pattern,
  ],
  'rows of a document': [
    (n) =>
      utf8(
        `${CHART}, "colours": [{"key":"a","hex":"#000000"}], "rows": [${'"a",'.repeat(n)}"aa"]}`,
      ),
    pattern,
  ],
  'parts of a picture': [
    (n) => pngOf([IHDR, ...Array.from({ length: n }, () => ['tEXt', new Uint8Array(1)] as const)]),
    pattern,
  ],
  'packed pixels in many parts': [
    (n) =>
      pngOf([IHDR, ...Array.from({ length: n }, () => ['IDAT', Uint8Array.of(0x78)] as const)]),
    pattern,
  ],
  notes: [(n) => utf8('row 1 knots 3\n'.repeat(n)), seen],
  'notes of blanks': [(n) => utf8(`row 1${' '.repeat(n)}knots 3`), seen],
  'rows seen': [(n) => utf8(`a #000\n\n${'??\n'.repeat(n)}`), seen],
  'strings of a plan': [
    (n) =>
      utf8(
        `{"format": "halfhitch-plan", "version": 1, "chart": {"rows": 1, "columns": 1}, "edge": "straight", "start": "left", "strings": [${Array.from({ length: n }, (_, i) => `{"id":"B${i}","role":"lead","colour":"#000000"}`).join()}], "rows": []}`,
      ),
    steps,
  ],
};

describe('the work of reading grows no faster than the file', () => {
  it.each(Object.entries(GROWING))('%s', (_, [make, read]) => {
    const [small, large] = [make(400), make(3_200)];
    // The first time some of the code is compiled, and counted otherwise.
    read(small);
    read(small);
    const few = counter.count(() => read(small));
    const many = counter.count(() => read(large));
    expect(few).toBeGreaterThan(0);
    // Eight times the file may take eight times the work; a square would take 64 times.
    expect(many).toBeLessThan(12 * few + 2_000);
  });
});
