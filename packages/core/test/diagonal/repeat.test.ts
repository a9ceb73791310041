import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import {
  chevrons,
  type DiagonalPattern,
  diagonalStripes,
  knotsAcross,
  NO_KNOT,
  repeatInWords,
  repeatOf,
  simulateDiagonal,
  zigzag,
} from '../../src/index.js';
import { tiled } from '../support/tile.js';

const COLOURS = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#e8742c', name: 'buoy orange' },
];

/** Small patterns, whose endless pieces can be knotted on paper. */
const anySmall = anyDiagonal({ maxStrings: 7, maxRows: 6, maxColours: 3, bareTenths: 2 });

/** The string in each slot after so many repeats. */
function hangAfter(pattern: DiagonalPattern, times: number): number[] {
  return [...simulateDiagonal(tiled(pattern, times)).order.slice(-pattern.strings)];
}

describe('what a pattern does when it is repeated', () => {
  it('brings the strings back exactly after multiples of the order, and the colours of theirs', () => {
    fc.assert(
      fc.property(anySmall, (pattern) => {
        const { order, coloursCloseAfter, permutation } = repeatOf(pattern);
        const { start } = pattern;
        hangAfter(pattern, 1).forEach((string, slot) => {
          expect(permutation[string]).toBe(slot);
        });
        for (let times = 1; times <= 2 * Number(order); times++) {
          const hang = hangAfter(pattern, times);
          expect(hang.every((string, slot) => string === slot)).toBe(BigInt(times) % order === 0n);
          expect(hang.every((string, slot) => start[string] === start[slot])).toBe(
            BigInt(times) % coloursCloseAfter === 0n,
          );
        }
      }),
      { numRuns: 60 },
    );
  });

  it('finds the smallest true repeat of what is seen, knotted on paper far enough', () => {
    let shorter = 0;
    let longer = 0;
    fc.assert(
      fc.property(anySmall, fc.integer({ min: 1, max: 3 }), (once, times) => {
        const pattern = tiled(once, times);
        const { order, smallestRepeatRows, rowsApart } = repeatOf(pattern);
        const across = knotsAcross(pattern);
        const length = rowsApart * Number(order);
        const { cells } = simulateDiagonal(tiled(pattern, 2 * Number(order))).picture;
        let smallest = 2;
        const repeats = (rows: number) => {
          for (let i = 0; i < length * across; i++) {
            if (cells[i] !== cells[i + rows * across]) return false;
          }
          return true;
        };
        while (!repeats(smallest)) smallest += 2;
        expect(smallestRepeatRows).toBe(BigInt(smallest));
        if (smallest < rowsApart) shorter++;
        if (smallest > rowsApart) longer++;
      }),
      { numRuns: 100 },
    );
    expect([shorter > 0, longer > 0]).toEqual([true, true]);
  });

  it('finds shorter repeats of knots and strings inside the given rows', () => {
    fc.assert(
      fc.property(anySmall, fc.integer({ min: 1, max: 4 }), (once, times) => {
        const one = repeatOf(once);
        const many = repeatOf(tiled(once, times));
        expect(many.knotsRepeatRows).toBe(one.knotsRepeatRows);
        expect(many.stringsRepeatRows).toBe(one.stringsRepeatRows);
        expect(many.smallestRepeatRows).toBe(one.smallestRepeatRows);
      }),
      { numRuns: 50 },
    );
  });

  it('tells a shift to the side, which is so in every place that the piece has twice', () => {
    let found = 0;
    fc.assert(
      fc.property(anySmall, (pattern) => {
        const { shiftedRepeat, order } = repeatOf(pattern);
        if (shiftedRepeat === null) return;
        found++;
        const across = knotsAcross(pattern);
        const long = tiled(pattern, Number(order) + 40);
        const { cells } = simulateDiagonal(long).picture;
        const seen = (row: number, slot: number) => {
          const place = (slot - ((long.first + row) % 2)) / 2;
          const inPiece = place >= 0 && slot + 1 < pattern.strings;
          return inPiece ? cells[row * across + place] : undefined;
        };
        for (let row = 0; row < long.rows - shiftedRepeat.rows; row++) {
          for (let slot = (long.first + row) % 2; slot < pattern.strings - 1; slot += 2) {
            const other = seen(row + shiftedRepeat.rows, slot + shiftedRepeat.slots);
            if (other !== undefined) expect(other).toBe(seen(row, slot));
          }
        }
      }),
      { numRuns: 60 },
    );
    expect(found).toBeGreaterThan(0);
    const stripes = diagonalStripes({ strings: 9, colours: COLOURS });
    expect(repeatOf(stripes).shiftedRepeat).toEqual({ rows: 1, slots: 1 });
    expect(repeatOf(zigzag({ strings: 9, colours: COLOURS })).shiftedRepeat).toBeNull();
  });

  it('says that an odd number of rows would go on with the other slots', () => {
    const odd = chevrons({ strings: 8, colours: COLOURS, rows: 7 });
    const repeat = repeatOf(odd);
    expect([repeat.sidesClose, repeat.rowsApart]).toEqual([false, 8]);
    expect(repeatInWords(repeat)[0]).toContain(
      'After 7 rows, an odd number, the next repeat would begin on the other slots.',
    );
    expect(repeatOf({ ...odd, rows: 6 }).sidesClose).toBe(true);
  });

  it('counts without knotting it an order that no piece could reach', () => {
    // Rows of knots that exchange bring each block of strings round by one slot.
    const lengths = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37];
    const pattern = turningBlocks(lengths);
    const repeat = repeatOf(pattern);
    expect(repeat.cycles.map(({ length }) => length)).toEqual([...lengths].reverse());
    expect(repeat.order).toBe(lengths.reduce((product, length) => product * BigInt(length), 1n));
    expect(repeat.order).toBe(7_420_738_134_810n);
    expect(repeatInWords(repeat).join(' ')).toContain('after 7,420,738,134,810 repeats');
    const rows = repeat.smallestRepeatRows / BigInt(pattern.rows);
    expect(repeat.order % rows).toBe(0n);
  });

  it('is told in words', () => {
    const words = (pattern: DiagonalPattern) => repeatInWords(repeatOf(pattern)).join(' ');
    expect(words(zigzag({ strings: 6, colours: COLOURS }))).toBe(
      'After one repeat every string hangs where it hung at the start. What is seen begins anew after each repeat, 10 rows, and not before.',
    );
    expect(words(chevrons({ strings: 8, colours: COLOURS, rows: 8 }))).toContain(
      'The strings of slots 1 and 8 change places.',
    );
  });
});

/** One string of each block goes across it, so that all others move on by a slot. */
function turningBlocks(lengths: readonly number[]): DiagonalPattern {
  const strings = lengths.reduce((sum, length) => sum + length, 0);
  const rows = 38;
  const lattice = { strings, rows, first: 0 } as const;
  const across = knotsAcross(lattice);
  const knots = new Uint8Array(rows * across).fill(NO_KNOT);
  let from = 0;
  for (const length of lengths) {
    for (let step = 0; step + 1 < length; step++) {
      const slot = from + step;
      const row = (from % 2) + step;
      knots[row * across + (slot - (row % 2)) / 2] = 0;
    }
    from += length;
  }
  const start = Uint8Array.from({ length: strings }, (_, slot) => slot % 2);
  return { ...lattice, name: '', colours: COLOURS, start, knots };
}
