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
  const closed = curves.map((_, k) => {
    const p = rope.pointsOf(k);
    return Float64Array.from([...p, ...p.subarray(0, 6)]);
  });
  const length = curves.reduce((sum, _, k) => sum + rope.lengthOf(k), 0);
  const strands = closed.map((p, k) => ({
    id: `${k}`,
    // The seam is a bend of the closed rope, which an open polyline would take for a contact.
    points: p.subarray(0, p.length - 3),
    radius: 0.5,
  }));
  const apart = Math.min(...strands.map((_, k) => seamless(strands[k]!.points)), between(strands));
  const bend = Math.min(...closed.map((p) => sharpestBend(p).radius));
  return length / Math.min(apart, 2 * bend);
}

const between = (strands: Parameters<typeof leastClearance>[0]): number => {
  if (strands.length < 2) return Infinity;
  return leastClearance(strands.map((s, k) => ({ ...s, id: `${k}` })))!.ratio;
};

/** Least clearance of a closed polyline with itself, wherever it is cut open. */
function seamless(points: ArrayLike<number>): number {
  const open = Array.from(points).slice(0, points.length - 3);
  const n = open.length / 3;
  let least = Infinity;
  for (const cut of [0, Math.floor(n / 3), Math.floor((2 * n) / 3)]) {
    const turned = [...open.slice(cut * 3), ...open.slice(0, cut * 3)];
    // Without the last diameters no two parts are near only across the cut.
    const kept = turned.slice(0, turned.length - 3 * Math.ceil((2.2 * n) / lengthOf(open)));
    least = Math.min(
      least,
      leastClearance([{ id: 'own', points: kept, radius: 0.5 }])?.ratio ?? Infinity,
    );
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
