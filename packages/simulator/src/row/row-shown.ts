import type { Words } from '../messages/words.js';
import type { ThreadLine } from '../thread/thread-line.js';
import type { RowMoment } from './row-lines.js';
import type { RowKnotWords } from './row-words.js';

/** The picture of a row while one of its knots is tied; `t` counts the knot's moves. */
export type RowPoses = (order: number, t: number, mirror: boolean) => RowMoment;

/** A row that is played: of an alpha piece, or of a diagonal pattern. */
export interface RowShown {
  /** From 0. */
  readonly row: number;
  /** How many moves each of its knots takes, in the order of knotting. */
  readonly moves: readonly number[];
  /** Whether a move of a knot is a half hitch. */
  isHalf(order: number, move: number): boolean;
  words(order: number, mirror: boolean, words: Words): RowKnotWords;
  pictureName(mirror: boolean, words: Words): string;
  /** A string by its name, and without a sign of what it is about to do. */
  named(line: ThreadLine, words: Words): ThreadLine;
  /** Its pictures; null until what makes them has been loaded. */
  readonly poses: RowPoses | null;
  loadPoses(): Promise<void>;
}
