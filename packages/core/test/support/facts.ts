import { readFileSync } from 'node:fs';

/** A column of test/facts/combinatorics.csv: the number for each `n` that has one. */
export function knownNumbers(column: string): readonly (readonly [n: number, value: number])[] {
  const text = readFileSync(new URL('../facts/combinatorics.csv', import.meta.url), 'utf8');
  const [head = [], ...rows] = text
    .trim()
    .split('\n')
    .map((line) => line.split(','));
  const at = head.indexOf(column);
  if (at < 0) throw new Error(`There is no column ${column}.`);
  return rows
    .filter((row) => row[at] !== '')
    .map((row) => [Number(row[0]), Number(row[at])] as const);
}
