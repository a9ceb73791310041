import { type DiagonalPattern, NO_KNOT } from '../diagonal/pattern.js';
import { KNOT_KINDS } from '../model/knot.js';
import type { DiagonalMistake, PlacedMistake, RowMistake, StartMistake } from './mistake.js';
import { HALF, NO_SLOT, type Piece, type PieceRow, soundPiece } from './piece.js';

/** Every mistake that can be made in knotting a pattern: of rows, at the start, knot by knot. */
export function* possibleDiagonalMistakes(
  pattern: DiagonalPattern,
): Generator<DiagonalMistake, void, undefined> {
  const piece = soundPiece(pattern);
  yield* possibleRows(piece, pattern.rows);
  yield* possibleAtStart(piece);
  for (let row = 0; row < pattern.rows; row++) yield* possibleInRow(piece, row);
}

/** Every mistake that can be made in one row of a piece, place by place. */
export function* possibleInRow(piece: Piece, row: number): Generator<PlacedMistake> {
  const { slots, knots } = piece.rows[row] as PieceRow;
  const { strings } = piece.pattern;
  let last = knots.length - 1;
  while (last >= 0 && knots[last] === NO_KNOT) last--;
  for (let place = 0; place < knots.length; place++) {
    const slot = slots[place] as number;
    const knot = knots[place] as number;
    if (slot === NO_SLOT) continue;
    const at = { row, place };
    if (knot === NO_KNOT) {
      for (const tied of KNOT_KINDS) yield { kind: 'extra-knot', ...at, tied };
      continue;
    }
    // Where a half is tied already, its place has been got wrong enough.
    if (knot >= HALF) continue;
    for (const tied of KNOT_KINDS) {
      if (tied !== KNOT_KINDS[knot]) yield { kind: 'wrong-kind', ...at, tied };
    }
    yield { kind: 'missing-knot', ...at };
    yield { kind: 'half-knot', ...at };
    for (const towards of ['left', 'right'] as const) {
      const moved = slot + (towards === 'right' ? 1 : -1);
      if (moved < 0 || moved + 1 >= strings) continue;
      yield { kind: 'one-slot-off', ...at, towards, span: 'knot' };
      if (place < last) yield { kind: 'one-slot-off', ...at, towards, span: 'rest' };
    }
  }
}

/** Every mistake that can be made in hanging the strings and that shows at all. */
export function* possibleAtStart(piece: Piece): Generator<StartMistake> {
  const { start, pattern } = piece;
  for (let slot = 0; slot < pattern.strings; slot++) {
    for (let other = slot + 1; other < pattern.strings; other++) {
      if (start[slot] !== start[other]) yield { kind: 'swapped-strings', slot, other };
    }
    for (let colour = 0; colour < pattern.colours.length; colour++) {
      if (colour !== start[slot]) yield { kind: 'wrong-colour', slot, colour };
    }
  }
}

/** Every row too many or too few, as far as a row of the piece. */
export function* possibleRows(piece: Piece, upTo: number): Generator<RowMistake> {
  const end = Math.min(upTo, piece.rows.length - 1);
  for (let row = 0; row <= end; row++) {
    if (piece.rows.length > 1) yield { kind: 'missing-row', row };
    if (row > 0) yield { kind: 'extra-row', row };
  }
  if (upTo >= piece.rows.length) yield { kind: 'extra-row', row: piece.rows.length };
}
