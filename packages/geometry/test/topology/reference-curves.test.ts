import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { determinantOf, diagramOf, gaussLinking, jonesPolynomial } from '../../src/index.js';

type Curve = { readonly cord: readonly (readonly [number, number, number])[] };
const curves = JSON.parse(
  readFileSync(new URL('../facts/hitch_polylines.json', import.meta.url), 'utf8'),
) as Record<string, Curve>;

const FAR = 100;
/** The rod, closed far away on the side of -y. */
const rod = Float64Array.of(...[-FAR, 0, 0, FAR, 0, 0, FAR, -4 * FAR, 0, -FAR, -4 * FAR, 0]);

/** The cord, closed past the rod outside (`+y`) or inside (`-y`) the rod's own loop. */
function closed(name: string, side: 1 | -1): Float64Array {
  const { cord } = curves[name]!;
  const last = cord[cord.length - 1]!;
  const first = cord[0]!;
  const back =
    last[2] * first[2] > 0 ? [] : [last[0], side * FAR, last[2], first[0], side * FAR, first[2]];
  return Float64Array.from([...cord.flat(), ...back]);
}

const linkOf = (name: string, side: 1 | -1) => [closed(name, side), rod];

/**
 * Values worked out for these hitches independently of this package, by another program's curves:
 * clove hitch 12 (linking number 2) and 6 (3), plain helix 4 (2), half hitch 2 and 4, cow hitch the
 * unlink of two components.
 */
describe('independently made curves of the hitches', () => {
  it.each([
    ['clove', 12, 2, 6, 3],
    ['half hitch', 2, 1, 4, 2],
  ] as const)('%s closes to its two determinants', (name, det1, link1, det2, link2) => {
    const found = ([1, -1] as const).map((side) => {
      const link = linkOf(name, side);
      return [determinantOf(diagramOf(link)), Math.round(Math.abs(gaussLinking(link[0]!, rod)))];
    });
    expect(found.sort((a, b) => a[1]! - b[1]!)).toEqual([
      [det1, link1],
      [det2, link2],
    ]);
  });

  it('a plain helix of 2.5 turns, which traps nothing, has determinant 4 at linking number 2', () => {
    const link = ([1, -1] as const)
      .map((side) => linkOf('helix 2.5', side))
      .find((l) => Math.round(Math.abs(gaussLinking(l[0]!, rod))) === 2)!;
    expect(determinantOf(diagramOf(link))).toBe(4);
  });

  it('the cow hitch is the unlink', () => {
    const link = linkOf('cow', 1);
    expect(gaussLinking(link[0]!, rod)).toBeCloseTo(0, 9);
    expect(determinantOf(diagramOf(link))).toBe(0);
    expect([...jonesPolynomial(diagramOf(link))].sort()).toEqual([
      [-1, -1],
      [1, -1],
    ]);
  });
});
