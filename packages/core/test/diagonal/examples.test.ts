import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  readDiagonalDocument,
  readDiagonalPicture,
  readDiagonalPlan,
  readDiagonalText,
  readPattern,
  simulateDiagonal,
  verifyDiagonal,
} from '../../src/index.js';

const FOLDER = new URL('../../../../examples/', import.meta.url);
const read = (name: string) => readPattern(readFileSync(new URL(name, FOLDER)), name);
const NAMES = readdirSync(FOLDER)
  .filter((name) => /\.(txt|json)$/.test(name))
  .filter((name) => read(name).kind === 'diagonal');

describe('the examples of diagonal patterns', () => {
  it('are one for each known piece', () => {
    expect(NAMES).toEqual([
      'buoy-diamonds.txt',
      'ellerby-stripes.txt',
      'lake-wave.txt',
      'mooring-zigzag.json',
      'pennant-chevrons.txt',
    ]);
  });

  it.each(NAMES)('%s is a repeat that closes', (name) => {
    const reading = read(name);
    if (reading.kind !== 'diagonal') throw new Error('not diagonal');
    expect(reading.notices).toEqual([]);
    const { order } = simulateDiagonal(reading.pattern);
    const { strings } = reading.pattern;
    expect([...order.slice(-strings)]).toEqual([...order.slice(0, strings)]);
  });
});

describe('what docs/formats.md shows of diagonal patterns', () => {
  const docs = readFileSync(new URL('../../../../docs/formats.md', import.meta.url), 'utf8');
  const shown = [...docs.matchAll(/```(?:text|json)\n(.*?)```/gs)].map((found) => found[1] ?? '');
  const block = (word: string) => shown.find((text) => text.includes(word)) ?? '';

  it('is read, and text and document say the same', () => {
    const pattern = readDiagonalText(block('pattern diagonal'));
    expect(readDiagonalDocument(block('"halfhitch-diagonal"'))).toEqual(pattern);
    expect([pattern.strings, pattern.rows]).toEqual([5, 4]);
    expect(readDiagonalPicture(block('picture diagonal'))).toMatchObject({ strings: 6, rows: 5 });
  });

  it('holds a plan that knots out', () => {
    const plan = readDiagonalPlan(block('"halfhitch-diagonal-plan"'));
    const wanted = readDiagonalPicture('picture diagonal\nb #1f6fb2\no #e8742c\n\nb\n o\n');
    expect(verifyDiagonal(plan, wanted).ok).toBe(true);
  });
});
