import { describe, expect, it } from 'vitest';
import { type Alphabet, type Glyph, MARKS } from '../../src/lettering/alphabet/read-alphabet.js';
import { composeGlyph } from '../../src/lettering/compose.js';
import { ALPHABETS } from '../../src/lettering/letter.js';

const between = (first: string, last: string): string[] => {
  const from = first.codePointAt(0) as number;
  const to = last.codePointAt(0) as number;
  return Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i));
};

const CAPITALS = between('A', 'Z');
const SMALLS = between('a', 'z');
const DIGITS = between('0', '9');
// The letters of ISO 8859-1, 0xC0 to 0xFF without the signs for times and divided by.
const LATIN_1 = between('À', 'ÿ').filter((letter) => letter !== '×' && letter !== '÷');
const SIGNS = [...'.,:;!?\'"-+/()#&♥★⚓¡¿'];
const ALL = [...CAPITALS, ...SMALLS, ...DIGITS, ...LATIN_1, ...SIGNS];

const DESCENDING = [...'gjpqyþÇçýÿ'];

const glyphOf = (alphabet: Alphabet, character: string): Glyph => {
  const glyph = composeGlyph(alphabet, character);
  if (glyph === undefined) throw new Error(`${character} is missing.`);
  return glyph;
};

const drawing = ({ rows, top }: Glyph): string => [`@${top}`, ...rows].join('\n');

/** Parts of a drawing that hold together by sides or corners, each as its rows from the top. */
function partsOf({ rows, width }: Glyph): number[][] {
  const cells = rows.join('');
  const left = new Set([...cells].flatMap((cell, i) => (cell === '#' ? [i] : [])));
  const parts: number[][] = [];
  for (const start of left) {
    const part: number[] = [];
    const open = [start];
    left.delete(start);
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      part.push(Math.floor(at / width));
      for (const dy of [-1, 0, 1]) {
        for (const dx of [-1, 0, 1]) {
          const x = (at % width) + dx;
          const next = at + dy * width + dx;
          if (x >= 0 && x < width && left.delete(next)) open.push(next);
        }
      }
    }
    parts.push(part);
  }
  return parts;
}

describe.each(Object.entries(ALPHABETS))('%s letters', (_, alphabet) => {
  it('are all there', () => {
    expect(LATIN_1).toHaveLength(62);
    expect(ALL.filter((character) => composeGlyph(alphabet, character) === undefined)).toEqual([]);
  });

  it('are all different', () => {
    const seen = new Map<string, string>();
    for (const character of ALL) {
      const drawn = drawing(glyphOf(alphabet, character));
      expect(seen.get(drawn), `${character} is drawn like ${seen.get(drawn)}`).toBeUndefined();
      seen.set(drawn, character);
    }
  });

  it('have ink in their first and last row and column', () => {
    for (const character of ALL) {
      const { rows, width } = glyphOf(alphabet, character);
      expect(rows[0], character).toContain('#');
      expect(rows.at(-1), character).toContain('#');
      expect(
        rows.some((row) => row.startsWith('#')),
        character,
      ).toBe(true);
      expect(
        rows.some((row) => row.endsWith('#')),
        character,
      ).toBe(true);
      expect(new Set(rows.map((row) => row.length))).toEqual(new Set([width]));
    }
  });

  it('have the heights of their kind', () => {
    for (const character of [...CAPITALS, ...DIGITS, ...'ÆØÐÞ']) {
      const { top, rows } = glyphOf(alphabet, character);
      expect([top, rows.length], character).toEqual([alphabet.capital, alphabet.capital]);
    }
    for (const character of [...'acemnorsuvwxzæø']) {
      const { top, rows } = glyphOf(alphabet, character);
      expect([top, rows.length], character).toEqual([alphabet.small, alphabet.small]);
    }
    const ascender = glyphOf(alphabet, 'h').top;
    for (const character of [...'bdfhkliðþßj']) {
      expect(glyphOf(alphabet, character).top, character).toBe(ascender);
    }
  });

  it('stand on the line, or go as far below it as others that do', () => {
    const descender = (character: string): number => {
      const { rows, top } = glyphOf(alphabet, character);
      return rows.length - top;
    };
    for (const character of [...CAPITALS, ...SMALLS, ...DIGITS, ...LATIN_1]) {
      if (DESCENDING.includes(character))
        expect(descender(character), character).toBeGreaterThan(0);
      else expect(descender(character), character).toBe(0);
    }
    expect(new Set([...'gjpqyþýÿ'].map(descender)).size).toBe(1);
  });

  it('hold together, but for dots and marks', () => {
    for (const character of [...CAPITALS, ...SMALLS, ...DIGITS, ...'ÆØÐÞæøðþßÇç']) {
      const parts = partsOf(glyphOf(alphabet, character));
      expect(parts.length, character).toBe('ij'.includes(character) ? 2 : 1);
    }
  });

  it('keep an empty row under a mark, in the middle over the letter', () => {
    for (const character of LATIN_1) {
      const [letter, ...marks] = character.normalize('NFD');
      if (marks.length === 0 || marks.includes(MARKS.cedilla)) continue;
      const base = glyphOf(alphabet, letter === 'i' ? 'ı' : (letter as string));
      const { rows, top, width } = glyphOf(alphabet, character);
      const above = rows.slice(0, top - base.top);
      const below = rows.slice(top - base.top);
      expect(above.at(-1), character).toBe('.'.repeat(width));
      expect(above[0], character).toContain('#');
      // The letter is as it is without the mark, with at most a knot's difference at its sides.
      const aside = Math.floor((width - base.width) / 2);
      expect(
        below.map((row) => row.slice(aside, aside + base.width)),
        character,
      ).toEqual(base.rows);
      // The ink of the mark is over the middle, to half a knot.
      const columns = above.flatMap((row) =>
        [...row].flatMap((cell, x) => (cell === '#' ? [x] : [])),
      );
      const middle = (Math.min(...columns) + Math.max(...columns)) / 2;
      expect(Math.abs(middle - (width - 1) / 2), character).toBeLessThanOrEqual(0.5);
    }
  });

  it('set a cedilla right under the letter, touching it', () => {
    for (const character of 'Çç') {
      const base = glyphOf(alphabet, character.normalize('NFD')[0] as string);
      const { rows } = glyphOf(alphabet, character);
      expect(rows.slice(0, base.rows.length)).toEqual(base.rows);
      expect(partsOf(glyphOf(alphabet, character))).toHaveLength(1);
    }
  });

  it('are the same composed and decomposed, and for signs that look alike', () => {
    for (const character of LATIN_1) {
      expect(composeGlyph(alphabet, character.normalize('NFD'))).toEqual(
        composeGlyph(alphabet, character),
      );
    }
    expect(composeGlyph(alphabet, '’')).toBe(composeGlyph(alphabet, "'"));
    expect(composeGlyph(alphabet, '–')).toBe(composeGlyph(alphabet, '-'));
  });
});
