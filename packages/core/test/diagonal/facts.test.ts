import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import {
  diagonalStripes,
  KNOT_KINDS,
  knotIndex,
  knotsAcross,
  knotsInRow,
  NO_KNOT,
  repeatOf,
  type State,
  simulateDiagonal,
} from '../../src/index.js';
import { knownNumbers } from '../support/facts.js';
import { hang, orderIn, tie } from '../support/tie.js';

/**
 * Knots that exchange their strings are exchanges of neighbours, so what is known of those must come
 * out of the state machine and of repeats. The numbers and their sources: test/facts/README.md.
 */

/** One row of a brick wall in which each knot compares the values of its strings. */
function compareRow(state: State, row: number, first: 0 | 1, values: readonly number[]): State {
  let now = state;
  const value = (slot: number) => values[orderIn(now)[slot] as number] as number;
  for (let slot = (first + row) % 2; slot + 1 < now.front.length; slot += 2) {
    const exchange = value(slot) > value(slot + 1);
    // Any kind will do that exchanges, or does not: all four take part.
    const kinds = exchange
      ? (['forward', 'backward'] as const)
      : (['forward-backward', 'backward-forward'] as const);
    now = tie(now, slot, kinds[(slot + row) % 4 < 2 ? 0 : 1]);
  }
  return now;
}

function compareRows(rows: number, first: 0 | 1, values: readonly number[]): number[] {
  let state = hang(values.length);
  for (let row = 0; row < rows; row++) state = compareRow(state, row, first, values);
  return orderIn(state).map((string) => values[string] as number);
}

const sorted = (values: readonly number[]) => [...values].sort((one, other) => one - other);

describe('a brick wall of knots chosen by comparison (odd-even transposition sort)', () => {
  it.each([2, 3, 4, 5, 6])('sorts all noughts and ones on %i strings in as many rows', (n) => {
    for (const first of [0, 1] as const) {
      for (let bits = 0; bits < 2 ** n; bits++) {
        const values = Array.from({ length: n }, (_, i) => (bits >> i) & 1);
        expect(compareRows(n, first, values)).toEqual(sorted(values));
      }
    }
  });

  it('sorts any order of up to 16 strings, and a row less does not do', () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat(99), { minLength: 2, maxLength: 16 }),
        fc.constantFrom(0 as const, 1 as const),
        (values, first) => {
          expect(compareRows(values.length, first, values)).toEqual(sorted(values));
        },
      ),
      { numRuns: 30 },
    );
    for (const n of [3, 4, 7, 8]) {
      const falling = Array.from({ length: n }, (_, i) => n - i);
      expect(compareRows(n - 1, 0, falling)).not.toEqual(sorted(falling));
    }
  });
});

describe('a brick wall of knots that all exchange', () => {
  it.each(knownNumbers('brick_rows_to_reversal'))(
    'reverses %i strings at row %i, and brings them back in twice as many rows as strings',
    (n, reversal) => {
      let state = hang(n);
      const start = orderIn(state);
      const reversed = [...start].reverse();
      const identity = new Map(knownNumbers('brick_rows_to_identity')).get(n);
      for (let row = 0; row < 2 * n; row++) {
        for (let slot = row % 2; slot + 1 < n; slot += 2) {
          state = tie(state, slot, KNOT_KINDS[(row + slot) % 2] ?? 'forward');
        }
        const isReversed = orderIn(state).join() === reversed.join();
        if (row + 1 <= reversal) expect(isReversed).toBe(row + 1 === reversal);
        // Two strings have no place for a knot in every second row.
        if (n > 2) expect(orderIn(state).join() === start.join()).toBe(row + 1 === identity);
      }
      expect(orderIn(state)).toEqual(start);
    },
  );
});

describe('ways to reverse the strings', () => {
  const exchanged = (state: State, slot: number) => {
    const order = orderIn(state);
    return (order[slot] as number) > (order[slot + 1] as number);
  };
  const open = (state: State) =>
    state.front
      .map((_, slot) => slot)
      .filter((slot) => slot + 1 < state.front.length && !exchanged(state, slot));

  it.each(knownNumbers('A005118_reduced_words_of_reversal').slice(0, 6))(
    'knot after knot, %i strings have %i shortest ways',
    (n, known) => {
      const ways = new Map<string, number>();
      const count = (state: State): number => {
        const key = orderIn(state).join();
        const found = ways.get(key);
        if (found !== undefined) return found;
        const slots = open(state);
        const sum = slots.reduce((all, slot) => all + count(tie(state, slot, 'forward')), 0);
        ways.set(key, slots.length === 0 ? 1 : sum);
        return ways.get(key) as number;
      };
      expect(count(hang(n))).toBe(known);
    },
  );

  // Knots that may be tied in either order are tied as early as they can be, layer by layer; each
  // way has just one such form (P. Cartier, D. Foata, 1969).
  it.each(knownNumbers('A006245_commutation_classes').slice(0, 6))(
    'row by row, %i strings have %i of them',
    (n, known) => {
      const count = (state: State, layer: readonly number[] | null): number => {
        const slots = open(state);
        if (slots.length === 0) return 1;
        const next = slots.filter(
          (slot) => layer === null || layer.some((before) => Math.abs(before - slot) <= 1),
        );
        return layersOf(next).reduce(
          (sum, chosen) =>
            sum +
            count(
              chosen.reduce((now, slot) => tie(now, slot, 'backward'), state),
              chosen,
            ),
          0,
        );
      };
      expect(count(hang(n), null)).toBe(known);
    },
  );

  /** Every set of slots, but the empty one, of which no two share a string. */
  function layersOf(slots: readonly number[]): number[][] {
    const [first, ...rest] = slots;
    if (first === undefined) return [];
    const apart = rest.filter((slot) => slot - first > 1);
    return [[first], ...layersOf(apart).map((layer) => [first, ...layer]), ...layersOf(rest)];
  }
});

