import { describe, expect, it } from 'vitest';
import { leastClearance, lengthOf, sharpestBend } from '../../src/index.js';
import { Rope } from '../../src/relax/rope.js';
import { closedCurve } from '../topology/known-links.js';

const { cos, sin } = Math;

/** Length of a closed tight rope in diameters of the thickest tube that fits round it. */
function ropelength(curves: readonly Float64Array[]): number {
  const rope = new Rope(curves.map((points) => ({ points, closed: true, diameter: 1 })));
  for (const [steps, pull, sweeps] of [
    [6000, 0.5, 2],
    [5000, 0.2, 3],
    [4000, 0.05, 4],
  ] as const) {
    for (let i = 0; i < steps; i++) rope.step(pull, sweeps);
  }
  const length = curves.reduce((sum, _, k) => sum + rope.lengthOf(k), 0);
  const rings = curves.map((_, k) => rope.pointsOf(k));
  const bend = Math.min(
    ...rings.map((p) => sharpestBend(Float64Array.from([...p, ...p.subarray(0, 6)])).radius),
  );
  return length / Math.min(clearanceOf(rings), 2 * bend);
}

/** Least clearance of closed polylines, each opened at three places so that no seam is a contact. */
function clearanceOf(rings: readonly Float64Array[]): number {
  const choices = [0, 1, 2];
  let least = Infinity;
  const open = (ring: Float64Array, third: number) => {
    const n = ring.length / 3;
    const cut = Math.floor((third * n) / 3) * 3;
    const turned = [...ring.subarray(cut), ...ring.subarray(0, cut)];
    // Without the last diameters no two parts are near only across the cut.
    return turned.slice(0, turned.length - 3 * Math.ceil((2.2 * n) / lengthOf(ring)));
  };
  for (const a of choices) {
    for (const b of choices) {
      const strands = rings.map((ring, k) => ({
        id: `${k}`,
        points: open(ring, k === 0 ? a : b),
        radius: 0.5,
      }));
      least = Math.min(least, leastClearance(strands)?.ratio ?? Infinity);
    }
  }
  return least;
}

/**
 * Tight links that are known or well bounded, as the proof of the solver:
 * - Hopf link: exactly 4 pi diameters (J. Cantarella, R. Kusner, J. Sullivan, "On the minimum
 *   ropelength of knots and links", Invent. Math. 150, 2002).
 * - Trefoil: never below 15.66 (E. Denne, Y. Diao, J. Sullivan, "Quadrisecants give new lower bounds
 *   for the ropelength of a knot", Geom. Topol. 10, 2006), tight ones found by computation 16.372.
 * - Figure-eight: about 42.09 radii, from memory, an upper bound.
 */
describe('known tight links', () => {
  it('tightens the Hopf link to 4 pi diameters within 1 %', () => {
    const found = ropelength([
      closedCurve(80, (a) => [1.5 * cos(a), 1.5 * sin(a), 0]),
      closedCurve(80, (a) => [1.5 + 1.5 * cos(a), 0.02 * sin(a), 1.5 * sin(a)]),
    ]);
    expect(found).toBeGreaterThan(4 * Math.PI * 0.999);
    expect(found).toBeLessThan(4 * Math.PI * 1.01);
  });

  it('tightens the trefoil to 16.372 diameters within 2 %, not below 15.66', () => {
    const found = ropelength([
      closedCurve(160, (a) => [
        1.2 * (sin(a) + 2 * sin(2 * a)),
        1.2 * (cos(a) - 2 * cos(2 * a)),
        -1.2 * sin(3 * a),
      ]),
    ]);
    expect(found).toBeGreaterThan(15.66);
    expect(found).toBeLessThan(16.372 * 1.02);
  });

  it('tightens the figure-eight near 42.09 radii', () => {
    const found = ropelength([
      closedCurve(200, (a) => [
        1.6 * (2 + cos(2 * a)) * cos(3 * a),
        1.6 * (2 + cos(2 * a)) * sin(3 * a),
        1.6 * sin(4 * a),
      ]),
    ]);
    expect(2 * found).toBeGreaterThan(42.09 * 0.99);
    expect(2 * found).toBeLessThan(42.09 * 1.02);
  });
});
