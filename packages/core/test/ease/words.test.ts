import { describe, expect, it } from 'vitest';
import {
  easier,
  effortInWords,
  effortOf,
  type Gain,
  gainInWords,
  lengthInWords,
  suggestionInWords,
  timeInWords,
} from '../../src/index.js';
import { drawn } from '../support/charts.js';

const LEFT = { edge: 'straight', start: 'left' } as const;

const NONE: Gain = {
  changes: 0,
  edgeChanges: 0,
  leads: 0,
  floats: 0,
  floatKnots: 0,
  longFloats: 0,
  seconds: 0,
};

function said(...rows: string[]): string[] {
  const chart = drawn(...rows);
  return easier(chart, LEFT).suggestions.map((one) => suggestionInWords(chart, one));
}

describe('suggestions in words', () => {
  it('say where and what, rows and columns from 1', () => {
    expect(said('aaaaaa', 'aabaaa', 'aaaaaa')).toEqual([
      'Row 2, column 3: tie the lone knot of colour b in colour a.',
    ]);
    expect(said('aaaaab', 'aaaaaa')).toContain(
      'Row 1, column 6: tie the edge knot in colour a, in place of colour b.',
    );
    expect(said('aaaaaa', 'aabbaa', 'aabbaa', 'aaaaaa')).toEqual([
      'Rows 2 to 3, columns 3 to 4: tie the spot of 4 knots of colour b in colour a.',
    ]);
    expect(said('aab', 'aaa', 'aaa')).toContain('Knot the first row from the right.');
    expect(said('aaaaaaa', 'abaacaa', 'aaaaaaa')).toContain(
      'Tie all 2 stray knots in the colours round them.',
    );
  });

  it('name a colour without a name by its number, and let no control through', () => {
    const chart = drawn('aaa', 'aba', 'aaa');
    const [a, b] = chart.colours;
    const named = {
      ...chart,
      colours: [
        { ...a!, name: '' },
        { ...b!, name: 'reed\u001b[2J green' },
      ],
    };
    const [first] = easier(named, LEFT).suggestions;
    const words = suggestionInWords(named, first!);
    expect(words).toContain(a!.hex);
    expect(words).not.toContain('\u001b');
  });

  it('say what is saved, and what is an estimate', () => {
    expect(
      gainInWords(
        { ...NONE, changes: 2, leads: 1, floatKnots: 12.4, longFloats: 1, seconds: 40 },
        61,
      ),
    ).toBe(
      'Saves 2 colour changes, 1 lead, 1 long float, 12 knots of float, about 6 cm of thread and about 40 seconds.',
    );
    expect(gainInWords({ ...NONE, edgeChanges: 1 })).toBe(
      'One edge knot fewer stands alone in its colour.',
    );
    expect(gainInWords({ ...NONE, changes: 1, floatKnots: -3, seconds: 20 }, -14)).toBe(
      'Saves 1 colour change and about 20 seconds. Floats get 3 knots longer in all. It takes about 1 cm more thread.',
    );
  });

  it('sum a piece up', () => {
    const { effort } = effortOf(drawn('aaaa', 'abba', 'aaaa'), LEFT);
    expect(effortInWords(effort)).toBe('2 colour changes, 1 float of 2 knots together');
    expect(effortInWords(effortOf(drawn('aa'), LEFT).effort)).toBe('no colour changes, no floats');
  });

  it.each([
    [1, '1 second'],
    [89, '89 seconds'],
    [91, '2 minutes'],
    [3_600, '1 hour'],
    [7_800, '2 hours and 10 minutes'],
    [90_000, '25 hours'],
  ])('%i s is %s', (seconds, words) => expect(timeInWords(seconds)).toBe(words));

  it.each([
    [3, '1 cm'],
    [61, '6 cm'],
    [994, '99 cm'],
    [1_240, '1.2 m'],
  ])('%i mm is %s', (mm, words) => expect(lengthInWords(mm)).toBe(words));
});
