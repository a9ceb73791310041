import { listed, quoted, quotedCharacter, sentenceCase } from '../document/quote.js';
import { CHART_LIMITS, type ChartColour } from './chart.js';

/** A rule that is broken: the reader of each format adds the place. */
export interface Breach {
  readonly code: string;
  readonly what: string;
  readonly remedy: string;
}

const HEX = /^#(?:[0-9a-f]{3}|[0-9a-f]{6})$/i;
// Combining marks would join the character before them, so they cannot stand for a knot.
const NO_KEY = /[\p{Cc}\p{Cf}\p{Cs}\p{Z}\p{M}]/u;
const NOT_IN_NAME = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u;

/** Keys for colours that come without, in the order they are given out. */
export const GIVEN_KEYS = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789+*';

/** `#rgb` or `#rrggbb` in any case as `#rrggbb` in lower case; undefined when it is neither. */
export function readHex(text: string): string | undefined {
  if (!HEX.test(text)) return undefined;
  const hex = text.toLowerCase();
  if (hex.length === 7) return hex;
  return `#${[...hex.slice(1)].map((digit) => digit + digit).join('')}`;
}

export function badHex(text: string): Breach {
  return {
    code: 'bad-colour',
    what: `${quoted(text)} is no colour.`,
    remedy: 'Write # and three or six digits from 0-9 and a-f, such as #1f6fb2.',
  };
}

export function badKey(key: string): Breach | undefined {
  const length = characters(key.slice(0, 16));
  if (length === 1 && !NO_KEY.test(key)) return undefined;
  return {
    code: 'bad-key',
    what:
      length === 1
        ? `${sentenceCase(quotedCharacter(key))} cannot stand for a colour.`
        : `${quoted(key)} cannot stand for a colour.`,
    remedy: 'Use exactly one visible character, such as a letter.',
  };
}

/** A name as it is kept: without blanks around it, and not a slice that holds on to its file. */
export function tidyName(name: string): string {
  return [...name.trim()].join('');
}

export function badName(name: string): Breach | undefined {
  if (name.length > 2 * CHART_LIMITS.maxName || characters(name) > CHART_LIMITS.maxName) {
    return {
      code: 'name-too-long',
      what: `The name ${quoted(name)} is too long.`,
      remedy: `Use at most ${CHART_LIMITS.maxName} characters.`,
    };
  }
  if (!NOT_IN_NAME.test(name)) return undefined;
  return {
    code: 'bad-name',
    what: `The name ${quoted(name)} holds a line break or another control character.`,
    remedy: 'Write it on one line, in plain characters.',
  };
}

/** Colours collected one by one; `add` says what is wrong with one instead of taking it. */
export class Legend {
  readonly colours: ChartColour[] = [];
  /** Place of a colour in `colours`, by the code of its key. */
  readonly placeOf = new Map<number, number>();
  private readonly keyOfHex = new Map<string, string>();

  add(colour: ChartColour): Breach | undefined {
    const { key, hex } = colour;
    const code = key.codePointAt(0) as number;
    if (this.placeOf.has(code)) {
      return {
        code: 'key-twice',
        what: `The key ${quotedCharacter(key)} stands for two colours.`,
        remedy: 'Give each colour a character of its own.',
      };
    }
    const twin = this.keyOfHex.get(hex);
    if (twin !== undefined) {
      return {
        code: 'colour-twice',
        what: `${listed([twin, key].map(quotedCharacter))} are both ${hex}.`,
        remedy: 'Use one key for one colour, or change the shade of one of them a little.',
      };
    }
    if (this.colours.length === CHART_LIMITS.maxColours) {
      return {
        code: 'too-many-colours',
        what: `This is colour ${this.colours.length + 1}.`,
        remedy: `A chart can have at most ${CHART_LIMITS.maxColours} colours.`,
      };
    }
    this.placeOf.set(code, this.colours.length);
    this.keyOfHex.set(hex, key);
    this.colours.push(colour);
    return undefined;
  }
}

/** How many characters a text has, a pair of surrogates being one. */
export function characters(text: string): number {
  let count = 0;
  for (const _ of text) count++;
  return count;
}
