import { EDGE_TECHNIQUES, planAlpha, readTextChart } from '@halfhitch/core';
import { describe, expect, it } from 'vitest';
import type { PieceStrand } from '../src/piece/chunks.js';
import { PieceChunks } from '../src/piece/piece-chunks.js';

const CHART = `b #1f6fb2 lake blue
o #e8742c buoy orange
w #f4f1e8 chalk

bbobo
bbbow
obbbb
wwwoo
`;
const KNOTS = 20;
const VIEW = { first: 0, last: 0, level: 0 } as const;

const pieceOf = (edge: (typeof EDGE_TECHNIQUES)[number], mirror = false): PieceChunks =>
  new PieceChunks(planAlpha(readTextChart(CHART).chart, { edge }), mirror);

const pointOf = ({ points }: PieceStrand, at: number): number[] =>
  Array.from(points.subarray(3 * at, 3 * at + 3));

const apart = (one: readonly number[], other: readonly number[]): number =>
  Math.hypot(...one.map((v, axis) => v - (other[axis] as number)));

describe.each(EDGE_TECHNIQUES)('ends of leads, %s edges', (edge) => {
  const piece = pieceOf(edge);
  const plan = piece.plan;
  const strands = piece.strands(0, 0);
  const seen = (strand: PieceStrand, time: number, at: number): boolean =>
    (strand.when[at] as number) <= time;

  it('go on where the thread is knotted to, one for each lead that is begun', () => {
    for (let time = 0.5; time < KNOTS; time += 0.5) {
      const ends = piece.hanging(time, VIEW);
      expect(new Set(ends.map(({ string }) => string)).size, `${time}`).toBe(ends.length);
      for (const end of ends) {
        const from = pointOf(end, 0);
        const held = strands.some(
          (strand) =>
            strand.string === end.string &&
            strand.part !== 'tail' &&
            strand.when.some(
              (_, at) => seen(strand, time, at) && apart(pointOf(strand, at), from) < 1e-4,
            ),
        );
        expect(held, `${time}, ${end.string}`).toBe(true);
        const lowest = pointOf(end, end.when.length - 1);
        expect(lowest[1]).toBeLessThan(-plan.rows * piece.rowHeight);
      }
      // The lead of the last knot that was begun hangs in front.
      const inHand = ends.filter((end) => (pointOf(end, end.when.length - 1)[2] as number) > 0);
      expect(inHand.length, `${time}`).toBeGreaterThan(0);
    }
  });

  it('are those of the finished piece at its end, and none before the first knot', () => {
    expect(piece.hanging(0, VIEW)).toEqual([]);
    expect(piece.hanging(KNOTS, VIEW)).toEqual([]);
  });

  it('mirror with the piece', () => {
    const mirrored = pieceOf(edge, true).hanging(7.5, VIEW);
    const plain = piece.hanging(7.5, VIEW);
    expect(mirrored.length).toBe(plain.length);
    mirrored.forEach((end, i) => {
      const [x, y, z] = pointOf(plain[i] as PieceStrand, 4) as [number, number, number];
      expect(apart(pointOf(end, 4), [-x, y, z])).toBeLessThan(1e-4);
    });
  });
});
