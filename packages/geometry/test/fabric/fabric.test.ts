import { EDGE_TECHNIQUES } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthOf } from '../../src/curve/polyline.js';
import { LEVELS, type Level } from '../../src/fabric/levels.js';
import {
  ALL_CHANGES,
  anyDrawing,
  anyEdge,
  anyStart,
  endsOf,
  fabricOf,
  type Piece,
  piecesOf,
  wholeStrings,
} from './strands.js';

const few = { numRuns: 15 };
const anyLevel = fc.constantFrom<Level>(...LEVELS);
const other = { left: 'right', right: 'left' } as const;

describe('a fabric', () => {
  it('holds every knot once, at its place and in its colour', () => {
    fc.assert(
      fc.property(anyDrawing, anyEdge, anyStart, anyLevel, (rows, edge, start, level) => {
        const fabric = fabricOf(rows, { edge, start }, { rowsPerChunk: 3 });
        const seen = new Map<string, string>();
        for (const piece of piecesOf(fabric, level)) {
          const { knots = [], first, points, colour } = piece;
          for (let k = 0; k < knots.length; k += 4) {
            const [row, column, from, count] = knots.slice(k, k + 4) as unknown as number[];
            const key = `${row} ${column}`;
            expect(seen.has(key)).toBe(false);
            seen.set(key, colour);
            for (let i = from! - first; i < from! - first + count!; i++) {
              const found = fabric.knotAt(points[i * 3]!, points[i * 3 + 1]!);
              expect(found).toEqual({ row, column });
            }
          }
        }
        expect(seen.size).toBe(rows.length * rows[0]!.length);
        const colours = new Map<string, string>();
        for (const [key, colour] of seen) {
          const [row, column] = key.split(' ').map(Number) as [number, number];
          const letter = rows[row]![column]!;
          expect(colours.get(letter) ?? colour).toBe(colour);
          colours.set(letter, colour);
        }
        expect(new Set(colours.values()).size).toBe(colours.size);
      }),
      few,
    );
  });

  it('joins its chunks without a seam, whatever their levels of detail', () => {
    fc.assert(
      fc.property(anyDrawing, anyEdge, anyLevel, anyLevel, (rows, edge, upper, lower) => {
        const fabric = fabricOf(rows, { edge }, { rowsPerChunk: 2 });
        const at = (chunk: number, level: Level) =>
          piecesOf(fabric, level).filter((piece) => piece.chunk === chunk);
        const borderEnds = (pieces: readonly Piece[], side: 'fromAbove' | 'toBelow') =>
          pieces
            .filter((piece) => piece[side])
            .map((p) => endsOf(p).map((e) => `${p.string} ${e}`));
        for (let k = 0; k + 1 < fabric.chunks; k++) {
          const above = borderEnds(at(k, upper), 'toBelow');
          const below = borderEnds(at(k + 1, lower), 'fromAbove');
          // A float may dip into a chunk and come back, so their numbers may differ.
          for (const [one, other] of [
            [above, below],
            [below, above],
          ] as const) {
            const ends = new Set(other.flat());
            for (const pair of one) expect(pair.some((end) => ends.has(end))).toBe(true);
          }
        }
      }),
      few,
    );
  });

  it('has every string in one piece', () => {
    fc.assert(
      fc.property(anyDrawing, anyEdge, anyStart, (rows, edge, start) => {
        const fabric = fabricOf(rows, { edge, start }, { rowsPerChunk: 2 });
        for (const chains of wholeStrings(piecesOf(fabric)).values()) {
          expect(chains).toHaveLength(1);
          for (const v of chains[0]!) expect(Number.isFinite(v)).toBe(true);
        }
      }),
      few,
    );
  });

  it('is the mirror image of the mirrored chart begun on the other side', () => {
    fc.assert(
      fc.property(anyDrawing, anyEdge, anyStart, anyLevel, (rows, edge, start, level) => {
        const fabric = fabricOf(rows, { edge, start });
        const backwards = rows.map((row) => [...row].reverse().join(''));
        const mirror = piecesOf(fabricOf(backwards, { edge, start: other[start] }), level);
        const width = (fabric.columns - 1) * fabric.pitch;
        const leads = (piece: Piece) => piece.role === 'lead';
        const mirrored = mirror.filter(leads);
        piecesOf(fabric, level)
          .filter(leads)
          .forEach((piece, i) => {
            const twin = mirrored[i]!;
            expect([twin.part, twin.count]).toEqual([piece.part, piece.count]);
            for (let k = 0; k < piece.points.length; k++) {
              const v = piece.points[k]!;
              expect(twin.points[k]).toBeCloseTo(k % 3 === 0 ? width - v : v, 3);
            }
          });
      }),
      few,
    );
  });

  it('doubles in every direction with the diameter', () => {
    fc.assert(
      fc.property(anyDrawing, anyEdge, (rows, edge) => {
        const once = fabricOf(rows, { edge });
        const twice = fabricOf(rows, { edge }, { diameter: 2 });
        for (const name of ['width', 'length', 'thickness', 'thicknessWithFloats'] as const) {
          expect(twice.size[name]).toBeCloseTo(2 * once.size[name], 9);
        }
        const big = piecesOf(twice);
        piecesOf(once).forEach((piece, i) => {
          expect(big[i]!.radius).toBe(2 * piece.radius);
          piece.points.forEach((v, k) => {
            expect(big[i]!.points[k]).toBeCloseTo(2 * v, 4);
          });
        });
      }),
      { numRuns: 10 },
    );
  });

  it('keeps floats and tails of leads behind the work', () => {
    fc.assert(
      fc.property(anyDrawing, anyEdge, (rows, edge) => {
        const pieces = piecesOf(fabricOf(rows, { edge }));
        const ofParts = (...parts: string[]) =>
          pieces.filter((piece) => parts.includes(piece.part));
        const knots = ofParts('lead').flatMap(({ knots = [], points, first }) => {
          const depths: number[] = [];
          for (let k = 0; k < knots.length; k += 4) {
            const from = knots[k + 2]! - first;
            for (let i = from; i < from + knots[k + 3]!; i++) depths.push(points[i * 3 + 2]!);
          }
          return depths;
        });
        const back = Math.min(...knots);
        for (const { points } of ofParts('float')) {
          for (let i = 2; i < points.length; i += 3) expect(points[i]).toBeLessThan(back);
        }
      }),
      few,
    );
  });

  it('needs fewer points at every coarser level', () => {
    const fabric = fabricOf(ALL_CHANGES);
    const counts = LEVELS.map((level) => fabric.chunk(0, level).points.length / 3);
    for (let i = 1; i < counts.length; i++) expect(counts[i]).toBeLessThan(0.8 * counts[i - 1]!);
  });

  it('is wider with wrapped edges, which wave, than with straight ones', () => {
    const rows = Array<string>(8).fill('aaaaaaaa');
    const reach = (edge: 'straight' | 'wrapped') => {
      const fabric = fabricOf(rows, { edge });
      const middle = 7 * fabric.pitch;
      const most = new Float64Array(8);
      for (const { part, points } of piecesOf(fabric)) {
        if (part !== 'lead') continue;
        for (let i = 0; i < points.length; i += 3) {
          const row = Math.floor(points[i + 1]! / fabric.rowHeight);
          if (row >= 0 && row < 7) most[row] = Math.max(most[row]!, points[i]! - middle);
        }
      }
      return { size: fabric.size, outermost: most.slice(0, 7) };
    };
    const straight = reach('straight');
    const wrapped = reach('wrapped');
    expect(wrapped.size.width).toBeGreaterThan(straight.size.width + 1);
    expect(Math.max(...straight.outermost) - Math.min(...straight.outermost)).toBeLessThan(0.05);
    // Turns on the right lie between rows 1 and 2, 3 and 4, ...
    for (let row = 0; row + 1 < 7; row += 2) {
      expect(wrapped.outermost[row]! - wrapped.outermost[row + 1]!).toBeGreaterThan(0.4);
    }
    expect(Math.max(...wrapped.outermost)).toBeCloseTo((wrapped.size.width - 7 * 3) / 2 - 0.5, 1);
    // All its knots being clove hitches, a wrapped piece is shorter.
    expect(wrapped.size.length).toBeLessThan(0.9 * straight.size.length);
  });

  it('stretches as a swatch says', () => {
    const plain = fabricOf(ALL_CHANGES);
    const fitted = fabricOf(ALL_CHANGES, {}, { across: 1.1, along: 0.9 });
    expect(fitted.size.width).toBeCloseTo(1.1 * plain.size.width, 9);
    expect(fitted.size.length).toBeCloseTo(0.9 * plain.size.length, 9);
    const [a] = piecesOf(plain).filter(({ part }) => part === 'lead') as [Piece];
    const [b] = piecesOf(fitted).filter(({ part }) => part === 'lead') as [Piece];
    for (let i = 0; i < a.points.length; i += 3) {
      expect(b.points[i]).toBeCloseTo(1.1 * a.points[i]!, 4);
      expect(b.points[i + 1]).toBeCloseTo(0.9 * a.points[i + 1]!, 4);
    }
  });

  it('covers its strings with knots of any thickness', () => {
    for (const heldDiameter of [0.5, 0.8, 1.5, 2]) {
      const fabric = fabricOf(ALL_CHANGES, {}, { heldDiameter });
      const base = piecesOf(fabric).find(({ role }) => role === 'base');
      expect(base?.radius).toBe(heldDiameter / 2);
      expect(fabric.pitch).toBeCloseTo(heldDiameter + 2, 6);
    }
  });

  it('can be built in any order and again', () => {
    const fabric = fabricOf(ALL_CHANGES, {}, { rowsPerChunk: 3 });
    const first = fabric.chunk(2);
    fabric.chunk(0, 3);
    expect(fabric.chunk(2)).toEqual(first);
  });

  it('builds any part of 2,000 rows of 100 knots by itself', () => {
    const rows = Array.from({ length: 2000 }, (_, row) => (row % 18 < 9 ? 'a' : 'b').repeat(100));
    const fabric = fabricOf(rows);
    for (const chunk of [0, Math.floor(fabric.chunks / 2), fabric.chunks - 1]) {
      const { firstRow, rowCount: count, strands } = fabric.chunk(chunk, 3);
      const places = new Set<string>();
      for (const { knots = [] } of strands) {
        for (let k = 0; k < knots.length; k += 4) places.add(`${knots[k]} ${knots[k + 1]}`);
      }
      expect(places.size).toBe(count * 100);
      expect(places.has(`${firstRow + count - 1} 99`)).toBe(true);
    }
  });

  it('says what it cannot do', () => {
    expect(() => fabricOf(['a'], {}, { diameter: 0 })).toThrow(/diameter of the thread in mm/i);
    expect(() => fabricOf(['a'], {}, { heldDiameter: 3 })).toThrow(/from 0.5 to 2/);
    expect(() => fabricOf(['a'], {}, { across: 3 })).toThrow(
      /across is 3; it must be from 0.5 to 2/,
    );
    expect(() => fabricOf(['a'], {}, { rowsPerChunk: 0 })).toThrow(/whole number from 1 to 100/);
    expect(() => fabricOf(['a']).chunk(1)).toThrow(/no chunk 1; there are 1, from 0/);
    expect(() => fabricOf(['a']).chunk(0, 7 as Level)).toThrow(/level of detail 7/);
    expect(fabricOf(['a']).knotAt(-5, 0)).toBeNull();
  });

  it('has base strings as long as the piece, tails not counted, that hardly bend', () => {
    const fabric = fabricOf(ALL_CHANGES);
    for (const { part, points } of piecesOf(fabric)) {
      if (part !== 'base') continue;
      const longer = lengthOf(points) / fabric.size.length - 1;
      expect(longer).toBeGreaterThan(-1e-6);
      expect(longer).toBeLessThan(0.001);
    }
  });

  it('opens gaps only where leads pass, a little at a time from row to row', () => {
    fc.assert(
      fc.property(anyDrawing, anyEdge, (rows, edge) => {
        const fabric = fabricOf(rows, { edge });
        const { pitch } = fabric;
        const x = (row: number, column: number) => fabric.placeOf(row, column)[0];
        for (let row = 0; row < fabric.rows; row++) {
          for (let column = 0; column < fabric.columns; column++) {
            const [at, y] = fabric.placeOf(row, column);
            expect(fabric.knotAt(at, y)).toEqual({ row, column });
            if (column > 0) expect(at - x(row, column - 1)).toBeGreaterThan(pitch - 1e-6);
            if (row > 0) expect(Math.abs(at - x(row - 1, column))).toBeLessThan(0.1001);
          }
        }
      }),
      few,
    );
  });

  it.each(EDGE_TECHNIQUES)('keeps its size in one colour and in stripes: %s', (edge) => {
    const plain = fabricOf(Array<string>(12).fill('aaaaaaaa'), { edge });
    expect(plain.size.width).toBe(plain.size.leastWidth);
    const stripes = ['a', 'a', 'b', 'c', 'c', 'c', 'b', 'a'].map((colour) => colour.repeat(8));
    const striped = fabricOf(stripes, { edge });
    expect(striped.size.width / plain.size.width - 1).toBeLessThan(0.01);
    expect(striped.size.length / striped.rows).toBeCloseTo(plain.size.length / plain.rows, 9);
  });
});
