import { EDGE_TECHNIQUES } from '@halfhitch/core';
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
const STRIPES = ['aaaa', 'aaaa', 'bbbb', 'cccc', 'cccc', 'bbbb', 'aaaa'];
const TWO_WIDE = ['aa', 'aa', 'ab', 'ca', 'ab', 'bb', 'cb', 'bc'];
const ONE_ROW = ['abbabbbb'];
const ONE_WIDE = ['a', 'a', 'b', 'a', 'c', 'c'];

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

/** The rule: no two strands nearer than this, by the sum of their radii. */
const LIMIT = 0.95;

/** The least distance of any two strands, by the sum of their radii. */
const least = (strands: readonly CheckedStrand[]): number => leastClearance(strands)?.ratio ?? 1.6;

describe.each(EDGE_TECHNIQUES)('clearance in a fabric with %s edges', (edge) => {
  it.each([
    ['plain', PLAIN],
    ['pennant', PENNANT],
    ['blocks', BLOCKS],
    ['all changes', ALL_CHANGES],
  ] as const)('of knots from each other and from base strings: %s', (_name, rows) => {
    const pieces = piecesOf(fabricOf(rows, { edge }));
    expect(least([...knotsOf(pieces), ...partsOf(pieces, 'base')])).toBeGreaterThan(LIMIT);
  });

  it.each([
    ['pennant', PENNANT],
    ['blocks', BLOCKS],
  ] as const)('of floats from each other and from knots: %s', (_name, rows) => {
    const pieces = piecesOf(fabricOf(rows, { edge }));
    const floats = partsOf(pieces, 'float');
    expect(floats.length).toBeGreaterThan(3);
    expect(least(floats)).toBeGreaterThan(LIMIT);
    const alone = floats.map((float) => least([float, ...knotsOf(pieces)]));
    expect(Math.min(...alone)).toBeGreaterThan(LIMIT);
  });

  it.each([
    ['plain', PLAIN],
    ['stripes', STRIPES],
    ['two knots wide', TWO_WIDE],
    ['one knot wide', ONE_WIDE],
    ['one row', ONE_ROW],
    ['pennant', PENNANT],
    ['blocks', BLOCKS],
    ['all changes', ALL_CHANGES],
  ] as const)('of every strand from every other and from itself: %s', (_name, rows) => {
    expect(least(stringsOf(piecesOf(fabricOf(rows, { edge }))))).toBeGreaterThan(LIMIT);
  });

  // The same drawings each time: how crowded a back can get has no proven bound.
  it.each(['left', 'right'] as const)(
    'of every strand in drawings made up at random, begun on the %s',
    (start) => {
      for (const rows of fc.sample(anyDrawing, { seed: 20, numRuns: 16 })) {
        const pieces = piecesOf(fabricOf(rows, { edge, start }));
        expect(least(stringsOf(pieces)), rows.join(' ')).toBeGreaterThan(LIMIT);
      }
    },
  );
});
