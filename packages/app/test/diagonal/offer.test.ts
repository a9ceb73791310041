import { type DiagonalPicture, readDiagonalPicture } from '@halfhitch/core';
import { solveDiagonal } from '@halfhitch/core/solve';
import { describe, expect, it } from 'vitest';
import { emptyPattern } from '../../src/diagonal/edit/pattern.js';
import {
  conflictMarks,
  differenceMarks,
  foundInWords,
  offerOf,
} from '../../src/diagonal/solve/offer.js';
import { USUAL_WISH, wishOf } from '../../src/diagonal/solve/wish-form.js';

/** Three strings show three colours at most, and here are four. */
const FOUR: DiagonalPicture = readDiagonalPicture(
  [
    'picture diagonal',
    'o #d9642a buoy orange',
    'w #f4f1e8 chalk',
    'b #1f6fb2 lake blue',
    'r #3f7d4e reed green',
    '',
    'o',
    ' w',
    'b',
    ' r',
    '',
  ].join('\n'),
);

describe('what a search has come to', () => {
  it('marks just the knots that differ and those in conflict, and says that it is proven', async () => {
    const { pattern } = emptyPattern('', FOUR, FOUR.colours);
    const solution = await solveDiagonal(FOUR, wishOf(USUAL_WISH, pattern));
    const offer = offerOf(FOUR, solution);
    expect(offer.showing).toBe('nearest');
    const nearest = solution.pattern;
    if (nearest === null) throw new Error('There is always a nearest pattern.');
    const differs = differenceMarks(nearest, FOUR);
    expect(differs.map(({ row, column }) => [row, column])).toEqual(
      solution.wrong.map(({ row, place }) => [row, place]),
    );
    for (const { what, wanted, message } of differs) {
      expect(what).toBe('differs');
      expect(FOUR.colours.map(({ hex }) => hex)).toContain(wanted);
      expect(message).toMatch(/^Wanted: .+\. The knots show .+\.$/);
    }
    expect(conflictMarks(offer).map(({ row, column }) => [row, column])).toEqual(
      solution.conflict?.cells.map(({ row, place }) => [row, place]),
    );
    expect(foundInWords(offer)).toMatch(
      /^Proven: .* The nearest pattern differs in 1 knot, and no pattern comes nearer\.$/s,
    );
  });

  it('says so when the time ran out before anything was found', () => {
    const offer = offerOf(FOUR, {
      status: 'stopped',
      pattern: null,
      wrong: [],
      atLeastWrong: 0,
      conflict: null,
      tally: null,
      seconds: 10,
    });
    expect(offer.showing).toBe('conflict');
    expect(conflictMarks(offer)).toEqual([]);
    expect(foundInWords(offer)).toMatch(/^The time ran out before anything was found\./);
  });
});
