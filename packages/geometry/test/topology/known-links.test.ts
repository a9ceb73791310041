import { describe, expect, it } from 'vitest';
import {
  determinantOf,
  diagramOf,
  gaussLinking,
  jonesPolynomial,
  linkingNumber,
} from '../../src/index.js';
import {
  apart,
  circle,
  figureEight,
  hopf,
  mirrorImage,
  trefoil,
  whitehead,
} from './known-links.js';

const jones = (components: readonly ArrayLike<number>[], turn?: readonly [number, number]) =>
  Object.fromEntries(
    [...jonesPolynomial(diagramOf(components, turn))].map(([e, c]) => [e / 2, c]).sort(),
  );

/**
 * Published values: V. F. R. Jones, "A polynomial invariant for knots via von Neumann algebras",
 * Bull. AMS 12 (1985); D. Rolfsen, Knots and Links (1976), tables of determinants; the polynomial
 * of Whitehead's link (5^2_1) as in the Thistlethwaite link table (L5a1).
 */
describe('known links', () => {
  it.each([
    ['unknot', [circle], 1, { 0: 1 }],
    ['two circles apart', apart, 0, { '-0.5': -1, 0.5: -1 }],
    ['left-handed trefoil', [trefoil], 3, { '-4': -1, '-3': 1, '-1': 1 }],
    ['right-handed trefoil', [mirrorImage(trefoil)], 3, { 1: 1, 3: 1, 4: -1 }],
    ['figure-eight', [figureEight], 5, { '-2': 1, '-1': -1, 0: 1, 1: -1, 2: 1 }],
    ['Hopf', hopf, 2, { '-2.5': -1, '-0.5': -1 }],
    ['Whitehead', whitehead, 8, { '-3.5': 1, '-2.5': -2, '-1.5': 1, '-0.5': -2, 0.5: 1, 1.5: -1 }],
  ] as const)('%s has its determinant and Jones polynomial', (_, components, determinant, poly) => {
    const diagram = diagramOf(components);
    expect(determinantOf(diagram)).toBe(determinant);
    expect(jones(components)).toEqual(poly);
  });

  it('does not depend on the direction of view', () => {
    for (const turn of [
      [0.4, 0.9],
      [1.3, -0.7],
      [-2.2, 0.31],
    ] as const) {
      for (const link of [[figureEight], [trefoil], whitehead, hopf]) {
        expect(jones(link, turn)).toEqual(jones(link));
        expect(determinantOf(diagramOf(link, turn))).toBe(determinantOf(diagramOf(link)));
      }
    }
  });

  it('has the same linking number by the Gauss integral and by counting crossings', () => {
    for (const [link, expected] of [
      [hopf, 1],
      [whitehead, 0],
      [apart, 0],
    ] as const) {
      expect(Math.abs(linkingNumber(diagramOf(link)))).toBe(expected);
      expect(gaussLinking(link[0]!, link[1]!)).toBeCloseTo(linkingNumber(diagramOf(link)), 9);
    }
  });
});
