import { quoted } from '../document/quote.js';
import { InputError } from '../errors.js';
import { KNOT_KINDS } from '../model/knot.js';
import { isOfTurn, MISTAKE_KINDS, type Mistake } from './mistake.js';
import { rowsTied } from './sequence.js';
import { NOBODY, type Written } from './written.js';

/** Most mistakes that one piece can be given. */
const MAX_MISTAKES = 100;

/** @throws InputError when a mistake names a row, column or lead that the piece does not have */
export function checkMistakes(written: Written, mistakes: readonly Mistake[]): void {
  if (mistakes.length > MAX_MISTAKES) {
    refuse(
      `${mistakes.length} mistakes are too many for one piece.`,
      {},
      `Give at most ${MAX_MISTAKES}.`,
    );
  }
  const rows = rowsTied(written.rows, mistakes);
  if (rows < 1) refuse('Every row would be missing.', {}, 'Leave at least one.');
  for (const mistake of mistakes) check(written, mistake, rows);
}

function check(written: Written, mistake: Mistake, rows: number): void {
  const { columns } = written;
  const place = { row: mistake.row + 1 };
  if (!MISTAKE_KINDS.includes(mistake.kind)) {
    refuse(
      `${quoted(String(mistake.kind))} is no kind of mistake.`,
      place,
      `Choose from ${MISTAKE_KINDS.join(', ')}.`,
    );
  }
  // A row is left out before the row that stands in its place, or after the last one.
  const last = mistake.kind === 'missing-row' ? rows : isOfTurn(mistake) ? rows - 2 : rows - 1;
  const first = mistake.kind === 'extra-row' ? 1 : 0;
  if (!Number.isInteger(mistake.row) || mistake.row < first || mistake.row > last) {
    refuse(
      `A mistake of the kind ${mistake.kind} cannot be made in row ${mistake.row + 1}.`,
      place,
      last < first
        ? 'The piece is too short for it.'
        : `Choose a row from ${first + 1} to ${last + 1}.`,
    );
  }
  if ('column' in mistake) {
    const { column } = mistake;
    if (!Number.isInteger(column) || column < 0 || column >= columns) {
      refuse(
        `The piece has no column ${column + 1}.`,
        { ...place, column: column + 1 },
        `Choose a column from 1 to ${columns}.`,
      );
    }
  }
  if (isOfTurn(mistake) && columns < 2) {
    refuse('A piece one knot wide has no turn of this kind.', place, 'Choose another mistake.');
  }
  if (mistake.kind === 'wrong-lead') {
    const at = written.plan.strings.findIndex((string) => string.id === mistake.lead);
    if (at < 0 || written.colourOf[at] === NOBODY) {
      const leads = written.plan.strings.filter((_, i) => written.colourOf[i] !== NOBODY);
      refuse(
        `The plan has no lead ${quoted(String(mistake.lead))}.`,
        place,
        `Name one of its leads, such as ${quoted(leads[0]?.id ?? 'L1')}.`,
      );
    }
  }
  if (mistake.kind === 'wrong-kind' && !KNOT_KINDS.includes(mistake.tied)) {
    refuse(
      `${quoted(String(mistake.tied))} is no kind of knot.`,
      place,
      `Choose from ${KNOT_KINDS.join(', ')}.`,
    );
  }
}

function refuse(what: string, place: { row?: number; column?: number }, remedy: string): never {
  throw new InputError('no-such-mistake', what, place, remedy);
}
