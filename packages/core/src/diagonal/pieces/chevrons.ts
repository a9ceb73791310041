import type { DiagonalPattern } from '../pattern.js';
import { bandOf, modulo } from './build.js';
import { mirroredPiece, stringsInHalf } from './mirrored.js';
import type { PieceOptions } from './options.js';

/**
 * Nested arrowheads that point down: from both edges the strings tie towards the middle.
 *
 * @throws InputError when the piece cannot be made so
 */
export function chevrons(options: PieceOptions): DiagonalPattern {
  const inHalf = stringsInHalf(options.strings);
  return mirroredPiece(options, 'Pennant chevrons', {
    shown: inHalf,
    inwards: () => true,
    colour: (step) => bandOf(Math.floor(step / 2), inHalf, options.colours.length),
  });
}

/**
 * Nested diamonds, their halves at the edges between them: what runs outwards is seen above the
 * middle of each diamond, what runs inwards below it. The first colour is innermost.
 *
 * @throws InputError when the piece cannot be made so
 */
export function diamonds(options: PieceOptions): DiagonalPattern {
  const inHalf = stringsInHalf(options.strings);
  const round = 2 * inHalf;
  // The middle of a diamond stands half a round down, so that a repeat begins between two.
  const middle = inHalf;
  // A ring is seen on every other step, once on each of its sides.
  const rings = Math.ceil(inHalf / 2);
  return mirroredPiece(options, 'Buoy diamonds', {
    shown: rings,
    inwards: (row) => modulo(row - middle, round) < inHalf,
    colour: (step) => {
      const from = modulo(step + middle - (inHalf - 1), round);
      return bandOf((Math.min(from, round - from) - 1) / 2, rings, options.colours.length);
    },
  });
}
