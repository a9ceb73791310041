import { expect, it } from 'vitest';
import {
  DEFICIENCIES,
  type Deficiency,
  type LinearRgb,
  simulate,
  simulateLinear,
} from '../../src/colour/deficiency.js';
import { facts } from './facts.js';

const UNITS: readonly LinearRgb[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

const matrices = facts('machado-2009');

it('knows the kinds of the table', () => {
  expect(matrices.map(({ type }) => type)).toEqual([...DEFICIENCIES]);
});

// The published figures have six decimals and must come through as they are.
it.each(matrices)('$type multiplies linear light by the published matrix', (row) => {
  UNITS.forEach((unit, column) => {
    const seen = simulateLinear(unit, row['type'] as Deficiency);
    seen.forEach((value, line) => {
      expect(value).toBeCloseTo(Number(row[`m${line}${column}`]), 12);
    });
  });
});

// Rows of the matrices add up to 1, so greys stay: a check that light, not coded values, is used
// on the way in and out.
it.each(DEFICIENCIES)('%s leaves greys alone', (deficiency) => {
  for (const grey of ['#000000', '#333333', '#777777', '#c0c0c0', '#ffffff']) {
    expect(simulate(grey, deficiency)).toBe(grey);
  }
});

it('works on light, not on coded values', () => {
  // Pure green as deutan sees it: linear 0.860646, 0.672501, 0.042940, coded by IEC 61966-2-1.
  const coded = [0.860646, 0.672501, 0.04294].map((v) =>
    Math.round(255 * (1.055 * v ** (1 / 2.4) - 0.055))
      .toString(16)
      .padStart(2, '0'),
  );
  expect(simulate('#00ff00', 'deutan')).toBe(`#${coded.join('')}`);
});
