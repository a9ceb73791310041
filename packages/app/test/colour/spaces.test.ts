import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ciede2000,
  cielabOf,
  contrast,
  hexOfOklab,
  oklabOf,
  oklabOfXyz,
} from '../../src/colour/spaces.js';
import { facts } from './facts.js';

const lab = (row: Record<string, string>, which: 1 | 2) => ({
  l: Number(row[`L${which}`]),
  a: Number(row[`a${which}`]),
  b: Number(row[`b${which}`]),
});

const anyHex = fc
  .integer({ min: 0, max: 0xffffff })
  .map((colour) => `#${colour.toString(16).padStart(6, '0')}`);

describe('CIEDE2000', () => {
  const rows = facts('ciede2000');

  it('has all 34 pairs of the table', () => expect(rows).toHaveLength(34));

  // Given to four decimals, so within half of the last.
  it.each(rows.map((row, i) => [i + 1, row] as const))('gives pair %i as published', (_, row) => {
    const difference = ciede2000(lab(row, 1), lab(row, 2));
    expect(Math.abs(difference - Number(row['dE']))).toBeLessThanOrEqual(0.5e-4 + 1e-9);
    expect(ciede2000(lab(row, 2), lab(row, 1))).toBeCloseTo(difference, 9);
  });

  it('is nothing for one colour, and the same both ways', () => {
    fc.assert(
      fc.property(anyHex, anyHex, (one, other) => {
        expect(ciede2000(cielabOf(one), cielabOf(one))).toBeCloseTo(0, 9);
        const there = ciede2000(cielabOf(one), cielabOf(other));
        expect(ciede2000(cielabOf(other), cielabOf(one))).toBeCloseTo(there, 9);
      }),
    );
  });
});

describe('OKLab', () => {
  // Given to three decimals, and of whites rounded to three.
  it.each(facts('oklab'))('of XYZ $X $Y $Z is as published', ({ X, Y, Z, L, a, b }) => {
    const found = oklabOfXyz(Number(X), Number(Y), Number(Z));
    expect(Math.abs(found.l - Number(L))).toBeLessThanOrEqual(0.0006);
    expect(Math.abs(found.a - Number(a))).toBeLessThanOrEqual(0.0006);
    expect(Math.abs(found.b - Number(b))).toBeLessThanOrEqual(0.0006);
  });

  it('leads back to the same colour', () => {
    fc.assert(
      fc.property(anyHex, (hex) => {
        expect(hexOfOklab(oklabOf(hex))).toBe(hex);
      }),
    );
  });
});

describe('contrast', () => {
  // Given to four decimals at most.
  it.each(facts('wcag-contrast'))('of $fg on $bg is $ratio', ({ fg, bg, ratio }) => {
    expect(Math.abs(contrast(fg as string, bg as string) - Number(ratio))).toBeLessThanOrEqual(
      0.5e-4 + 1e-9,
    );
  });
});

it.each(['', 'red', '#12', '#12345g', '#1234567', 'url(#a)'])('refuses "%s"', (text) => {
  expect(() => oklabOf(text)).toThrow(RangeError);
});
