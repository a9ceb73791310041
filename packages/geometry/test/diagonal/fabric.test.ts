import { halvesOf, KNOT_KINDS, type KnotKind, knotsInRow, NO_KNOT } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import { sharpestBend } from '../../src/checks/bends.js';
import { leastClearance } from '../../src/checks/clearance.js';
import { DiagonalFabric } from '../../src/diagonal/index.js';
import { latticeKnots } from '../../src/diagonal/shapes.js';
import type { Level } from '../../src/fabric/levels.js';
import { heldCrossings } from '../../src/topology/crossings.js';
import { wholeThreads } from './pieces.js';

/** The tubes of a whole piece keep this share of touching, and bend no sharper than this. */
const APART = 0.97;
const BEND = 0.42;

const LEVELS: readonly Level[] = [0, 1, 2, 3];

describe('diagonal work in thread', () => {
  it('keeps strings apart and gently bent, whatever is knotted', () => {
    fc.assert(
      fc.property(anyDiagonal({ maxStrings: 7, maxRows: 8, bareTenths: 2 }), (pattern) => {
        const threads = wholeThreads(pattern);
        expect(leastClearance(threads)?.ratio ?? 2).toBeGreaterThan(APART);
        for (const { points } of threads) {
          expect(sharpestBend(points).radius).toBeGreaterThan(BEND);
        }
      }),
      { numRuns: 8 },
    );
  });

  it('keeps strings apart between every two kinds of knots, side by side and below each other', () => {
    for (const above of [0, 1, 2, 3]) {
      for (const below of [0, 1, 2, 3]) {
        const kinds = [above, below, above, below, above, below];
        const knots = Uint8Array.from(
          kinds.flatMap((kind, row) => (row % 2 ? [kind, NO_KNOT] : [kind, kind])),
        );
        const pattern = {
          name: '',
          strings: 4,
          rows: kinds.length,
          first: 0 as const,
          colours: [{ key: 'b', hex: '#1f6fb2', name: 'lake blue' }],
          start: new Uint8Array(4),
          knots,
        };
        expect(leastClearance(wholeThreads(pattern))?.ratio).toBeGreaterThan(APART);
      }
    }
  });

  it('has every string as one thread over all chunks, at whatever levels of detail', () => {
    fc.assert(
      fc.property(
        anyDiagonal({ maxRows: 9 }),
        fc.integer({ min: 1, max: 4 }),
        fc.array(fc.constantFrom(...LEVELS), { minLength: 9, maxLength: 9 }),
        (pattern, rowsPerChunk, levels) => {
          const threads = wholeThreads(pattern, rowsPerChunk, (k) => levels[k] as Level);
          expect(threads.map(({ id }) => id).sort()).toEqual(
            Array.from({ length: pattern.strings }, (_, i) => `S${i + 1}`).sort(),
          );
          for (const { points } of threads) {
            expect(points[1]).toBeLessThan(-7);
            expect(points[points.length - 2]).toBeGreaterThan((pattern.rows - 1) * 2);
          }
        },
      ),
      { numRuns: 20 },
    );
  });

  it.each([...KNOT_KINDS])('crosses the two strings of a %s knot as its halves say', (kind) => {
    const { tying, held } = latticeKnots()[KNOT_KINDS.indexOf(kind)]!;
    const part = tying.points.subarray(3 * tying.from, 3 * tying.to + 3);
    const long = lengthened(held.points);
    const seen = heldCrossings(part, long).map(({ level, direction }) => `${level} ${direction}`);
    expect(seen).toEqual(crossingsOfKind(kind));
  });

  it('finds the place of a knot at its middle, and none beside the piece', () => {
    fc.assert(
      fc.property(anyDiagonal(), (pattern) => {
        const fabric = new DiagonalFabric(pattern, { diameter: 0.6, across: 1.1, along: 0.9 });
        for (let row = 0; row < pattern.rows; row++) {
          for (let place = 0; place < knotsInRow(pattern, row); place++) {
            expect(fabric.knotAt(...fabric.placeOf({ row, place }))).toEqual({ row, place });
          }
        }
        expect(fabric.knotAt(-2 * fabric.slotPitch, 0)).toBeNull();
        expect(fabric.knotAt(0, (pattern.rows + 1) * fabric.rowHeight)).toBeNull();
      }),
      { numRuns: 10 },
    );
  });

  it('says what it cannot do', () => {
    const pattern = fc.sample(anyDiagonal(), { numRuns: 1, seed: 1 })[0]!;
    expect(() => new DiagonalFabric(pattern, { across: 3 })).toThrow(/across is 3/);
    expect(() => new DiagonalFabric(pattern, { rowsPerChunk: 0 })).toThrow(/whole number/);
    expect(() => new DiagonalFabric(pattern).chunk(99)).toThrow(/no chunk 99/);
  });
});

/** Over and under in order, from the description of the half hitch. */
function crossingsOfKind(kind: KnotKind): string[] {
  const [first, second] = halvesOf(kind);
  const there = first === 'forward' ? 'LR' : 'RL';
  const back = there === 'LR' ? 'RL' : 'LR';
  const bar = [`over ${there}`, `under ${back}`, `over ${there}`];
  return first === second
    ? [...bar.slice(0, 2), ...bar]
    : [...bar, `over ${back}`, `under ${there}`, `over ${back}`];
}

/** The held string with its ends drawn on. */
function lengthened(points: Float64Array): Float64Array {
  const n = points.length;
  const beyond = (end: number, before: number) =>
    [0, 1, 2].map((c) => points[end + c]! + 20 * (points[end + c]! - points[before + c]!));
  return Float64Array.from([...beyond(0, 3), ...points, ...beyond(n - 3, n - 6)]);
}
