import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ANY_COLOUR,
  BARE,
  DIAGONAL_LIMITS,
  knotsAcross,
  NO_KNOT,
  printDiagonalDocument,
  printDiagonalPicture,
  printDiagonalPictureDocument,
  printDiagonalText,
  readDiagonalPicture,
  readPattern,
} from '../../../src/index.js';
import { anyDiagonalOfFile, anyPictureOfFile } from '../../support/any-diagonal-file.js';
import { readOrRefusal } from '../../support/refusal.js';
import { spoil } from '../../support/spoil.js';

/** Reads bytes as a pattern: it must end in one within the limits, or in an InputError. */
function expectPatternOrRefusal(bytes: Uint8Array): void {
  const outcome = readOrRefusal(() => readPattern(bytes, 'fuzz'));
  if (outcome instanceof Error) {
    expect(outcome.message).toContain('fuzz');
    expect(outcome.message.length).toBeLessThan(1000);
    return;
  }
  if (outcome.kind === 'alpha') return;
  const { strings, rows, first, start, colours, knots } = outcome.pattern;
  expect(strings).toBeLessThanOrEqual(DIAGONAL_LIMITS.maxStrings);
  expect(rows).toBeLessThanOrEqual(DIAGONAL_LIMITS.maxRows);
  expect([0, 1]).toContain(first);
  expect(start).toHaveLength(strings);
  expect(Math.max(...start)).toBeLessThan(colours.length);
  expect(knots).toHaveLength(rows * knotsAcross(outcome.pattern));
  expect(knots.every((kind) => kind <= 3 || kind === NO_KNOT)).toBe(true);
}

function expectPictureOrRefusal(bytes: Uint8Array): void {
  const outcome = readOrRefusal(() => readDiagonalPicture(new TextDecoder().decode(bytes)));
  if (outcome instanceof Error) {
    expect(outcome.message.length).toBeLessThan(1000);
    return;
  }
  const { rows, colours, cells } = outcome;
  expect(cells).toHaveLength(rows * knotsAcross(outcome));
  const known = (cell: number) => cell < colours.length || cell === ANY_COLOUR || cell === BARE;
  expect(cells.every(known)).toBe(true);
}

const utf8 = (text: string) => new TextEncoder().encode(text);
const runs = { numRuns: 300 };

describe('reading any file ends in a diagonal pattern or in a clear refusal', () => {
  it('text after the words that say what it is', () => {
    const body = fc.string({
      unit: fc.constantFrom(...'ab#0f \n\r\\/<>.?={}"\u00a0\ud83d\u{1f6a3}', '\n\n', 'a #000\n'),
      maxLength: 60,
    });
    const file = body.map((text) => utf8(`pattern diagonal\na #000\n\n${text}`));
    fc.assert(fc.property(file, expectPatternOrRefusal), runs);
  });

  it('patterns as text, spoilt', () => {
    const file = anyDiagonalOfFile.map((pattern) => utf8(printDiagonalText(pattern)));
    fc.assert(fc.property(spoil(file), expectPatternOrRefusal), runs);
  });

  it('documents of patterns, spoilt', () => {
    const file = anyDiagonalOfFile.map((pattern) => utf8(printDiagonalDocument(pattern)));
    fc.assert(fc.property(spoil(file), expectPatternOrRefusal), runs);
  });

  it('wanted pictures as text and as documents, spoilt', () => {
    const file = fc
      .tuple(anyPictureOfFile, fc.boolean())
      .map(([picture, text]) =>
        utf8(text ? printDiagonalPicture(picture) : printDiagonalPictureDocument(picture)),
      );
    fc.assert(fc.property(spoil(file), expectPictureOrRefusal), runs);
  });
});
