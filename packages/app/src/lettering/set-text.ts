import { InputError } from '@halfhitch/core';
import type { Alphabet, Glyph } from './alphabet/read-alphabet.js';
import { composeGlyph } from './compose.js';
import { Ink } from './ink.js';
import { type Alignment, LETTERING_LIMITS } from './settings.js';

export const TEXT_COLOUR = 1;

export interface Gaps {
  readonly letter: number;
  readonly word: number;
  readonly line: number;
}

/** What suits an alphabet: gaps grow with its letters and its strokes. */
export function usualGaps({ capital }: Alphabet): Gaps {
  return { letter: capital > 7 ? 2 : 1, word: Math.round(capital / 2) + 1, line: 2 };
}

/** Lines of text, drawn; `widths` has how wide each came out. */
export interface SetText {
  readonly ink: Ink;
  readonly lines: readonly string[];
  readonly widths: readonly number[];
}

/**
 * Sets text in an alphabet. The drawing is as high as what is written: room for marks over
 * capitals or tails below the line is taken only where there are some.
 *
 * @throws InputError when there is nothing to write, too much, or a character that is not drawn
 */
export function setText(text: string, alphabet: Alphabet, gaps: Gaps, align: Alignment): SetText {
  const lines = linesOf(text);
  const set = lines.map((line, number) => setLine(line, number, alphabet, gaps));
  const width = Math.max(...set.map((line) => line.width));
  const height = set.reduce((sum, { up, down }) => sum + up + down, gaps.line * (set.length - 1));
  const ink = new Ink(width, height);
  let top = 0;
  for (const { placed, width: its, up, down } of set) {
    const left = { start: 0, middle: Math.floor((width - its) / 2), end: width - its }[align];
    for (const { glyph, at } of placed) drawGlyph(ink, glyph, left + at, top + up - glyph.top);
    top += up + down + gaps.line;
  }
  return { ink, lines, widths: set.map((line) => line.width) };
}

function linesOf(text: string): string[] {
  const tidy = text.normalize('NFC').replace(/\r\n?/g, '\n').trimEnd();
  if (tidy.trim() === '') {
    throw new InputError('no-text', 'There is nothing to write.', {}, 'Type a word.');
  }
  const length = [...tidy].length;
  if (length > LETTERING_LIMITS.maxText) {
    throw new InputError(
      'text-too-long',
      `The text has ${length} characters.`,
      {},
      `At most ${LETTERING_LIMITS.maxText} can be set at a time.`,
    );
  }
  const lines = tidy.split('\n').map((line) => line.trim());
  if (lines.length > LETTERING_LIMITS.maxLines) {
    throw new InputError(
      'too-many-lines',
      `The text has ${lines.length} lines.`,
      { line: LETTERING_LIMITS.maxLines + 1 },
      `At most ${LETTERING_LIMITS.maxLines} can be set at a time.`,
    );
  }
  return lines;
}

interface SetLine {
  readonly placed: readonly { readonly glyph: Glyph; readonly at: number }[];
  readonly width: number;
  /** Rows above and below the line that letters stand on. */
  readonly up: number;
  readonly down: number;
}

function setLine(line: string, number: number, alphabet: Alphabet, gaps: Gaps): SetLine {
  const placed: { glyph: Glyph; at: number }[] = [];
  let at = 0;
  let gap = 0;
  for (const [place, character] of charactersOf(line).entries()) {
    if (/^\s+$/.test(character)) {
      if (placed.length > 0) gap = gaps.word;
      continue;
    }
    const glyph = composeGlyph(alphabet, character);
    if (glyph === undefined) throw unknown(character, number, place);
    at += gap;
    placed.push({ glyph, at });
    at += glyph.width;
    gap = gaps.letter;
  }
  return {
    placed,
    width: at,
    // An empty line still keeps the others apart.
    up: Math.max(placed.length === 0 ? alphabet.small : 0, ...placed.map(({ glyph }) => glyph.top)),
    down: Math.max(0, ...placed.map(({ glyph }) => glyph.rows.length - glyph.top)),
  };
}

/** A letter with the marks that are combined with it is one character. */
function charactersOf(line: string): string[] {
  return line.match(/\P{M}\p{M}*|\p{M}+/gu) ?? [];
}

function unknown(character: string, line: number, place: number): InputError {
  const code = [...character]
    .map((one) => `U+${one.codePointAt(0)?.toString(16).toUpperCase().padStart(4, '0')}`)
    .join(' ');
  const shown = /^[\p{L}\p{N}\p{P}\p{S}]\p{M}*$/u.test(character)
    ? `“${character}” (${code})`
    : code;
  return new InputError(
    'unknown-letter',
    `There is no letter drawn for ${shown}.`,
    { line: line + 1, column: place + 1 },
    'There are the letters of western Europe with their accents, digits, and . , : ; ! ? \' " - & + / ( ) # ♥ ★ ⚓. Write it with these, or draw it on the chart by hand.',
  );
}

function drawGlyph(ink: Ink, { rows }: Glyph, left: number, top: number): void {
  for (const [y, row] of rows.entries()) {
    for (let x = 0; x < row.length; x++)
      if (row[x] === '#') ink.put(left + x, top + y, TEXT_COLOUR);
  }
}
