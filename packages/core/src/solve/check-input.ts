import { DIAGONAL_LIMITS, knotsAcross, knotsInRow } from '../diagonal/lattice.js';
import { ANY_COLOUR, BARE, type DiagonalPicture } from '../diagonal/picture.js';
import { quoted } from '../document/quote.js';
import { InputError } from '../errors.js';
import { SOLVE_LIMITS, SOLVE_PREFERENCES, type SolveOptions } from './options.js';

/** @throws InputError where a picture is outside the limits or not well-formed */
export function checkPicture(picture: DiagonalPicture): void {
  const { strings, rows, first, colours, cells } = picture;
  const { minStrings, maxStrings, minRows, maxRows, maxColours } = DIAGONAL_LIMITS;
  whole('strings', strings, minStrings, maxStrings);
  whole('rows', rows, minRows, maxRows);
  whole('slot of the first knot', first, 0, 1);
  whole('colours', colours.length, 1, maxColours);
  const across = knotsAcross(picture);
  if (cells.length !== rows * across) {
    throw refused(
      'cells-size',
      `The picture has ${cells.length} places for knots; its size asks for ${rows * across}.`,
      'Give one for each place, row by row.',
    );
  }
  for (let row = 0; row < rows; row++) {
    const count = knotsInRow(picture, row);
    for (let place = 0; place < across; place++) {
      const colour = cells[row * across + place] as number;
      if (colour === BARE) continue;
      if (place < count && (colour === ANY_COLOUR || colour < colours.length)) continue;
      throw new InputError(
        place < count ? 'unknown-colour' : 'knot-outside',
        place < count
          ? `The knot has colour ${colour}, which the picture does not have.`
          : 'A knot is wanted where the row has no place for one.',
        { row: row + 1, column: place + 1 },
        place < count ? 'Use the colours of the picture.' : 'Leave that place without a knot.',
      );
    }
  }
}

/** @throws InputError where options do not fit the picture */
export function checkOptions(picture: DiagonalPicture, options: SolveOptions): void {
  const { strings, rows, colours } = picture;
  const { start, most, fewestOf, atMostWrong, seconds, prefer, repeat } = options;
  if (repeat === true && rows % 2 === 1) {
    throw refused(
      'repeat-odd-rows',
      `A closed repeat needs an even number of rows; this picture has ${rows}.`,
      'Add or leave out a row: only then does the next repeat begin in the same slots.',
    );
  }
  if (start !== undefined) {
    if (start.length !== strings) {
      throw refused(
        'start-size',
        `There are ${start.length} starting colours for ${strings} strings.`,
        'Give one colour for each string.',
      );
    }
    for (let slot = 0; slot < strings; slot++) {
      const colour = start[slot] as number;
      if (colour !== ANY_COLOUR)
        whole(`colour of string ${slot + 1}`, colour, 0, colours.length - 1);
    }
  }
  if (fewestOf !== undefined) whole('colour for fewest strings', fewestOf, 0, colours.length - 1);
  if (atMostWrong !== undefined) {
    whole('number of wrong knots', atMostWrong, 0, Number.MAX_SAFE_INTEGER);
  }
  if (prefer !== undefined && !SOLVE_PREFERENCES.includes(prefer)) {
    throw refused(
      'unknown-preference',
      `The preference ${quoted(String(prefer))} is not known.`,
      `Use one of: ${SOLVE_PREFERENCES.join(', ')}.`,
    );
  }
  if (seconds !== undefined) {
    const { minSeconds, maxSeconds } = SOLVE_LIMITS;
    if (!(seconds >= minSeconds && seconds <= maxSeconds)) {
      throw refused(
        'out-of-range',
        `The time limit is ${seconds} seconds.`,
        `Give from ${minSeconds} to ${maxSeconds} seconds.`,
      );
    }
  }
  if (most !== undefined) checkMost(picture, most, start);
}

function checkMost(
  picture: DiagonalPicture,
  most: readonly (number | null)[],
  start: SolveOptions['start'],
): void {
  let room = 0;
  for (let colour = 0; colour < picture.colours.length; colour++) {
    const limit = most[colour] ?? null;
    if (limit !== null) whole('most strings of a colour', limit, 0, Number.MAX_SAFE_INTEGER);
    room += limit ?? picture.strings;
  }
  for (const [colour, limit] of most.entries()) {
    const hung = Array.from(start ?? []).filter((one) => one === colour).length;
    if (limit === null || hung <= limit) continue;
    throw refused(
      'start-over-limit',
      `${hung} strings start in ${picture.colours[colour]?.name || `colour ${colour + 1}`}, and at most ${limit} may have it.`,
      'Allow more strings of it, or start with fewer.',
    );
  }
  if (room >= picture.strings) return;
  throw refused(
    'too-few-strings',
    `The colours may have ${room} strings altogether; the picture needs ${picture.strings}.`,
    'Allow more strings of some colour.',
  );
}

function whole(what: string, value: number, least: number, most: number): void {
  if (Number.isInteger(value) && value >= least && value <= most) return;
  throw refused(
    'out-of-range',
    `The ${what} is ${value}.`,
    `Give a whole number from ${least} to ${most}.`,
  );
}

function refused(code: string, what: string, remedy: string): InputError {
  return new InputError(code, what, {}, remedy);
}