describe('repeats', () => {
  const landau = new Map(knownNumbers('landau_A000793'));

  it('have an order that is the least common multiple of the cycles, never above Landau’s', () => {
    fc.assert(
      fc.property(anyDiagonal({ maxStrings: 8, maxRows: 12 }), (pattern) => {
        const { order, cycles, permutation } = repeatOf(pattern);
        expect(cycles.flat().sort((one, other) => one - other)).toEqual(
          Array.from({ length: pattern.strings }, (_, slot) => slot),
        );
        for (const cycle of cycles) {
          cycle.forEach((slot, i) => {
            expect(permutation[slot]).toBe(cycle[(i + 1) % cycle.length]);
          });
        }
        expect(cycles.every(({ length }) => order % BigInt(length) === 0n)).toBe(true);
        expect(Number(order)).toBeLessThanOrEqual(landau.get(pattern.strings) as number);
      }),
    );
  });

  it.each([
    [5, [2, 3]],
    [7, [3, 4]],
    [8, [3, 5]],
  ])('of %i strings reach Landau’s number with cycles of %j', (n, lengths) => {
    const rows = 8;
    const lattice = { strings: n, rows, first: 0 } as const;
    const knots = new Uint8Array(rows * knotsAcross(lattice)).fill(NO_KNOT);
    let from = 0;
    for (const length of lengths) {
      // One string goes across the others of its group.
      for (let slot = from; slot < from + length - 1; slot++) {
        const row = (from % 2) + slot - from;
        knots[knotIndex(lattice, row, (slot - (row % 2)) / 2)] = 0;
      }
      from += length;
    }
    const colours = [{ key: 'b', hex: '#1f6fb2', name: 'lake blue' }];
    const pattern = { ...lattice, name: '', colours, start: new Uint8Array(n), knots };
    expect(Number(repeatOf(pattern).order)).toBe(landau.get(n));
  });

  it.each([2, 3, 5, 8])('a diagonal stripe of %i strings returns after as many passes', (n) => {
    // Common practice, no source: each pass takes the leftmost string over all the others.
    let state = hang(n);
    const start = orderIn(state).join();
    for (let pass = 1; pass <= n; pass++) {
      for (let slot = 0; slot + 1 < n; slot++) state = tie(state, slot, 'forward');
      expect(orderIn(state).join() === start).toBe(pass === n);
    }
    if (n < 3) return;
    // On the lattice a pass begins in every second row.
    const colours = [{ key: 'b', hex: '#1f6fb2', name: 'lake blue' }];
    const { order } = simulateDiagonal(diagonalStripes({ strings: n, colours }));
    for (let row = 1; row <= 2 * n; row++) {
      const now = order.slice(row * n, (row + 1) * n).join();
      expect(now === start).toBe(row === 2 * n);
    }
  });
});

describe('kinds and crossings', () => {
  it.each([
    [3, 2],
    [4, 3],
    [2, 7],
  ])('%i strings and %i rows: 4^K plans of K knots give 2^K diagrams of crossings', (n, rows) => {
    const lattice = { strings: n, rows, first: 0 } as const;
    const across = knotsAcross(lattice);
    const places: number[] = [];
    for (let row = 0; row < rows; row++) {
      for (let place = 0; place < knotsInRow(lattice, row); place++) {
        places.push(knotIndex(lattice, row, place));
      }
    }
    const diagrams = new Map<string, number>();
    for (let plan = 0; plan < 4 ** places.length; plan++) {
      const knots = new Uint8Array(rows * across).fill(NO_KNOT);
      places.forEach((cell, i) => {
        knots[cell] = (plan >> (2 * i)) & 3;
      });
      // Which strings meet in each row, and how they hang after it.
      let state = hang(n);
      const seen: string[] = [];
      for (let row = 0; row < rows; row++) {
        for (let place = 0; place < knotsInRow(lattice, row); place++) {
          const kind = KNOT_KINDS[knots[knotIndex(lattice, row, place)] as number] ?? 'forward';
          state = tie(state, (row % 2) + 2 * place, kind);
        }
        seen.push(orderIn(state).join());
      }
      const diagram = seen.join(';');
      diagrams.set(diagram, (diagrams.get(diagram) ?? 0) + 1);
    }
    // Counted, no source: each knot exchanges or does not, and has two kinds for either.
    expect(diagrams.size).toBe(2 ** places.length);
    expect(new Set(diagrams.values())).toEqual(new Set([2 ** places.length]));
  });
});

describe('strings', () => {
  it('are neither lost nor made up, and a knot moves only its two', () => {
    fc.assert(
      fc.property(anyDiagonal({ bareTenths: 3 }), (pattern) => {
        const { strings, rows } = pattern;
        const { order } = simulateDiagonal(pattern);
        for (let row = 0; row <= rows; row++) {
          const hangs = [...order.slice(row * strings, (row + 1) * strings)];
          expect(new Set(hangs).size).toBe(strings);
          if (row === rows) continue;
          const next = [...order.slice((row + 1) * strings, (row + 2) * strings)];
          hangs.forEach((string, slot) => {
            expect(Math.abs(next.indexOf(string) - slot)).toBeLessThanOrEqual(1);
          });
        }
      }),
    );
  });
});
