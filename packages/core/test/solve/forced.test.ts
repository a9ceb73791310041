import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  ANY_COLOUR,
  BARE,
  type DiagonalPicture,
  NO_KNOT,
  simulateDiagonal,
} from '../../src/index.js';
import { forcedKnots } from '../../src/solve/index.js';
import { anyPicture } from '../support/wanted-pictures.js';

/** Kinds of each knot, and colours of each string, in all patterns there are: tried one by one. */
function seenInAll(picture: DiagonalPicture) {
  const kinds = new Uint8Array(picture.cells.length);
  const colours = Array.from({ length: picture.strings }, () => new Set<number>());
  const knotted = [...picture.cells.keys()].filter((cell) => picture.cells[cell] !== BARE);
  const starts = picture.colours.length ** picture.strings;
  for (let start = 0; start < starts; start++) {
    const hung = Uint8Array.from(colours, (_, slot) => {
      return Math.floor(start / picture.colours.length ** slot) % picture.colours.length;
    });
    for (let choice = 0; choice < 4 ** knotted.length; choice++) {
      const knots = new Uint8Array(picture.cells.length).fill(NO_KNOT);
      for (const [place, cell] of knotted.entries()) knots[cell] = (choice >> (2 * place)) & 3;
      const shown = simulateDiagonal({ ...picture, start: hung, knots }).picture.cells;
      const fits = knotted.every((cell) => {
        return picture.cells[cell] === ANY_COLOUR || picture.cells[cell] === shown[cell];
      });
      if (!fits) continue;
      for (const cell of knotted)
        kinds[cell] = (kinds[cell] as number) | (1 << (knots[cell] as number));
      for (const [slot, colour] of hung.entries()) colours[slot]?.add(colour);
    }
  }
  return { kinds, colours };
}

describe('forced knots', () => {
  test('are those that all patterns of a picture have', async () => {
    await fc.assert(
      fc.asyncProperty(
        anyPicture({ maxStrings: 4, maxRows: 3, maxColours: 3 }),
        async (picture) => {
          const { kinds, colours } = seenInAll(picture);
          const reading = await forcedKnots(picture);
          expect(reading.kinds).toEqual(kinds);
          const [some] = colours;
          expect(reading.status).toBe(some?.size === 0 ? 'impossible' : 'read');
          expect([...reading.start]).toEqual(
            colours.map((seen) => (seen.size === 1 ? [...seen][0] : ANY_COLOUR)),
          );
        },
      ),
      { numRuns: 40 },
    );
  });
});
