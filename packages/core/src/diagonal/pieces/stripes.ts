import { InputError } from '../../errors.js';
import { DIAGONAL_LIMITS } from '../lattice.js';
import type { DiagonalPattern } from '../pattern.js';
import { FEWEST_STRINGS, type PieceOptions, whole } from './options.js';
import { type Way, walkingPiece } from './walk.js';

export interface StripeOptions extends PieceOptions {
  /** Whether the stripes run down to the right (default) or to the left. */
  readonly lean?: 'right' | 'left';
}

/**
 * Slanting stripes of all colours in turn. One repeat: each string has gone right across once and
 * has been carried back.
 *
 * @throws InputError when the piece cannot be made so
 */
export function diagonalStripes(options: StripeOptions): DiagonalPattern {
  const way: Way = options.lean === 'left' ? -1 : 1;
  return walkingPiece(options, 'Ellerby stripes', [way], 2 * options.strings);
}

export interface ZigzagOptions extends PieceOptions {
  /** Rows from one turn to the next, 2 to 5000. Default: as many as right across. */
  readonly height?: number;
}

/**
 * Bands that go down to the right and back to the left. They turn in one row, whose knots leave
 * their strings where they hang.
 *
 * @throws InputError when the piece cannot be made so
 */
export function zigzag(options: ZigzagOptions): DiagonalPattern {
  whole('strings', options.strings, FEWEST_STRINGS, DIAGONAL_LIMITS.maxStrings);
  const height = options.height ?? Math.max(2, options.strings - 1);
  whole('height', height, 2, DIAGONAL_LIMITS.maxRows / 2);
  const ways = [...new Array<Way>(height).fill(1), ...new Array<Way>(height).fill(-1)];
  return walkingPiece(options, 'Mooring zigzag', ways, 2 * height);
}

export interface WaveOptions extends PieceOptions {
  /** How many slots the wave swings to each side, 1 to 700. Default: a third of the strings. */
  readonly swing?: number;
  /** Rows from crest to crest, even; at least 2 pi x swing. Default: about 7 x swing. */
  readonly length?: number;
}

/**
 * Bands that swing like a wave: slanting in the middle, and nearly straight down at the crests,
 * where they step to and fro.
 *
 * @throws InputError when the piece cannot be made so
 */
export function wave(options: WaveOptions): DiagonalPattern {
  const { strings } = options;
  whole('strings', strings, FEWEST_STRINGS, DIAGONAL_LIMITS.maxStrings);
  const swing = options.swing ?? Math.max(1, Math.round(strings / 3));
  whole('swing', swing, 1, 700);
  const length = options.length ?? 2 * Math.ceil(3.5 * swing);
  // The work goes one slot a row to the side, so a sine must not be steeper than that.
  const shortest = 2 * Math.ceil(Math.PI * swing);
  whole('length', length, shortest, DIAGONAL_LIMITS.maxRows);
  if (length % 2 === 1) {
    throw new InputError(
      'bad-length',
      `A wave cannot come back in ${length} rows.`,
      {},
      'Choose an even number of rows.',
    );
  }
  return walkingPiece(options, 'Lake wave', waysOfWave(swing, length), length);
}

/**
 * Steps of one slot that stay as near as they can to a sine: its slope is less than one slot a row,
 * so the way that brings the walk nearer is always open.
 */
function waysOfWave(swing: number, length: number): Way[] {
  const ways: Way[] = [];
  let at = 0;
  // One half is found and the other is its reverse, so that the wave comes back for certain.
  for (let row = 1; row <= length / 2; row++) {
    const wanted = -swing * Math.cos((2 * Math.PI * row) / length) + swing;
    const way: Way = wanted > at ? 1 : -1;
    ways.push(way);
    at += way;
  }
  return [...ways, ...ways.map((way): Way => (way === 1 ? -1 : 1)).reverse()];
}
