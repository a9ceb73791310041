import {
  ANY_COLOUR,
  diamonds,
  makeDiagonalMistake,
  possibleDiagonalMistakes,
} from '@halfhitch/core';
import { describe, expect, it } from 'vitest';
import {
  asDrawn,
  isAnythingSeen,
  nothingSeen,
  seenOf,
  seenUpTo,
} from '../../src/diagonal/mistakes/seen.js';
import { explain } from '../../src/diagonal/mistakes/tell.js';
import { COLOURS as ALL } from './projects.js';

const COLOURS = ALL.slice(0, 2);

const pattern = diamonds({ strings: 8, rows: 8, colours: COLOURS });

describe('what is seen of a piece', () => {
  it('is nothing at first, and as drawn nothing differs', () => {
    const nothing = nothingSeen(pattern, 5);
    expect(isAnythingSeen(nothing)).toBe(false);
    const drawn = asDrawn(nothing, pattern);
    expect(isAnythingSeen(drawn)).toBe(true);
    const told = explain({ pattern, seen: seenOf(drawn, pattern) });
    expect(told).toMatchObject({ what: 'told', differing: 0, explanations: [] });
  });

  it('stays where it was marked when more rows are tied', () => {
    const some = asDrawn(nothingSeen(pattern, 3), pattern);
    const more = seenUpTo(some, pattern, 6);
    expect(more.cells.slice(0, some.cells.length)).toEqual(some.cells);
    expect(more.cells[some.cells.length]).toBe(ANY_COLOUR);
  });

  it('is explained by the mistake that was made, and says how to go on', () => {
    const mistakes = [...possibleDiagonalMistakes(pattern)].filter(
      ({ kind }) => kind === 'missing-knot' || kind === 'wrong-kind',
    );
    for (const mistake of mistakes.filter((_, at) => at % 9 === 0)) {
      const { seen } = makeDiagonalMistake(pattern, mistake);
      const told = explain({ pattern, seen });
      if (told.what !== 'told') throw new Error(told.message);
      if (told.differing === 0) continue;
      const [first] = told.explanations;
      expect(first?.unexplained).toBe(0);
      expect(first?.alternatives.length).toBeGreaterThan(0);
      expect(first?.ways.length).toBeGreaterThan(0);
      expect(first?.ways.flat().every((sentence) => sentence.endsWith('.'))).toBe(true);
    }
  });
});
