import { knotsAcross, knotsInRow, slotOfPlace } from '../diagonal/lattice.js';
import { type DiagonalPattern, NO_KNOT } from '../diagonal/pattern.js';
import { BARE } from '../diagonal/picture.js';
import { LEFT_TIES, NO_STRING_HERE, PLACES_CHANGE } from '../diagonal/simulate.js';
import { KNOT_KINDS } from '../model/knot.js';
import { type DiagonalMistake, isOfStart, isPlaced, type PlacedMistake } from './mistake.js';

/** Entry of a place in whose row no two strings were picked up for it. */
export const NO_SLOT = 0xffff;

/** What is added to a kind of which only the first half hitch is tied. */
export const HALF = 4;

/** What a maker does in one row: which neighbours are picked up, and what is tied with them. */
export interface PieceRow {
  /** The row of the pattern that the maker follows, from 0. */
  readonly source: number;
  /** Slot of the left string by place, or NO_SLOT. */
  readonly slots: Uint16Array;
  /** Index into KNOT_KINDS, with HALF added for a single half hitch; or NO_KNOT. */
  readonly knots: Uint8Array;
  /** Whether neighbours are picked up a slot off somewhere, so that knots may share a string. */
  readonly shifted: boolean;
}

/** A piece as a maker ties it, mistakes and all. */
export interface Piece {
  readonly pattern: DiagonalPattern;
  /** Colour of each string by the slot that it is meant to hang in at the start. */
  readonly start: Uint8Array;
  readonly rows: readonly PieceRow[];
}

/** How a piece is knotted without any mistake. */
export function soundPiece(pattern: DiagonalPattern): Piece {
  const rows = Array.from({ length: pattern.rows }, (_, row) => rowOf(pattern, row));
  return { pattern, start: pattern.start, rows };
}

function rowOf(pattern: DiagonalPattern, row: number): PieceRow {
  const across = knotsAcross(pattern);
  const slots = new Uint16Array(across).fill(NO_SLOT);
  const knots = new Uint8Array(across).fill(NO_KNOT);
  for (let place = 0; place < knotsInRow(pattern, row); place++) {
    const kind = pattern.knots[row * across + place] as number;
    slots[place] = slotOfPlace(pattern, row, place);
    if (kind < KNOT_KINDS.length) knots[place] = kind;
  }
  return { source: row, slots, knots, shifted: false };
}

/**
 * The same piece with one mistake more. Rows of the mistake are those of the piece with all
 * mistakes that move rows; give those first.
 */
export function withMistake(piece: Piece, mistake: DiagonalMistake): Piece {
  if (isOfStart(mistake)) {
    const start = piece.start.slice();
    if (mistake.kind === 'wrong-colour') start[mistake.slot] = mistake.colour;
    else {
      start[mistake.slot] = piece.start[mistake.other] as number;
      start[mistake.other] = piece.start[mistake.slot] as number;
    }
    return { ...piece, start };
  }
  const rows = [...piece.rows];
  if (isPlaced(mistake)) {
    rows[mistake.row] = rowWith(piece.rows[mistake.row] as PieceRow, mistake, piece.pattern);
  } else if (mistake.kind === 'missing-row') rows.splice(mistake.row, 1);
  else rows.splice(mistake.row, 0, rows[mistake.row - 1] as PieceRow);
  return { ...piece, rows };
}

/** The piece that several mistakes make together. */
export function pieceOf(pattern: DiagonalPattern, mistakes: readonly DiagonalMistake[]): Piece {
  const moving = mistakes
    .filter((mistake) => !isPlaced(mistake) && !isOfStart(mistake))
    .sort((one, other) => (one as { row: number }).row - (other as { row: number }).row);
  const rest = mistakes.filter((mistake) => isPlaced(mistake) || isOfStart(mistake));
  return [...moving, ...rest].reduce(withMistake, soundPiece(pattern));
}

/** One row of the piece with a mistake in it. */
export function rowWith(
  row: PieceRow,
  mistake: PlacedMistake,
  { strings }: { readonly strings: number },
): PieceRow {
  const { place } = mistake;
  const slots = row.slots.slice();
  const knots = row.knots.slice();
  if (slots[place] === NO_SLOT) return row;
  switch (mistake.kind) {
    case 'wrong-kind':
    case 'extra-knot':
      knots[place] = KNOT_KINDS.indexOf(mistake.tied);
      break;
    case 'missing-knot':
      knots[place] = NO_KNOT;
      break;
    case 'half-knot':
      if ((knots[place] as number) < HALF) knots[place] = (knots[place] as number) + HALF;
      break;
    case 'one-slot-off': {
      const last = mistake.span === 'knot' ? place : slots.length - 1;
      const step = mistake.towards === 'right' ? 1 : -1;
      for (let at = place; at <= last; at++) {
        const slot = slots[at] as number;
        if (slot === NO_SLOT) continue;
        const moved = slot + step;
        const tied = moved >= 0 && moved + 1 < strings;
        slots[at] = tied ? moved : NO_SLOT;
        if (!tied) knots[at] = NO_KNOT;
      }
    }
  }
  const shifted = row.shifted || mistake.kind === 'one-slot-off';
  return { source: row.source, slots, knots, shifted };
}

/** What a piece shows. Strings are named by the slot that they are meant to hang in at the start. */
export interface KnottedPiece {
  readonly piece: Piece;
  /** Rows that are knotted so far. */
  readonly rows: number;
  /** Colour that each knot shows, or BARE; `rows x knotsAcross`, by place. */
  readonly cells: Uint8Array;
  readonly tying: Uint16Array;
  /** String in each slot before each row, and after the last: `(rows + 1) x strings`. */
  readonly order: Uint16Array;
}

/** @param rows how many rows are knotted so far. Default: all of them */
export function knotPiece(piece: Piece, rows = piece.rows.length): KnottedPiece {
  const { pattern, start } = piece;
  const { strings } = pattern;
  const across = knotsAcross(pattern);
  const tied = Math.min(rows, piece.rows.length);
  const cells = new Uint8Array(tied * across).fill(BARE);
  const tying = new Uint16Array(tied * across).fill(NO_STRING_HERE);
  const order = new Uint16Array((tied + 1) * strings);
  for (let slot = 0; slot < strings; slot++) order[slot] = slot;
  for (let row = 0; row < tied; row++) {
    const after = order.subarray((row + 1) * strings, (row + 2) * strings);
    after.set(order.subarray(row * strings, (row + 1) * strings));
    tieRow(piece.rows[row] as PieceRow, after, tying.subarray(row * across, (row + 1) * across));
    for (let cell = row * across; cell < (row + 1) * across; cell++) {
      const string = tying[cell] as number;
      if (string !== NO_STRING_HERE) cells[cell] = start[string] as number;
    }
  }
  return { piece, rows: tied, cells, tying, order };
}

/** Ties one row: strings change places in `front`, and `tying` takes who ties in each place. */
export function tieRow(
  { slots, knots }: PieceRow,
  front: Uint16Array,
  tying: Uint16Array,
  from = 0,
): void {
  for (let place = from; place < knots.length; place++) {
    const knot = knots[place] as number;
    if (knot === NO_KNOT) {
      tying[place] = NO_STRING_HERE;
      continue;
    }
    const kind = knot % HALF;
    const slot = slots[place] as number;
    const left = front[slot] as number;
    const right = front[slot + 1] as number;
    tying[place] = LEFT_TIES[kind] ? left : right;
    if (PLACES_CHANGE[kind]) {
      front[slot] = right;
      front[slot + 1] = left;
    }
  }
}
