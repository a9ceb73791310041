import { NO_KNOT } from '../diagonal/pattern.js';
import { type DiagonalMistake, isOfStart, isPlaced } from './mistake.js';
import { NO_SLOT, type Piece, type PieceRow } from './piece.js';

/** Where a mistake is put right by undoing: the first knot to undo, and all that hang on it. */
export interface DiagonalUndo {
  /** Row and place to go back to, from 0; place is null when it is a whole row. */
  readonly row: number;
  readonly place: number | null;
  /** Knots to undo, half-tied ones too, each with row and place; those tied last come first. */
  readonly knots: readonly { readonly row: number; readonly place: number }[];
}

/**
 * What has to be undone to put mistakes right, in a piece knotted as far as `rows`. A knot can be
 * opened when no later knot holds either of its strings, so with it go all knots that its strings,
 * and theirs, were part of since.
 */
export function diagonalUndo(
  piece: Piece,
  mistakes: readonly DiagonalMistake[],
  rows: number,
): DiagonalUndo {
  const { strings } = piece.pattern;
  const tied = Math.min(rows, piece.rows.length);
  const open = new Uint8Array(strings);
  const starts = mistakes.map((mistake) => apexOf(mistake, piece));
  const top = starts.reduce((one, other) =>
    other.row < one.row || (other.row === one.row && (other.place ?? -1) < (one.place ?? -1))
      ? other
      : one,
  );
  const knots: { row: number; place: number }[] = [];
  for (let row = top.row; row < tied; row++) {
    for (const start of starts) {
      if (start.row !== row) continue;
      for (const slot of start.slots) open[slot] = 1;
    }
    const { slots, knots: kinds } = piece.rows[row] as PieceRow;
    for (let place = 0; place < kinds.length; place++) {
      const slot = slots[place] as number;
      if (kinds[place] === NO_KNOT || slot === NO_SLOT) continue;
      const isApex = starts.some((start) => start.row === row && start.places.includes(place));
      if (!isApex && open[slot] === 0 && open[slot + 1] === 0) continue;
      open[slot] = 1;
      open[slot + 1] = 1;
      knots.push({ row, place });
    }
  }
  return { row: top.row, place: top.place, knots: knots.reverse() };
}

interface Apex {
  readonly row: number;
  readonly place: number | null;
  /** Places tied wrongly, and slots of strings that hang wrongly, in that row. */
  readonly places: readonly number[];
  readonly slots: readonly number[];
}

function apexOf(mistake: DiagonalMistake, piece: Piece): Apex {
  const { strings } = piece.pattern;
  if (isOfStart(mistake)) {
    const slots = mistake.kind === 'wrong-colour' ? [mistake.slot] : [mistake.slot, mistake.other];
    return { row: 0, place: null, places: [], slots };
  }
  const { row } = mistake;
  if (!isPlaced(mistake)) {
    return { row, place: null, places: [], slots: Array.from({ length: strings }, (_, i) => i) };
  }
  const { place } = mistake;
  const end = mistake.kind === 'one-slot-off' && mistake.span === 'rest' ? strings : place + 1;
  const places = Array.from({ length: Math.max(1, end - place) }, (_, i) => place + i);
  // Where a knot is missing its strings may have been tied on since.
  const slot = piece.rows[row]?.slots[place] ?? NO_SLOT;
  const slots = mistake.kind === 'missing-knot' && slot !== NO_SLOT ? [slot, slot + 1] : [];
  return { row, place, places, slots };
}
