import type { DiagonalPattern } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import { furthestStep, sharpestBend } from '../../src/checks/bends.js';
import { leastClearance } from '../../src/checks/clearance.js';
import { lengthOf, resample } from '../../src/curve/polyline.js';
import { diagonalPose, diagonalScene } from '../../src/diagonal/index.js';

/**
 * What is reached while a knot is tied: strings beside it are held aside as curves that do not give
 * way to each other, and the knot is carried along with a leaning held string.
 */
const APART = 0.5;
const BEND = 0.15;
/** A lead may change its length by this share within a knot. */
const STRETCH = 0.01;
/** Furthest way of a point between moments, of which there are 60 a half hitch. */
const JUMP = 3.8;

/** A middle knot of each kind with knots of mixed kinds round it. */
const MIXED: DiagonalPattern = {
  name: '',
  strings: 8,
  rows: 5,
  first: 0,
  colours: [{ key: 'b', hex: '#1f6fb2', name: 'lake blue' }],
  start: new Uint8Array(8),
  knots: Uint8Array.from([0, 1, 2, 3, 1, 0, 3, 255, 2, 3, 0, 1, 3, 2, 1, 255, 0, 2, 1, 3]),
};

describe('a knot of diagonal work being tied', () => {
  it('is the same at the same moment, whatever was asked for before', () => {
    fc.assert(
      fc.property(
        anyDiagonal({ maxRows: 6, bareTenths: 0 }),
        fc.nat(),
        fc.double({ min: -0.5, max: 2.5, noNaN: true }),
        (pattern, which, t) => {
          const scene = diagonalScene(pattern, { diameter: 0.6 });
          fc.pre(scene.knots > 0);
          const knot = which % scene.knots;
          const pose = diagonalPose(scene, knot, t);
          diagonalPose(scene, scene.knots - 1, 1.3);
          expect(diagonalPose(scene, knot, t)).toEqual(pose);
          expect(diagonalPose(diagonalScene(pattern, { diameter: 0.6 }), knot, t)).toEqual(pose);
          const roles = pose.strands.map(({ role }) => role);
          expect(roles.filter((role) => role === 'tying')).toHaveLength(1);
          expect(roles.filter((role) => role === 'held')).toHaveLength(1);
          expect(new Set(pose.strands.map(({ id }) => id)).size).toBe(roles.length);
        },
      ),
      { numRuns: 15 },
    );
  });

  it('keeps strings apart, bends gentle, and the lead as long as it is', () => {
    const scene = diagonalScene(MIXED);
    for (const knot of [7, 8, 9, 10]) {
      let [least, most] = [Number.POSITIVE_INFINITY, 0];
      for (let k = 0; k <= 16; k++) {
        const { strands } = diagonalPose(scene, knot, k / 8);
        expect(leastClearance(strands, 1)?.ratio ?? 1).toBeGreaterThan(APART);
        for (const { role, points } of strands) {
          if (role === 'other') continue;
          expect(sharpestBend(points).radius).toBeGreaterThan(BEND);
          if (role !== 'tying') continue;
          least = Math.min(least, lengthOf(points));
          most = Math.max(most, lengthOf(points));
        }
      }
      expect(most / least - 1).toBeLessThan(STRETCH);
    }
  });

  it('moves without a jump, and ends where the next knot begins', () => {
    const scene = diagonalScene(MIXED);
    const lines = (knot: number, t: number) =>
      new Map(
        diagonalPose(scene, knot, t).strands.map(({ id, points }) => [id, resample(points, 120)]),
      );
    for (const knot of [7, 9]) {
      let before = lines(knot, 0);
      for (let k = 1; k <= 120; k++) {
        const now = lines(knot, k / 60);
        for (const [id, points] of now) {
          expect(furthestStep(before.get(id) as Float64Array, points)).toBeLessThan(JUMP);
        }
        before = now;
      }
      for (const { id, points, role } of diagonalPose(scene, knot + 1, 0).strands) {
        const after = diagonalPose(scene, knot, 2).strands.find((strand) => strand.id === id);
        if (after === undefined || role === 'other') continue;
        // The start of what is seen of a string may differ by the rows shown; its knots do not.
        expect(nearest(after.points, points)).toBeLessThan(0.6);
      }
    }
  });

  it('says which knots there are', () => {
    const scene = diagonalScene(MIXED);
    expect(() => diagonalPose(scene, 18, 0)).toThrow(/There is no knot 18; the pattern has 18/);
    expect(() => diagonalPose(scene, 0, Number.NaN)).toThrow(/not a number/);
  });
});

/** How far the points of one line within the work are from another line, at most. */
function nearest(line: Float64Array, other: Float64Array): number {
  const fine = resample(other, 1200);
  let most = 0;
  // What hangs is paid in between knots; what is above it stays.
  for (let i = 0; i < line.length * 0.6; i += 3) {
    let least = Number.POSITIVE_INFINITY;
    for (let j = 0; j < fine.length; j += 3) {
      const dx = (line[i] as number) - (fine[j] as number);
      const dy = (line[i + 1] as number) - (fine[j + 1] as number);
      const dz = (line[i + 2] as number) - (fine[j + 2] as number);
      least = Math.min(least, Math.hypot(dx, dy, dz));
    }
    most = Math.max(most, least);
  }
  return most;
}
