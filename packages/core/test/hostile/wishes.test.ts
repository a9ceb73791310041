import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import { answerOrRefusal } from '../../../../testing/hostile/answer.js';
import { anySmallChart } from '../../../../testing/hostile/plans.js';
import { fuzzRuns } from '../../../../testing/hostile/runs.js';
import {
  type DiagonalMistake,
  InputError,
  MISTAKE_KINDS,
  type Mistake,
  makeDiagonalMistakes,
  makeMistakes,
  planAlpha,
  simulateDiagonal,
  verifyPlan,
} from '../../src/index.js';
import { type SolveOptions, solveDiagonal } from '../../src/solve/index.js';

const figure = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: -1, max: 7 }) },
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -0, 0.5, 1e300, 2 ** 31, 255, 254),
);
const word = fc.constantFrom(
  'none',
  'changes',
  '__proto__',
  'constructor',
  '',
  '\u202e',
  'L1',
  'forward',
);

const everyWish = fc.record(
  {
    start: fc.array(figure, { maxLength: 8 }),
    repeat: fc.boolean(),
    most: fc.array(fc.option(figure), { maxLength: 5 }),
    fewestOf: figure,
    atMostWrong: figure,
    prefer: word,
    nearest: fc.boolean(),
    seconds: fc.constantFrom(0.1, 0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e9),
  },
  { requiredKeys: [] },
) as fc.Arbitrary<SolveOptions>;

/** Two at most: with more of them nearly all would be refused. */
const anyWishes = fc
  .tuple(everyWish, fc.nat(2), fc.nat())
  .map(([wishes, many, from]): SolveOptions => {
    const entries = Object.entries(wishes);
    const begin = from % Math.max(1, entries.length);
    return Object.fromEntries([...entries.slice(begin), ...entries.slice(0, begin)].slice(0, many));
  });

/** Runs what may be refused; places are the numbers that were given, whatever they are. */
function madeOrRefused(make: () => unknown): void {
  try {
    make();
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    expect((error as InputError).remedy).toMatch(/\p{L}{2}.*\.$/u);
  }
}

describe('what is wished of the solver', () => {
  it('however odd, is granted, proven impossible, or refused in plain words', async () => {
    const kinds = new Set<string>();
    await fc.assert(
      fc.asyncProperty(
        anyDiagonal({ maxStrings: 5, maxRows: 4 }),
        anyWishes,
        fc.record(
          { strings: figure, rows: figure, first: figure, cells: fc.uint8Array({ maxLength: 9 }) },
          { requiredKeys: [] },
        ),
        fc.boolean(),
        async (pattern, wishes, changes, sound) => {
          const { picture } = simulateDiagonal(pattern);
          const wanted = sound ? picture : { ...picture, ...(changes as Partial<typeof picture>) };
          const before = wanted.cells.slice();
          // As refusals come later than at once, they are told by hand.
          const refused = await solveDiagonal(wanted, {
            seconds: 0.2,
            explain: false,
            ...wishes,
          }).then(
            ({ status }) => {
              kinds.add(status);
              return null;
            },
            (error: unknown) => error,
          );
          if (refused !== null) {
            kinds.add('refused');
            answerOrRefusal(InputError, () => {
              throw refused;
            });
          }
          expect(wanted.cells).toEqual(before);
        },
      ),
      fuzzRuns(120),
    );
    expect([...kinds]).toEqual(expect.arrayContaining(['refused', 'solved']));
  });
});

describe('mistakes that are to be made', () => {
  const anyKind = fc.oneof(fc.constantFrom<string>(...MISTAKE_KINDS), word);

  it('of an alpha piece are made, or refused in plain words', () => {
    const mistake = fc.record(
      {
        kind: anyKind,
        row: figure,
        column: figure,
        tied: word,
        lead: word,
        span: figure,
        lacking: word,
      },
      { requiredKeys: ['kind', 'row', 'column'] },
    );
    fc.assert(
      fc.property(anySmallChart, fc.array(mistake, { maxLength: 4 }), (chart, mistakes) => {
        const plan = planAlpha(chart);
        madeOrRefused(() => makeMistakes(plan, mistakes as unknown as Mistake[]));
        // The plan is as it was.
        expect(verifyPlan(plan, chart).ok).toBe(true);
      }),
      fuzzRuns(250),
    );
  });

  it('of a diagonal piece are made, or refused in plain words', () => {
    const kinds = ['wrong-kind', 'missing-knot', 'extra-knot', 'missing-row', 'extra-row'];
    const mistake = fc.record(
      {
        kind: fc.oneof(fc.constantFrom(...kinds, 'wrong-colour', 'swapped-strings'), word),
        row: figure,
        place: figure,
        slot: figure,
        other: figure,
        colour: figure,
        tied: word,
      },
      { requiredKeys: ['kind', 'row', 'place', 'slot', 'other', 'colour'] },
    );
    fc.assert(
      fc.property(
        anyDiagonal({ maxStrings: 6, maxRows: 6 }),
        fc.array(mistake, { maxLength: 4 }),
        (pattern, mistakes) => {
          const before = pattern.knots.slice();
          madeOrRefused(() =>
            makeDiagonalMistakes(pattern, mistakes as unknown as DiagonalMistake[]),
          );
          expect(pattern.knots).toEqual(before);
        },
      ),
      fuzzRuns(250),
    );
  });
});
