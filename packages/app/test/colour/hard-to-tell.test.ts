import { readTextChart } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFICIENCIES, simulate } from '../../src/colour/deficiency.js';
import { colourWarnings, HARD_TO_TELL, hardToTell } from '../../src/colour/hard-to-tell.js';
import { neighboursOf } from '../../src/colour/neighbours.js';
import { ciede2000, cielabOf } from '../../src/colour/spaces.js';
import { facts } from './facts.js';

const chartOf = (rows: readonly string[]) =>
  readTextChart(
    [
      'name Heron',
      'b #1f6fb2 lake blue',
      'o #d9642a buoy orange',
      'g #2f7d4f reed green',
      'w #f4f1e8 chalk',
      '',
      ...rows,
    ].join('\n'),
  ).chart;

const everyPair = (count: number) =>
  Array.from({ length: count }, (_, other) =>
    Array.from({ length: other }, (_, one) => ({ one, other, places: 1, row: 0, column: 0 })),
  ).flat();

describe('neighbours', () => {
  it('are beside or below, each pair once with all its places', () => {
    expect(neighboursOf(chartOf(['bbo', 'bgo', 'bww']))).toEqual([
      { one: 0, other: 1, places: 1, row: 0, column: 1 },
      { one: 0, other: 2, places: 2, row: 0, column: 1 },
      { one: 1, other: 2, places: 1, row: 1, column: 1 },
      { one: 2, other: 3, places: 1, row: 1, column: 1 },
      { one: 1, other: 3, places: 1, row: 1, column: 2 },
      { one: 0, other: 3, places: 1, row: 2, column: 0 },
    ]);
  });

  it('are none where colours only meet at a corner', () => {
    expect(
      neighboursOf(chartOf(['bow', 'wbo'])).some(({ one, other }) => one === 0 && other === 2),
    ).toBe(false);
    expect(neighboursOf(chartOf(['bb', 'bb']))).toEqual([]);
  });

  it('count each side between two knots once', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }).chain((columns) =>
          fc.array(
            fc
              .array(fc.constantFrom('b', 'o', 'g', 'w'), {
                minLength: columns,
                maxLength: columns,
              })
              .map((keys) => keys.join('')),
            { minLength: 1, maxLength: 6 },
          ),
        ),
        (rows) => {
          const across = rows.flatMap((row) => [...row].slice(1).map((key, i) => [row[i], key]));
          const down = rows
            .slice(1)
            .flatMap((row, i) => [...row].map((key, c) => [rows[i]?.[c], key]));
          const differing = [...across, ...down].filter(([one, other]) => one !== other).length;
          const counted = neighboursOf(chartOf(rows)).reduce((sum, { places }) => sum + places, 0);
          expect(counted).toBe(differing);
        },
      ),
    );
  });
});

describe('hard to tell apart', () => {
  const okabeIto = facts('okabe-ito').map(({ hex }) => hex as string);

  it('is none of the colours that Okabe and Ito chose for everyone', () => {
    expect(hardToTell(okabeIto, everyPair(okabeIto.length))).toEqual([]);
  });

  it('is a red beside a green of like lightness, for protan or deutan sight only', () => {
    const sights = hardToTell(['#b4502d', '#7a7028'], everyPair(2)).map(({ sight }) => sight);
    expect(sights).toContain('deutan');
    expect(sights).not.toContain('usual');
    expect(sights).not.toContain('tritan');
  });

  it('is told once where usual sight finds it hard', () => {
    expect(hardToTell(['#1f6fb2', '#2470b0'], everyPair(2)).map(({ sight }) => sight)).toEqual([
      'usual',
    ]);
  });

  it('is what the difference as seen says, for every pair of colours', () => {
    const colour = fc
      .integer({ min: 0, max: 0xffffff })
      .map((value) => `#${value.toString(16).padStart(6, '0')}`);
    fc.assert(
      fc.property(colour, colour, (one, other) => {
        const told = new Set(hardToTell([one, other], everyPair(2)).map(({ sight }) => sight));
        const apart = (a: string, b: string) => ciede2000(cielabOf(a), cielabOf(b));
        expect(told.has('usual')).toBe(apart(one, other) < HARD_TO_TELL);
        if (told.has('usual')) return;
        for (const kind of DEFICIENCIES) {
          expect(told.has(kind)).toBe(
            apart(simulate(one, kind), simulate(other, kind)) < HARD_TO_TELL,
          );
        }
      }),
    );
  });
});

describe('warnings', () => {
  it('name the colours, the first place and the sight', () => {
    expect(colourWarnings(chartOf(['bww', 'bgg']))).toEqual([
      'lake blue and reed green are hard to tell apart. They lie side by side in one place at row 2, column 1. Difference for tritan sight (no cones for blue): 8.6; we call less than 10 hard.',
    ]);
  });

  it('are none for colours that are far apart or do not touch', () => {
    expect(colourWarnings(chartOf(['bwg', 'bwg']))).toEqual([]);
  });
});
