import { quoted, quotedCharacter, sentenceCase } from '../../document/quote.js';
import { InputError, type Place } from '../../errors.js';
import { DIAGONAL_LIMITS } from '../lattice.js';

/**
 * Starting colours of the strings, from the left, from a text with one key for each; blanks are
 * passed over.
 *
 * @param placeOf place of a colour by the code of its key
 * @param locate where a character stands, from 0
 * @throws InputError when a key is unknown, or there are too few or too many strings
 */
export function readStart(
  text: string,
  placeOf: ReadonlyMap<number, number>,
  locate: (character: number) => Place,
): Uint8Array {
  const { minStrings, maxStrings } = DIAGONAL_LIMITS;
  const start: number[] = [];
  let character = -1;
  for (const key of text) {
    character++;
    const colour = placeOf.get(key.codePointAt(0) as number);
    if (colour === undefined && /\s/.test(key)) continue;
    if (colour === undefined) {
      throw new InputError(
        'unknown-key',
        `${sentenceCase(quotedCharacter(key))} stands for no colour.`,
        locate(character),
        'The starting colours have one key of the legend for each string; add it to the legend, or correct it.',
      );
    }
    if (start.length === maxStrings) {
      throw new InputError(
        'too-many-strings',
        `There are more than ${maxStrings} strings.`,
        locate(character),
        `A diagonal pattern can have at most ${maxStrings}.`,
      );
    }
    start.push(colour);
  }
  if (start.length < minStrings) {
    throw new InputError(
      'too-few-strings',
      `The starting colours ${quoted(text.trim())} give ${start.length === 1 ? '1 string' : 'no string'}.`,
      locate(0),
      `A diagonal pattern has at least ${minStrings} strings: write one key for each.`,
    );
  }
  return Uint8Array.from(start);
}
