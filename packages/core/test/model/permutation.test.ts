import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply, type State, startState, type ThreadString } from '../../src/index.js';

/**
 * Knots that change places are adjacent transpositions, so known numbers of combinatorics must
 * come out of the state machine. Sources: OEIS A005118 (reduced words of the reversal, also
 * Stanley 1984), A006245 (their commutation classes), A000793 (Landau's function).
 */
const REDUCED_WORDS = [1, 1, 2, 16, 768];
const COMMUTATION_CLASSES = [1, 1, 2, 8, 62];
const LANDAU = [1, 2, 3, 4, 6, 6, 12];

function hang(count: number): State {
  const strings: ThreadString[] = Array.from({ length: count }, (_, i) => ({
    id: `s${i}`,
    role: 'base',
    colour: '#888888',
    name: '',
  }));
  return startState(
    strings,
    strings.map(({ id }) => id),
  );
}

/** Ties a forward knot with the string in a slot onto its right neighbour. */
function knotAt(state: State, slot: number): State {
  const tying = state.front[slot] as string;
  const held = state.front[slot + 1] as string;
  let now = state;
  for (let half = 0; half < 2; half++) {
    const result = apply(now, { do: 'halfHitch', way: 'forward', tying, held });
    if (!result.ok) throw new Error(result.fault.message);
    now = result.state;
  }
  return now;
}

function brickRow(state: State, from: number): State {
  let now = state;
  for (let slot = from; slot + 1 < now.front.length; slot += 2) now = knotAt(now, slot);
  return now;
}

const order = (state: State): string => state.front.join(' ');

/** Every shortest way of knots by which the front is reversed, as lists of slots. */
function waysToReverse(state: State): number[][] {
  const place = (id: string): number => Number(id.slice(1));
  const ways: number[][] = [];
  let done = true;
  for (let slot = 0; slot + 1 < state.front.length; slot++) {
    if (place(state.front[slot] as string) > place(state.front[slot + 1] as string)) continue;
    done = false;
    for (const rest of waysToReverse(knotAt(state, slot))) ways.push([slot, ...rest]);
  }
  return done ? [[]] : ways;
}

/** Sorts neighbouring knots far enough apart to be tied in either order. */
function normalForm(way: readonly number[]): string {
  const sorted = [...way];
  for (let again = true; again; ) {
    again = false;
    for (let i = 0; i + 1 < sorted.length; i++) {
      const [one, other] = [sorted[i] as number, sorted[i + 1] as number];
      if (one - other > 1) {
        sorted[i] = other;
        sorted[i + 1] = one;
        again = true;
      }
    }
  }
  return sorted.join(' ');
}

describe('knots as permutations', () => {
  it.each([1, 2, 3, 4, 5])('reverse %i strings in the known number of ways', (count) => {
    const ways = waysToReverse(hang(count));
    expect(ways).toHaveLength(REDUCED_WORDS[count - 1] as number);
    expect(new Set(ways.map(normalForm)).size).toBe(COMMUTATION_CLASSES[count - 1]);
  });

  it.each([2, 3, 4, 5, 6, 7, 8, 13])('a full brick lattice reverses %i strings', (count) => {
    let state = hang(count);
    const start = order(state);
    const reversed = [...state.front].reverse().join(' ');
    let rowsToReversal = 0;
    let rows = 0;
    do {
      state = brickRow(state, rows % 2);
      rows++;
      if (order(state) === reversed && rowsToReversal === 0) rowsToReversal = rows;
    } while (order(state) !== start);
    // Two strings have no second sort of row, which then passes without a knot.
    expect(rowsToReversal).toBe(count === 2 ? 1 : count);
    expect(rows).toBe(count === 2 ? 3 : 2 * count);
  });

  it('a repeat comes back exactly after multiples of the order of its permutation', () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 2, max: 7 })
          .chain((count) =>
            fc.tuple(
              fc.constant(count),
              fc.array(fc.integer({ min: 0, max: count - 2 }), { maxLength: 20 }),
            ),
          ),
        ([count, slots]) => {
          const begin = hang(count);
          const repeat = (state: State): State => slots.reduce(knotAt, state);
          const once = repeat(begin).front.map((id) => Number(id.slice(1)));
          const period = cycleLengths(once).reduce(leastCommonMultiple, 1);
          expect(period).toBeLessThanOrEqual(LANDAU[count - 1] as number);
          let state = begin;
          for (let times = 1; times <= 2 * period; times++) {
            state = repeat(state);
            expect(order(state) === order(begin)).toBe(times % period === 0);
          }
        },
      ),
    );
  });
});

function cycleLengths(permutation: readonly number[]): number[] {
  const seen = new Set<number>();
  const lengths: number[] = [];
  for (let from = 0; from < permutation.length; from++) {
    let length = 0;
    for (let at = from; !seen.has(at); at = permutation[at] as number) {
      seen.add(at);
      length++;
    }
    if (length > 0) lengths.push(length);
  }
  return lengths;
}

function leastCommonMultiple(one: number, other: number): number {
  const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
  return (one * other) / divisor(one, other);
}
