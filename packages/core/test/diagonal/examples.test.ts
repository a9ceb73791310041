import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readPattern, simulateDiagonal } from '../../src/index.js';

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
