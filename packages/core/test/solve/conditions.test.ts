import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import { ANY_COLOUR, type DiagonalPicture, simulateDiagonal } from '../../src/index.js';
import { solveDiagonal } from '../../src/solve/index.js';
import { type Conditions, fewestWrong } from '../support/row-states.js';
import { anyPicture } from '../support/wanted-pictures.js';

/** A picture and some of the conditions there are, at random. */
function anyConditions(maxStrings: number): fc.Arbitrary<[DiagonalPicture, Conditions]> {
  return anyPicture({ maxStrings, maxRows: 6, maxColours: 3 }).chain((picture) => {
    const colours = picture.colours.length;
    const colour = fc.integer({ min: 0, max: colours - 1 });
    const strings = { minLength: picture.strings, maxLength: picture.strings };
    return fc
      .record(
        {
          start: fc.array(fc.oneof(colour, fc.constant(ANY_COLOUR)), strings),
          repeat: fc.constant(true),
          most: fc.array(fc.option(fc.integer({ min: 1, max: picture.strings })), {
            minLength: colours,
            maxLength: colours,
          }),
        },
        { requiredKeys: [] },
      )
      .filter((conditions) => makeSense(picture, conditions))
      .map((conditions): [DiagonalPicture, Conditions] => [picture, conditions]);
  });
}

function makeSense(picture: DiagonalPicture, { start, repeat, most }: Conditions): boolean {
  if (repeat === true && picture.rows % 2 === 1) return false;
  const limits = picture.colours.map((_, colour) => most?.[colour] ?? picture.strings);
  if (limits.reduce((sum, limit) => sum + limit, 0) < picture.strings) return false;
  return limits.every(
    (limit, colour) => Array.from(start ?? []).filter((one) => one === colour).length <= limit,
  );
}

describe('conditions', () => {
  test('are kept, and nothing that keeps them is missed', async () => {
    await fc.assert(
      fc.asyncProperty(anyConditions(6), async ([picture, conditions]) => {
        const least = fewestWrong(picture, conditions);
        // What is kept of them, `answer` sees to before it hands a pattern out.
        const solution = await solveDiagonal(picture, { ...conditions, explain: false });
        expect(solution.status).toBe(least === 0 ? 'solved' : 'impossible');
        expect(solution.wrong.length).toBe(least);
        expect(solution.atLeastWrong).toBe(least);
      }),
      { numRuns: 60 },
    );
  });

  test('as few strings of a colour as can be', async () => {
    await fc.assert(
      fc.asyncProperty(
        anyDiagonal({ maxStrings: 6, maxRows: 6, maxColours: 3 }),
        fc.nat(),
        async (pattern, choice) => {
          const { picture } = simulateDiagonal(pattern);
          const fewestOf = choice % picture.colours.length;
          const { tally } = await solveDiagonal(picture, { fewestOf });
          const fits = (limit: number) => {
            const most = picture.colours.map((_, colour) => (colour === fewestOf ? limit : null));
            return fewestWrong(picture, { most }) === 0;
          };
          const few = tally?.strings[fewestOf] as number;
          expect(tally?.fewestProven).toBe(true);
          expect(fits(few)).toBe(true);
          if (few > 0) expect(fits(few - 1)).toBe(false);
        },
      ),
      { numRuns: 30 },
    );
  });

  test('that contradict themselves are refused', async () => {
    const picture = simulateDiagonal(piece).picture;
    const refused = (options: object) => expect(solveDiagonal(picture, options)).rejects;
    await refused({ repeat: true }).toThrow(/closed repeat needs an even number of rows/);
    await refused({ start: [0] }).toThrow(/1 starting colours for 4 strings/);
    await refused({ start: [0, 0, 1, 7] }).toThrow(/colour of string 4/);
    await refused({ most: [1, 1] }).toThrow(/may have 2 strings altogether/);
    await refused({ most: [1, 4], start: [0, 0, 1, 1] }).toThrow(/2 strings start in lake blue/);
    await refused({ fewestOf: 2 }).toThrow(/colour for fewest strings/);
    await refused({ atMostWrong: -1 }).toThrow(/number of wrong knots/);
    await refused({ seconds: 0 }).toThrow(/time limit/);
    await refused({ prefer: 'ease' }).toThrow(/preference "ease"/);
  });
});

const piece = {
  name: '',
  strings: 4,
  rows: 3,
  first: 0 as const,
  colours: [
    { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
    { key: 'o', hex: '#e8702a', name: 'buoy orange' },
  ],
  start: Uint8Array.of(0, 1, 0, 1),
  knots: Uint8Array.of(0, 1, 2, 255, 3, 0),
};

describe('what is liked best', () => {
  test('fewer changes and an evener share of the tying than without', async () => {
    await fc.assert(
      fc.asyncProperty(
        anyDiagonal({ maxStrings: 8, maxRows: 10, maxColours: 3 }),
        async (pattern) => {
          const { picture } = simulateDiagonal(pattern);
          const plain = await solveDiagonal(picture);
          const changes = await solveDiagonal(picture, { prefer: 'changes' });
          const balance = await solveDiagonal(picture, { prefer: 'balance' });
          expect(changes.wrong).toEqual([]);
          expect(balance.wrong).toEqual([]);
          expect(changes.tally?.changes).toBeLessThanOrEqual(plain.tally?.changes as number);
        },
      ),
      { numRuns: 8 },
    );
  });

  test('the tying of one colour is shared out evenly', async () => {
    const strings = 8;
    const rows = 16;
    const cells = new Uint8Array(rows * 4).fill(0);
    for (let row = 1; row < rows; row += 2) cells[row * 4 + 3] = 255;
    const { name, first, colours } = piece;
    const picture = { name, first, colours, strings, rows, cells };
    const { tally } = await solveDiagonal(picture, { prefer: 'balance' });
    // 56 knots for 8 strings.
    expect(tally?.mostTied).toBe(7);
  });
});
