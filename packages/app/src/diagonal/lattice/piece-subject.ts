import type { DiagonalPiece } from '../work/messages.js';
import type { LatticeSubject } from './subject.js';
import { knotWords } from './words.js';

/** A piece to be looked at: its knots with their ways, on its strings. */
export function pieceSubject({ reading }: Pick<DiagonalPiece, 'reading'>): LatticeSubject {
  const { pattern, picture, order } = reading;
  const { strings, rows, first, colours, start, knots } = pattern;
  const lattice = { strings, rows, first };
  const look = { lattice, colours, cells: picture.cells, kinds: knots, strings: { start, order } };
  return {
    lattice,
    bytes: knots,
    look: () => look,
    words: (place) => knotWords(lattice, colours, knots, picture.cells, place),
  };
}
