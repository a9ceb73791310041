import type { Alphabet, Glyph } from './alphabet/read-alphabet.js';
import { MARKS } from './alphabet/read-alphabet.js';

/** Signs that stand in for others which look alike, as typing aids put them. */
const ALIKE: Readonly<Record<string, string>> = {
  '\u2018': "'",
  '\u2019': "'",
  '\u02bc': "'",
  '\u201c': '"',
  '\u201d': '"',
  '\u201e': '"',
  '\u2010': '-',
  '\u2011': '-',
  '\u2013': '-',
  '\u2014': '-',
  '\u2212': '-',
  '\u2665\ufe0f': '♥',
  '\u2764': '♥',
  '\u2764\ufe0f': '♥',
  '\u2605\ufe0f': '★',
  '\u2693\ufe0f': '⚓',
  '\u00b4': "'",
  '`': "'",
};

/** Empty rows between a letter and the mark above it. */
const MARK_GAP = 1;

/**
 * A character as a glyph: drawn as it is, or its letter with its marks set over and under it.
 * Undefined where the alphabet has no such letter or mark.
 *
 * @param character one character, composed (NFC) or not
 */
export function composeGlyph(alphabet: Alphabet, character: string): Glyph | undefined {
  const composed = character.normalize('NFC');
  const drawn = alphabet.glyphs.get(ALIKE[composed] ?? composed);
  if (drawn !== undefined) return drawn;
  const [letter, ...marks] = composed.normalize('NFD');
  if (letter === undefined || marks.length === 0) return undefined;
  // The dot of an i makes room for another mark over it.
  const above = marks.some((mark) => mark !== MARKS.cedilla);
  let glyph = alphabet.glyphs.get(letter === 'i' && above ? 'ı' : letter);
  if (letter === 'j' && above) return undefined;
  for (const mark of marks) {
    const forms = alphabet.marks.get(mark);
    if (glyph === undefined || forms === undefined) return undefined;
    glyph = mark === MARKS.cedilla ? putUnder(glyph, forms) : putOver(glyph, forms);
  }
  return glyph;
}

function putOver(letter: Glyph, forms: readonly Glyph[]): Glyph {
  const mark = formFor(letter.width, forms);
  const width = Math.max(letter.width, mark.width);
  const gap = Array.from({ length: MARK_GAP }, () => '.'.repeat(width));
  return {
    width,
    top: letter.top + MARK_GAP + mark.rows.length,
    rows: [...centred(mark, width), ...gap, ...centred(letter, width)],
  };
}

/** A mark below joins the letter. */
function putUnder(letter: Glyph, forms: readonly Glyph[]): Glyph {
  const mark = formFor(letter.width, forms);
  const width = Math.max(letter.width, mark.width);
  return { width, top: letter.top, rows: [...centred(letter, width), ...centred(mark, width)] };
}

/**
 * The widest form that stands out by no more than a knot on each side and can be set in the
 * middle; where there is none, the narrowest.
 */
function formFor(width: number, forms: readonly Glyph[]): Glyph {
  const byWidth = [...forms].sort((one, other) => other.width - one.width);
  const middle = byWidth.filter((form) => (form.width - width) % 2 === 0);
  const narrow = (middle.length > 0 ? middle : byWidth).at(-1) as Glyph;
  return middle.find((form) => form.width <= width + 2) ?? narrow;
}

function centred(glyph: Glyph, width: number): string[] {
  const left = Math.floor((width - glyph.width) / 2);
  const right = width - glyph.width - left;
  return glyph.rows.map((row) => '.'.repeat(left) + row + '.'.repeat(right));
}
