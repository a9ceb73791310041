import { KNOT_KINDS, type KnotKind } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  furthestStep,
  heldCrossings,
  knotPose,
  leastClearance,
  lengthOf,
  sharpestBend,
} from '../../src/index.js';

/** Samples per half hitch. */
const SAMPLES = 60;

/** What thread may not do, in tying diameters. The bend's limit is half a diameter, less 2 %. */
const LIMITS = { clearance: 0.95, bend: 0.49, stretch: 0.01 };

interface Findings {
  clearance: number;
  bend: number;
  shortest: number;
  longest: number;
}

function watch(kind: KnotKind, ratio: number, times: readonly number[]): Findings {
  const found: Findings = { clearance: Infinity, bend: Infinity, shortest: Infinity, longest: 0 };
  for (const t of times) {
    const pose = knotPose(kind, t, { heldDiameter: ratio });
    const least = leastClearance([
      { id: 'tying', points: pose.tying, radius: pose.tyingRadius },
      { id: 'held', points: pose.held, radius: pose.heldRadius },
    ]);
    found.clearance = Math.min(found.clearance, least?.ratio ?? Infinity);
    found.bend = Math.min(found.bend, sharpestBend(pose.tying).radius);
    const length = lengthOf(pose.tying);
    found.shortest = Math.min(found.shortest, length);
    found.longest = Math.max(found.longest, length);
  }
  return found;
}

function expectHonest(found: Findings): void {
  expect(found.clearance).toBeGreaterThanOrEqual(LIMITS.clearance);
  expect(found.bend).toBeGreaterThanOrEqual(LIMITS.bend);
  expect(found.longest / found.shortest - 1).toBeLessThan(LIMITS.stretch);
}

const everyTime = Array.from({ length: 2 * SAMPLES + 1 }, (_, i) => i / SAMPLES);

describe.each(['forward', 'forward-backward'] as const)('%s knot', (kind) => {
  it.each([0.5, 0.77, 1, 1.37, 2])('keeps thread whole, apart and unkinked, ratio %s', (ratio) => {
    expectHonest(watch(kind, ratio, everyTime));
  });

  it('does not jump: at 240 moments a half hitch no point goes further than 0.9 d', () => {
    let before = knotPose(kind, 0).tying;
    for (let i = 1; i <= 480; i++) {
      const { tying } = knotPose(kind, i / 240);
      expect(furthestStep(before, tying)).toBeLessThan(0.9);
      before = tying;
    }
  });
});

describe('any knot at any moment', () => {
  const kinds = fc.constantFrom(...KNOT_KINDS);
  const ratios = fc.double({ min: 0.5, max: 2, noNaN: true });
  const times = fc.double({ min: 0, max: 2, noNaN: true });

  it('keeps its clearance and bends for ratios in between', () => {
    fc.assert(
      fc.property(kinds, ratios, times, (kind, ratio, t) => {
        expectHonest(watch(kind, ratio, [0, t]));
      }),
      { numRuns: 150 },
    );
  });

  it('is the mirror image of the opposite knot and of its own mirrored pose', () => {
    fc.assert(
      fc.property(times, ratios, (t, heldDiameter) => {
        for (const [kind, image] of [
          ['forward', 'backward'],
          ['forward-backward', 'backward-forward'],
        ] as const) {
          const pose = knotPose(kind, t, { heldDiameter });
          const other = knotPose(image, t, { heldDiameter });
          const mirror = knotPose(kind, t, { heldDiameter, mirror: true });
          for (let i = 0; i < pose.tying.length; i++) {
            const expected = i % 3 === 0 ? -pose.tying[i]! : pose.tying[i]!;
            expect(other.tying[i]).toBeCloseTo(expected, 12);
            expect(mirror.tying[i]).toBeCloseTo(expected, 12);
          }
        }
      }),
      { numRuns: 25 },
    );
  });

  it('scales: twice the diameters, twice every length', () => {
    fc.assert(
      fc.property(kinds, times, fc.double({ min: 0.1, max: 10, noNaN: true }), (kind, t, d) => {
        const one = knotPose(kind, t, { tyingDiameter: d });
        const two = knotPose(kind, t, { tyingDiameter: 2 * d });
        expect(lengthOf(two.tying) / lengthOf(one.tying)).toBeCloseTo(2, 9);
        expect(
          furthestStep(
            one.tying.map((v) => 2 * v),
            two.tying,
          ),
        ).toBeLessThan(1e-9 * d);
      }),
      { numRuns: 30 },
    );
  });

  it('is a function of its arguments alone', () => {
    fc.assert(
      fc.property(kinds, times, times, (kind, t, other) => {
        const first = knotPose(kind, t);
        knotPose(kind, other);
        expect(knotPose(kind, t)).toEqual(first);
      }),
      { numRuns: 20 },
    );
  });

  it('ends each half with the crossings it keeps from then on', () => {
    for (const kind of KNOT_KINDS) {
      const count = (t: number) => {
        const { tying, held } = knotPose(kind, t);
        return heldCrossings(tying, held).length;
      };
      expect(count(1 - 1e-9)).toBe(count(1));
    }
  });
});
