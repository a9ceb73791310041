import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CheckedStrand, leastClearance } from '../../src/checks/clearance.js';
import {
  ALL_CHANGES,
  anyDrawing,
  fabricOf,
  type Piece,
  piecesOf,
  wholeStrings,
} from './strands.js';

const PLAIN = Array<string>(5).fill('aaaaaa');
const PENNANT = ['aaaaaaaa', 'aaabbaaa', 'aabbbbaa', 'abbbbbba', 'aabbbbaa', 'aaabbaaa'];
const BLOCKS = ['aaaabbbbcccc', 'aaaabbbbcccc', 'ccccaaaabbbb', 'ccccaaaabbbb'];
const EDGES = ['straight', 'wrapped'] as const;

const strandOf = ({ points, radius }: Piece, id: string): CheckedStrand => ({ id, points, radius });

function knotsOf(pieces: readonly Piece[]): CheckedStrand[] {
  return pieces.flatMap((piece) => {
    const { knots = [], first } = piece;
    const found: CheckedStrand[] = [];
    for (let k = 0; k < knots.length; k += 4) {
      const from = (knots[k + 2]! - first) * 3;
      const points = piece.points.subarray(from, from + knots[k + 3]! * 3);
      found.push(strandOf({ ...piece, points }, `knot ${knots[k]} ${knots[k + 1]}`));
    }
    return found;
  });
}

const partsOf = (pieces: readonly Piece[], part: Piece['part']): CheckedStrand[] =>
  pieces
    .filter((piece) => piece.part === part)
    .map((piece, i) => strandOf(piece, `${part} ${i} ${piece.string}`));

function stringsOf(pieces: readonly Piece[]): CheckedStrand[] {
  return [...wholeStrings(pieces)].map(([id, [points]]) => ({
    id,
    points: points!,
    radius: pieces.find(({ string }) => string === id)!.radius,
  }));
}

/** Outside a wrapped edge a lead may go down to the back where the next one comes up. */
const FLOATS = { straight: 0.95, wrapped: 0.75 } as const;

/** The least distance of any two strands, by the sum of their radii. */
const least = (strands: readonly CheckedStrand[]): number => leastClearance(strands)?.ratio ?? 1.6;

describe.each(EDGES)('clearance in a fabric with %s edges', (edge) => {
  it.each([
    ['plain', PLAIN],
    ['pennant', PENNANT],
    ['blocks', BLOCKS],
    ['all changes', ALL_CHANGES],
  ] as const)('of knots from each other and from base strings: %s', (_name, rows) => {
    const pieces = piecesOf(fabricOf(rows, { edge }));
    expect(least([...knotsOf(pieces), ...partsOf(pieces, 'base')])).toBeGreaterThan(0.95);
  });

  it('of every strand in a piece of one colour', () => {
    expect(least(stringsOf(piecesOf(fabricOf(PLAIN, { edge }))))).toBeGreaterThan(0.85);
  });

  it.each([
    ['pennant', PENNANT],
    ['blocks', BLOCKS],
  ] as const)('of floats from each other and from knots: %s', (_name, rows) => {
    const pieces = piecesOf(fabricOf(rows, { edge }));
    const floats = partsOf(pieces, 'float');
    expect(floats.length).toBeGreaterThan(3);
    expect(least(floats)).toBeGreaterThan(0.95);
    const alone = floats.map((float) => least([float, ...knotsOf(pieces)]));
    expect(Math.min(...alone)).toBeGreaterThan(0.95);
  });

  // What passes through to the back presses between strands that have no room for it.
  it.each([
    ['pennant', PENNANT, 0.55],
    ['blocks', BLOCKS, 0.55],
    ['all changes', ALL_CHANGES, 0.42],
  ] as const)('of every strand, where leads pass to the back too: %s', (_name, rows, limit) => {
    expect(least(stringsOf(piecesOf(fabricOf(rows, { edge }))))).toBeGreaterThan(limit);
  });

  // The same drawings each time: how crowded a back can get has no proven bound.
  it('of floats, and of everything in less degree, in drawings made up at random', () => {
    for (const rows of fc.sample(anyDrawing, { seed: 20, numRuns: 20 })) {
      const pieces = piecesOf(fabricOf(rows, { edge }));
      expect(least(partsOf(pieces, 'float'))).toBeGreaterThan(FLOATS[edge]);
      expect(least([...knotsOf(pieces), ...partsOf(pieces, 'base')])).toBeGreaterThan(0.94);
      expect(least(stringsOf(pieces))).toBeGreaterThan(0.3);
    }
  });
});
