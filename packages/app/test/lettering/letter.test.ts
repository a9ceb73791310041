import { type Chart, InputError, planAlpha, verifyPlan } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BORDERS } from '../../src/lettering/border.js';
import { letter } from '../../src/lettering/letter.js';
import {
  ALIGNMENTS,
  DIRECTIONS,
  LETTER_SIZES,
  type LetteringOptions,
  USUAL_LETTERING,
} from '../../src/lettering/settings.js';

const PLAIN: LetteringOptions = { ...USUAL_LETTERING, direction: 'across', margin: 0 };

/** Text as `#`, border as `o`, ground as `.`. */
function drawn(text: string, options: Partial<LetteringOptions> = {}): string[] {
  const all = { ...PLAIN, ...options };
  const chart = letter(text, all);
  const key = (hex: string | undefined): string =>
    hex === all.text.hex ? '#' : hex === all.borderColour.hex ? 'o' : '.';
  return Array.from({ length: chart.rows }, (_, row) =>
    Array.from(chart.cells.subarray(row * chart.columns, (row + 1) * chart.columns), (colour) =>
      key(chart.colours[colour]?.hex),
    ).join(''),
  );
}

const refusal = (work: () => unknown): InputError => {
  try {
    work();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('Nothing was refused.');
};

describe('words', () => {
  it('HERON, small', () => {
    expect(drawn('HERON', { size: 'small' })).toEqual([
      '#..#.####.###...###..#..#',
      '#..#.#....#..#.#...#.##.#',
      '####.###..###..#...#.#.##',
      '#..#.#....#.#..#...#.#..#',
      '#..#.####.#..#..###..#..#',
    ]);
  });

  it('OTTER, medium', () => {
    expect(drawn('OTTER')).toEqual([
      '.####..#####.#####.#####.####.',
      '#....#...#.....#...#.....#...#',
      '#....#...#.....#...#.....#...#',
      '#....#...#.....#...####..####.',
      '#....#...#.....#...#.....#.#..',
      '#....#...#.....#...#.....#..#.',
      '.####....#.....#...#####.#...#',
    ]);
  });

  it('Kittiwake, small', () => {
    expect(drawn('Kittiwake', { size: 'small' })).toEqual([
      '.....#.........#............#........',
      '#..#....#...#...............#........',
      '#.#..#.###.###.#.#.#.#..###.#.#...##.',
      '##...#..#...#..#.#.#.#.#..#.##...####',
      '#.#..#..#...#..#.#.#.#.#.##.#.#..#...',
      '#..#.#..##..##.#..#.#...#.#.#..#..###',
    ]);
  });

  it('Åse, large', () => {
    expect(drawn('Åse', { size: 'large' })).toEqual([
      '..####..................',
      '.##..##.................',
      '..####..................',
      '........................',
      '..####..................',
      '.##..##.................',
      '##....##................',
      '##....##...#####...####.',
      '########..##......##..##',
      '##....##...####...######',
      '##....##......##..##....',
      '##....##......##..##..##',
      '##....##..#####....####.',
    ]);
  });

  it('Tarn over Ellerby, each line in the middle, with gaps of their own', () => {
    const rows = drawn('Tarn\nEllerby', { size: 'small', lineGap: 4, letterGap: 2 });
    const [first, second] = [rows.slice(0, 5), rows.slice(9)];
    expect(rows.slice(5, 9).every((row) => !row.includes('#'))).toBe(true);
    const width = rows[0]?.length ?? 0;
    const tarn = drawn('Tarn', { size: 'small', letterGap: 2 });
    const left = Math.floor((width - (tarn[0]?.length ?? 0)) / 2);
    expect(first.map((row) => row.slice(left).replace(/\.+$/, ''))).toEqual(
      tarn.map((row) => row.replace(/\.+$/, '')),
    );
    expect(second).toEqual(drawn('Ellerby', { size: 'small', letterGap: 2 }));
  });
});

describe('a direction', () => {
  const upright = drawn('Heron 4');

  it('downwards is the text turned by a quarter clockwise', () => {
    const turned = drawn('Heron 4', { direction: 'downwards' });
    expect(turned).toHaveLength(upright[0]?.length ?? 0);
    turned.forEach((row, y) => {
      expect(row).toBe(
        upright
          .map((line) => line[y])
          .reverse()
          .join(''),
      );
    });
  });

  it('upwards is the same, turned about', () => {
    const down = drawn('Heron 4', { direction: 'downwards' });
    const up = drawn('Heron 4', { direction: 'upwards' });
    expect(up).toEqual([...down].reverse().map((row) => [...row].reverse().join('')));
  });
});

describe('repeating', () => {
  it('puts text below itself across, and after itself along the bracelet', () => {
    const once = drawn('Otter');
    const gap = Array.from({ length: 3 }, () => '.'.repeat(once[0]?.length ?? 0));
    expect(drawn('Otter', { times: 2, timesGap: 3 })).toEqual([...once, ...gap, ...once]);
    const down = drawn('Otter', { direction: 'downwards' });
    const below = Array.from({ length: 3 }, () => '.'.repeat(down[0]?.length ?? 0));
    expect(drawn('Otter', { direction: 'downwards', times: 2, timesGap: 3 })).toEqual([
      ...down,
      ...below,
      ...down,
    ]);
  });
});

describe('borders', () => {
  it('stand on two sides, or all the way round, the margin inside', () => {
    const height = 7;
    const two = drawn('OTTER', { border: 'line', margin: 2 });
    expect(two).toHaveLength(height + 6);
    expect(two[0]).toMatch(/^o+$/);
    expect(two.at(-1)).toMatch(/^o+$/);
    expect(two.slice(1, -1).join('')).not.toContain('o');
    const round = drawn('OTTER', { border: 'line', borderSides: 'round', margin: 2 });
    expect(round.every((row) => row.startsWith('o') && row.endsWith('o'))).toBe(true);
    expect(round[1]).toMatch(/^o\.+o$/);
  });

  it('of whole parts show whole ones only, in the middle', () => {
    const [first] = drawn('OTTER', { border: 'dashes', columns: 44 });
    expect(first).toBe(`..${Array(7).fill('oooo').join('..')}..`);
    const second = drawn('OTTER', { border: 'pennants', columns: 37 })[1];
    expect(second).toBe('.ooooo.ooooo.ooooo.ooooo.ooooo.ooooo.');
  });

  it('are beside a text that is turned', () => {
    const rows = drawn('OTTER', { border: 'line', direction: 'downwards', margin: 1 });
    expect(rows.every((row) => /^o\.[.#]{7}\.o$/.test(row))).toBe(true);
  });
});

describe('a wanted size', () => {
  it('pads with ground, the text where it is wanted', () => {
    const least = drawn('Tarn');
    const width = least[0]?.length ?? 0;
    expect(drawn('Tarn', { columns: width + 5, align: 'start' })).toEqual(
      least.map((row) => `${row}.....`),
    );
    expect(drawn('Tarn', { columns: width + 5, align: 'end' })).toEqual(
      least.map((row) => `.....${row}`),
    );
  });

  it('that is too narrow is refused, with the line and the columns it takes', () => {
    const error = refusal(() => letter('Tarn\nKittiwake', { ...PLAIN, columns: 30 }));
    expect(error.code).toBe('lettering-does-not-fit');
    expect(error.place).toEqual({ line: 2 });
    const needed = drawn('Tarn\nKittiwake')[0]?.length;
    expect(error.message).toContain(`${needed} columns`);
    expect(() => letter('Tarn\nKittiwake', { ...PLAIN, columns: needed as number })).not.toThrow();
  });
});

describe('refusals', () => {
  it('name the character and its place', () => {
    const error = refusal(() => letter('Tarn\nEll漢', PLAIN));
    expect(error.code).toBe('unknown-letter');
    expect(error.place).toEqual({ line: 2, column: 4 });
    expect(error.message).toContain('“漢” (U+6F22)');
    expect(refusal(() => letter('a\u0007', PLAIN)).message).toContain('U+0007');
    expect(refusal(() => letter('q\u0323', PLAIN)).message).toContain('U+0071 U+0323');
  });

  it.each([
    ['', {}, 'no-text'],
    [' \n ', {}, 'no-text'],
    ['x'.repeat(501), {}, 'text-too-long'],
    ['a\n'.repeat(21), {}, 'too-many-lines'],
    ['Kittiwake '.repeat(12), { size: 'large' }, 'lettering-too-wide'],
    [
      'Kittiwake '.repeat(40),
      { size: 'large', direction: 'downwards', times: 20 },
      'lettering-too-long',
    ],
    ['Otter', { margin: -1 }, 'lettering-figure'],
    ['Otter', { letterGap: 1.5 }, 'lettering-figure'],
    ['Otter', { times: 0 }, 'lettering-figure'],
    ['Otter', { columns: 301 }, 'lettering-figure'],
  ] as const)('of %j with %j', (text, options, code) => {
    const error = refusal(() => letter(text, { ...PLAIN, ...options }));
    expect(error.code).toBe(code);
    expect(error.remedy).not.toBe('');
  });
});

describe('every lettering', () => {
  const options = fc.record({
    size: fc.constantFrom(...LETTER_SIZES),
    letterGap: fc.option(fc.integer({ min: 0, max: 4 })),
    wordGap: fc.option(fc.integer({ min: 0, max: 8 })),
    lineGap: fc.option(fc.integer({ min: 0, max: 4 })),
    align: fc.constantFrom(...ALIGNMENTS),
    direction: fc.constantFrom(...DIRECTIONS),
    times: fc.integer({ min: 1, max: 3 }),
    timesGap: fc.integer({ min: 0, max: 5 }),
    border: fc.constantFrom(...BORDERS),
    borderSides: fc.constantFrom('two' as const, 'round' as const),
    margin: fc.integer({ min: 0, max: 4 }),
  });
  const words = fc
    .array(fc.constantFrom(...'Heron Otter\nTÅæ4!'), { minLength: 1, maxLength: 9 })
    .map((letters) => letters.join(''))
    .filter((text) => text.trim() !== '');
  const inkOf = (chart: Chart, hex: string): number => {
    const at = chart.colours.findIndex((colour) => colour.hex === hex);
    return chart.cells.filter((colour) => colour === at).length;
  };

  it('has all the ink of its letters, and one colour for each of text, ground and border', () => {
    fc.assert(
      fc.property(words, options, (text, chosen) => {
        const all = { ...PLAIN, ...chosen };
        const chart = letter(text, all);
        const bare = letter(text, { ...PLAIN, size: chosen.size });
        expect(inkOf(chart, all.text.hex)).toBe(chosen.times * inkOf(bare, all.text.hex));
        expect(chart.cells).toHaveLength(chart.rows * chart.columns);
        expect(new Set(chart.cells).size).toBe(chart.colours.length);
        // Border and letters never lie on each other: the border's ink does not depend on them.
        if (chosen.border === 'none') expect(inkOf(chart, all.borderColour.hex)).toBe(0);
      }),
    );
  });

  it('knots out as drawn', () => {
    fc.assert(
      fc.property(words, options, (text, chosen) => {
        const chart = letter(text, { ...PLAIN, ...chosen, times: 1, columns: null });
        expect(verifyPlan(planAlpha(chart), chart).ok).toBe(true);
      }),
      { numRuns: 15 },
    );
  });

  it('in one colour throughout is a plain chart', () => {
    const chart = letter('Heron', { ...PLAIN, text: PLAIN.ground });
    expect(chart.colours).toHaveLength(1);
    expect(new Set(chart.cells)).toEqual(new Set([0]));
  });
});
