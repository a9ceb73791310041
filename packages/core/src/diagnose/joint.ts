import { type Mistake, movesRows } from '../mistakes/mistake.js';
import type { Comparison } from './comparison.js';
import type { Piece, Workshop } from './piece.js';
import type { Found, FoundPart } from './search.js';
import { Tallier } from './tally.js';

/** Pairs tried to see which of two parts' alternatives go together. */
const MOST_PAIRS = 2_500;

/**
 * Parts whose mistakes lie so near each other that they could work on one another become one
 * part, whose alternatives are those combinations that look the same all together. The others
 * can be combined freely.
 */
export function settleParts(workshop: Workshop, comparison: Comparison, found: Found): FoundPart[] {
  const parts: FoundPart[] = [];
  for (const part of found.parts) {
    let settled = part;
    for (;;) {
      const near = parts.findIndex((other) => touch(other, settled));
      if (near < 0) break;
      const [other] = parts.splice(near, 1) as [FoundPart];
      settled = together(workshop, comparison, found, other, settled);
    }
    parts.push(settled);
  }
  return parts.sort((one, other) => span(one).first - span(other).first);
}

function together(
  workshop: Workshop,
  comparison: Comparison,
  found: Found,
  one: FoundPart,
  other: FoundPart,
): FoundPart {
  // The first alternative of each part is the one that the piece was knotted with.
  const knottedWith = [...(one.alternatives[0] ?? []), ...(other.alternatives[0] ?? [])];
  const rest = found.piece.mistakes.filter((mistake) => !knottedWith.includes(mistake));
  const alternatives: Mistake[][] = [];
  let tried = 0;
  for (const first of one.alternatives) {
    for (const second of other.alternatives) {
      const chosen = [...first, ...second];
      if (++tried > MOST_PAIRS) return { alternatives };
      const piece = knotted(workshop, [...rest, ...chosen]);
      const { key } = new Tallier(workshop, comparison, piece, 0).own;
      if (tried === 1 || key === found.tally.key) alternatives.push(chosen);
    }
  }
  return { alternatives };
}

/** A piece with mistakes made one after another; rows that move others first of all. */
function knotted(workshop: Workshop, mistakes: readonly Mistake[]): Piece {
  const order = (mistake: Mistake): number => (movesRows(mistake) ? 0 : 1);
  let piece = workshop.sound;
  for (const mistake of [...mistakes].sort((a, b) => order(a) - order(b) || a.row - b.row)) {
    piece = workshop.with(piece, mistake);
  }
  return piece;
}

/** A mistake is at work in its row and the next, and seen from the row before to the one after. */
function touch(one: FoundPart, other: FoundPart): boolean {
  const [a, b] = [span(one), span(other)];
  return a.first <= b.last + 2 && b.first <= a.last + 2;
}

function span(part: FoundPart): { first: number; last: number } {
  let first = Number.POSITIVE_INFINITY;
  let last = 0;
  for (const mistake of part.alternatives.flat()) {
    first = Math.min(first, mistake.row);
    last = Math.max(last, mistake.row);
  }
  return { first, last };
}
