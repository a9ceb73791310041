import { type Chart, InputError } from '@halfhitch/core';
import { describe, expect, it } from 'vitest';
import { choicesFrom } from '../../src/learn/choices.js';
import {
  lessonPlace,
  MOST_SEARCHED,
  MOST_TAUGHT,
  type TaughtPiece,
  taughtCases,
} from '../../src/learn/lesson-place.js';

function pieceOf(lines: readonly string[], edge: 'straight' | 'wrapped' = 'straight'): TaughtPiece {
  const keys = [...new Set(lines.join(''))].sort();
  const chart: Chart = {
    name: 'Heron',
    rows: lines.length,
    columns: lines[0]?.length ?? 0,
    colours: keys.map((key, i) => ({ key, hex: `#${i}f6fb2`, name: `colour ${key}` })),
    cells: Uint8Array.from([...lines.join('')].map((key) => keys.indexOf(key))),
  };
  return { chart, choice: { edge, start: 'left' } };
}

function plain(rows: number, columns: number): TaughtPiece {
  return pieceOf(Array.from({ length: rows }, () => 'a'.repeat(columns)));
}

describe('the lesson about a knot of a piece', () => {
  it('is about what happens there, in the language asked for', () => {
    const piece = pieceOf(['aaabbb', 'bbbbbb', 'abbbbb']);
    expect(lessonPlace(piece, { row: 0, column: 3 }).name).toBe('change-within');
    expect(lessonPlace(piece, { row: 1, column: 5 }).name).toBe('turn');
    expect(lessonPlace(piece, { row: 2, column: 0 }, { lang: 'de' }).title).toBe(
      'Farbwechsel an der Wende',
    );
  });

  it('follows how the piece is knotted', () => {
    const straight = lessonPlace(pieceOf(['aaaa', 'aaaa']), { row: 0, column: 3 });
    const wrapped = lessonPlace(pieceOf(['aaaa', 'aaaa'], 'wrapped'), { row: 0, column: 3 });
    expect([straight.name, wrapped.name]).toEqual(['edge-right', 'wrapped']);
  });

  it('says what is wrong with a place that is none, and with too large a piece', () => {
    const piece = pieceOf(['ab', 'ba']);
    for (const place of [
      { row: 2, column: 0 },
      { row: 0, column: -1 },
      { row: 0.5, column: 0 },
      { row: Number.NaN, column: 0 },
    ]) {
      expect(() => lessonPlace(piece, place)).toThrow(InputError);
    }
    expect(() => lessonPlace(piece, { row: 2, column: 0 })).toThrow(/row 3, column 1/);
    const columns = 250;
    const large = plain(MOST_TAUGHT / columns + 1, columns);
    expect(() => lessonPlace(large, { row: 0, column: 0 })).toThrow(/100,250 knots/);
  });
});

describe('what a piece can teach', () => {
  it('is every case that it has, at its first place, with how often it comes', () => {
    const cases = taughtCases(pieceOf(['aaabbb', 'bbbbbb', 'abbbbb', 'bbbbba'])) ?? [];
    const at = new Map(cases.map(({ name, row, column, knots }) => [name, [row, column, knots]]));
    expect(at.get('first-use')).toEqual([0, 0, 1]);
    expect(at.get('change-within')).toEqual([0, 3, 1]);
    expect(at.get('change-after-first')).toEqual([2, 1, 2]);
    expect(at.get('turn')?.slice(0, 2)).toEqual([1, 5]);
    expect(cases.reduce((sum, { knots }) => sum + knots, 0)).toBe(24);
  });

  it('is not looked for in a piece that is too large', () => {
    expect(taughtCases(plain(MOST_SEARCHED / 100 + 1, 100))).toBeNull();
  });
});

describe('choices kept from last time', () => {
  it('are taken as far as they make sense', () => {
    const usual = { language: 'en', hand: 'right', learned: [] };
    for (const kept of [null, 7, 'de', [], { language: 'xx', hand: 3, learned: 'turn' }]) {
      expect(choicesFrom(kept)).toEqual(usual);
    }
    expect(
      choicesFrom({ language: 'de', hand: 'left', learned: ['turn', 'granny', 'turn', 4] }),
    ).toEqual({ language: 'de', hand: 'left', learned: ['turn'] });
  });
});
