import { EDGE_TECHNIQUES, type PlanOptions, planAlpha } from '@halfhitch/core';
import fc from 'fast-check';
import type { FabricStrand } from '../../src/fabric/chunk.js';
import type { Level } from '../../src/fabric/levels.js';
import { Fabric, type FabricOptions } from '../../src/index.js';
import { drawn } from '../support/charts.js';

/** A strand with its own points. */
export interface Piece extends FabricStrand {
  readonly chunk: number;
  readonly points: Float32Array;
}

export function fabricOf(
  rows: readonly string[],
  plan: PlanOptions = {},
  options: FabricOptions = {},
): Fabric {
  return new Fabric(planAlpha(drawn(...rows), plan), options);
}

export function piecesOf(fabric: Fabric, level: Level = 0): Piece[] {
  const pieces: Piece[] = [];
  for (let chunk = 0; chunk < fabric.chunks; chunk++) {
    const { points, strands } = fabric.chunk(chunk, level);
    for (const strand of strands) {
      const { first, count } = strand;
      pieces.push({ ...strand, chunk, points: points.subarray(first * 3, (first + count) * 3) });
    }
  }
  return pieces;
}

/** A point as text, so that ends can be looked up; coordinates must be the very same. */
export const endsOf = ({ points }: Piece): readonly [string, string] => [
  points.subarray(0, 3).join(),
  points.subarray(-3).join(),
];

/** The pieces of each string joined end to end, in whichever direction they were found. */
export function wholeStrings(pieces: readonly Piece[]): Map<string, Float64Array[]> {
  const strings = new Map<string, Piece[]>();
  for (const piece of pieces) {
    strings.set(piece.string, [...(strings.get(piece.string) ?? []), piece]);
  }
  return new Map([...strings].map(([id, parts]) => [id, chained(parts)]));
}

function chained(parts: readonly Piece[]): Float64Array[] {
  const left = parts.map((part) => ({ points: Array.from(part.points), ends: endsOf(part) }));
  const chains: Float64Array[] = [];
  while (left.length > 0) {
    let { points, ends } = left.shift()!;
    for (let again = true; again; ) {
      again = false;
      for (let i = 0; i < left.length; i++) {
        const other = left[i]!;
        if (other.ends[0] === ends[1]) {
          points = [...points, ...other.points.slice(3)];
          ends = [ends[0], other.ends[1]];
        } else if (other.ends[1] === ends[0]) {
          points = [...other.points, ...points.slice(3)];
          ends = [other.ends[0], ends[1]];
        } else continue;
        left.splice(i, 1);
        again = true;
        break;
      }
    }
    chains.push(Float64Array.from(points));
  }
  return chains;
}

/** A drawing with every case of colour change in it. */
export const ALL_CHANGES = [
  'aaaaaaaaaa',
  'aabbbbbbaa',
  'abbbccbbba',
  'bbbccccbbb',
  'bbcccccccb',
  'abbccccbba',
  'babbaabbac',
  'aabababaaa',
] as const;

const letters = fc.constantFrom('a', 'b', 'c');

export const anyDrawing = fc
  .tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 9 }))
  .chain(([columns, rows]) =>
    fc.array(
      fc.array(letters, { minLength: columns, maxLength: columns }).map((row) => row.join('')),
      { minLength: rows, maxLength: rows },
    ),
  );

export const anyEdge = fc.constantFrom(...EDGE_TECHNIQUES);
export const anyStart = fc.constantFrom('left' as const, 'right' as const);
