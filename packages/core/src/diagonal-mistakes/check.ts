import { type DiagonalPattern, NO_KNOT } from '../diagonal/pattern.js';
import { quoted } from '../document/quote.js';
import { InputError, type Place } from '../errors.js';
import { KNOT_KINDS } from '../model/knot.js';
import {
  DIAGONAL_MISTAKE_KINDS,
  type DiagonalMistake,
  isOfStart,
  isPlaced,
  type PlacedMistake,
  type StartMistake,
} from './mistake.js';
import { NO_SLOT, type PieceRow, pieceOf } from './piece.js';

/** Most mistakes that one piece can be given. */
const MAX_DIAGONAL_MISTAKES = 100;

/** @throws InputError when a mistake names a row, place, slot or colour that the piece lacks */
export function checkDiagonalMistakes(
  pattern: DiagonalPattern,
  mistakes: readonly DiagonalMistake[],
): void {
  if (mistakes.length > MAX_DIAGONAL_MISTAKES) {
    refuse(
      `${mistakes.length} mistakes are too many for one piece.`,
      {},
      `Give at most ${MAX_DIAGONAL_MISTAKES}.`,
    );
  }
  let rows = pattern.rows;
  const moving = mistakes.filter((mistake) => !isPlaced(mistake) && !isOfStart(mistake));
  for (const mistake of moving.sort(byRow)) rows = checkRow(mistake, rows);
  const piece = pieceOf(pattern, moving);
  for (const mistake of mistakes) {
    if (!DIAGONAL_MISTAKE_KINDS.includes(mistake.kind)) {
      refuse(
        `${quoted(String(mistake.kind))} is no kind of mistake.`,
        {},
        `Choose from ${DIAGONAL_MISTAKE_KINDS.join(', ')}.`,
      );
    }
    if (isOfStart(mistake)) checkStart(pattern, mistake);
    else if (isPlaced(mistake)) {
      checkIndex('row', mistake.row, rows);
      checkPlaced(piece.rows[mistake.row] as PieceRow, mistake);
    }
  }
}

function byRow(one: DiagonalMistake, other: DiagonalMistake): number {
  return ('row' in one ? one.row : 0) - ('row' in other ? other.row : 0);
}

function checkRow(mistake: DiagonalMistake, rows: number): number {
  if (mistake.kind === 'missing-row') {
    checkIndex('row', mistake.row, rows);
    if (rows === 1) refuse('Every row would be missing.', {}, 'Leave at least one.');
    return rows - 1;
  }
  if (mistake.kind === 'extra-row') {
    checkIndex('row', mistake.row, rows + 1, 1);
    return rows + 1;
  }
  return rows;
}

function checkStart(pattern: DiagonalPattern, mistake: StartMistake): void {
  checkIndex('slot', mistake.slot, pattern.strings);
  if (mistake.kind === 'wrong-colour') checkIndex('colour', mistake.colour, pattern.colours.length);
  else checkIndex('slot', mistake.other, pattern.strings);
}

function checkPlaced(row: PieceRow, mistake: PlacedMistake): void {
  const at = { row: mistake.row + 1 };
  const slot = row.slots[mistake.place];
  if (slot === undefined || slot === NO_SLOT || !Number.isInteger(mistake.place)) {
    refuse(
      `Row ${mistake.row + 1} has no place ${mistake.place + 1} for a knot.`,
      at,
      'Choose one of its places, counted from the left.',
    );
  }
  const bare = row.knots[mistake.place] === NO_KNOT;
  if (bare !== (mistake.kind === 'extra-knot')) {
    refuse(
      bare
        ? `No knot belongs in place ${mistake.place + 1} of row ${mistake.row + 1}.`
        : `A knot belongs in place ${mistake.place + 1} of row ${mistake.row + 1}, so none can be too many.`,
      at,
      'Choose another place, or another kind of mistake.',
    );
  }
  if ('tied' in mistake && !KNOT_KINDS.includes(mistake.tied)) {
    refuse(
      `${quoted(String(mistake.tied))} is no kind of knot.`,
      at,
      `Choose from ${KNOT_KINDS.join(', ')}.`,
    );
  }
}

function checkIndex(what: string, index: number, count: number, first = 0): void {
  if (Number.isInteger(index) && index >= first && index < count) return;
  refuse(
    `There is no ${what} ${index + 1} for this mistake.`,
    what === 'row' ? { row: index + 1 } : {},
    count <= first ? 'The piece is too small for it.' : `Choose from ${first + 1} to ${count}.`,
  );
}

function refuse(what: string, place: Place, remedy: string): never {
  throw new InputError('no-such-mistake', what, place, remedy);
}
