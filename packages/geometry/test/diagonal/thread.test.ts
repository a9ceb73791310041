import { type DiagonalPattern, KNOT_KINDS, knotIndex, simulateDiagonal } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import { lengthOf } from '../../src/curve/polyline.js';
import {
  DiagonalFabric,
  diagonalCutList,
  diagonalUsage,
  repeatedRows,
} from '../../src/diagonal/index.js';
import { latticeWork } from '../../src/diagonal/knots.js';
import { spacing } from '../../src/diagonal/spacing.js';
import { HANGING } from '../../src/diagonal/ways.js';
import { estimatedUsage } from './estimate.js';
import { wholeThreads } from './pieces.js';

const whole = ({ tied, held, ways }: { tied: number; held: number; ways: number }) =>
  tied + held + ways;

/** Share by which a thinned curve is shorter than the full one. */
const THINNED = 0.002;

/**
 * How near the estimate of wraps and straight lines comes to the tight knots: for a whole piece, and
 * for a string by whether it ties much. A string that is mostly held winds between the wraps of
 * others on its way, which the estimate takes as straight.
 */
const ESTIMATE = { piece: 0.06, tying: 0.13, held: 0.35 } as const;

const STRIPES: DiagonalPattern = {
  name: 'Crew stripes',
  strings: 6,
  rows: 12,
  first: 0,
  colours: [
    { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
    { key: 'c', hex: '#f4f1e8', name: 'chalk' },
  ],
  start: Uint8Array.from([0, 0, 1, 1, 0, 0]),
  knots: new Uint8Array(36).map((_, i) => (i % 6 === 5 ? 255 : 0)),
};

describe('thread of each string in diagonal work', () => {
  it('is as long as its path in the fabric', () => {
    fc.assert(
      fc.property(anyDiagonal({ maxRows: 10 }), (pattern) => {
        const paths = new Map(
          wholeThreads(pattern).map(({ id, points }) => [id, lengthOf(points)]),
        );
        // What hangs above and below the piece is no part of it.
        const ends = HANGING.above + HANGING.below - spacing().row;
        for (const usage of diagonalUsage(pattern)) {
          const path = (paths.get(usage.string) as number) - ends;
          expect(Math.abs(path / whole(usage) - 1)).toBeLessThan(THINNED);
        }
      }),
      { numRuns: 15 },
    );
  });

  it('is about as long as wraps and straight lines alone', () => {
    fc.assert(
      fc.property(anyDiagonal({ maxRows: 14, bareTenths: 0 }), (pattern) => {
        const estimate = estimatedUsage(latticeWork(pattern), spacing().slot * Math.SQRT2);
        const usage = diagonalUsage(pattern);
        for (const use of usage) {
          const ties = KNOT_KINDS.reduce((sum, kind) => sum + use.ties[kind], 0);
          const within = ties >= 0.3 * (ties + use.holds) ? ESTIMATE.tying : ESTIMATE.held;
          expect(Math.abs((estimate[use.slot] as number) / whole(use) - 1)).toBeLessThan(within);
        }
        fc.pre(pattern.rows > 5);
        const sum = usage.reduce((total, use) => total + whole(use), 0);
        const share = estimate.reduce((total, length) => total + length, 0) / sum;
        expect(Math.abs(share - 1)).toBeLessThan(ESTIMATE.piece);
      }),
      { numRuns: 20 },
    );
  });

  it('counts every knot once as tied and once as held, and adds up row by row', () => {
    fc.assert(
      fc.property(anyDiagonal({ maxRows: 10, bareTenths: 0 }), (pattern) => {
        const usage = diagonalUsage(pattern);
        const reading = simulateDiagonal(pattern);
        const tied = reading.tying.filter((string) => string !== 0xffff).length;
        const sum = (of: (use: (typeof usage)[number]) => number) =>
          usage.reduce((total, use) => total + of(use), 0);
        expect(sum(({ ties }) => KNOT_KINDS.reduce((n, kind) => n + ties[kind], 0))).toBe(tied);
        expect(sum(({ holds }) => holds)).toBe(tied);
        expect(diagonalUsage(pattern, 0.5).map(whole)).toEqual(
          usage.map((use) => expect.closeTo(0.5 * whole(use), 9)),
        );
      }),
      { numRuns: 15 },
    );
  });

  it('grows by the same amount with every repeat that closes', () => {
    const once = diagonalUsage(repeatedRows(STRIPES, 12)).map(whole);
    const twice = diagonalUsage(repeatedRows(STRIPES, 24)).map(whole);
    const thrice = diagonalUsage(repeatedRows(STRIPES, 36)).map(whole);
    for (let k = 0; k < once.length; k++) {
      const grown = (twice[k] as number) - (once[k] as number);
      expect((thrice[k] as number) - (twice[k] as number)).toBeCloseTo(grown, 6);
    }
  });
});

describe('cut list of diagonal work', () => {
  it('repeats a pattern to the wanted wrist, and says whether its colours close', () => {
    const list = diagonalCutList(STRIPES, { wrist: 150 });
    const fabric = new DiagonalFabric(repeatedRows(STRIPES, list.rows), {
      diameter: list.thread.diameter,
    });
    expect(fabric.size.length).toBeCloseTo(list.size.length, 6);
    expect(Math.abs(list.size.length - 150 - 10 - Math.PI * list.size.thickness)).toBeLessThan(
      fabric.rowHeight,
    );
    expect(list.repeats).toBeCloseTo(list.rows / 12);
    // Six strings that all cross return to where they were after twelve rows.
    expect(list.coloursClose).toBe(true);
    expect(list.pieces.map(({ cut }) => cut % 10)).toEqual(Array(6).fill(0));
    expect(list.totals.map(({ name, pieces }) => [name, pieces])).toEqual([
      ['lake blue', 4],
      ['chalk', 2],
    ]);
  });

  it('takes the sizes of its own fabric for a swatch back to the diameter', () => {
    const { size } = new DiagonalFabric(STRIPES, { diameter: 0.7, across: 1.1, along: 1 / 1.1 });
    const swatch = { rows: 12, strings: 6, width: size.width, length: size.length };
    const { calibration } = diagonalCutList(STRIPES, { swatch });
    expect(calibration?.diameter).toBeCloseTo(0.7, 6);
    expect(calibration?.across).toBeCloseTo(1.1, 6);
  });

  it('finds strings worth swapping, and the swap leaves the picture as it was', () => {
    fc.assert(
      fc.property(anyDiagonal({ maxColours: 1, maxRows: 14, bareTenths: 0 }), (pattern) => {
        for (const { row, place, kind, instead, saves, strings } of diagonalCutList(pattern)
          .swaps) {
          const knots = pattern.knots.slice();
          expect(KNOT_KINDS[knots[knotIndex(pattern, row, place)] as number]).toBe(kind);
          knots[knotIndex(pattern, row, place)] = KNOT_KINDS.indexOf(instead);
          const swapped = { ...pattern, knots };
          expect(simulateDiagonal(swapped).picture.cells).toEqual(
            simulateDiagonal(pattern).picture.cells,
          );
          const longest = (of: DiagonalPattern) =>
            Math.max(
              ...diagonalUsage(of, diagonalCutList(pattern).thread.diameter)
                .filter(({ string }) => strings.includes(string))
                .map(whole),
            );
          // The knot itself and the ways beside it differ a little by its kind.
          expect(longest(pattern) - longest(swapped)).toBeGreaterThan(0.8 * saves - 3);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('says why an odd pattern cannot follow itself', () => {
    const odd = { ...STRIPES, rows: 11, knots: STRIPES.knots.slice(0, 33) };
    expect(() => diagonalCutList(odd, { length: 300 })).toThrow(/11 rows cannot follow itself/);
    expect(diagonalCutList(odd, { length: 10 }).rows).toBeLessThan(11);
    expect(() =>
      diagonalCutList(STRIPES, { swatch: { rows: 9, strings: 1, width: 9, length: 9 } }),
    ).toThrow(/1 strings/);
  });
});
