import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { State } from '../../src/index.js';
import { knownNumbers } from '../support/facts.js';
import { hang, orderIn, tie } from '../support/tie.js';

/** Longest periods of permutations: test/facts/README.md. */
const LANDAU = new Map(knownNumbers('landau_A000793'));

describe('knots as permutations', () => {
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
          const repeat = (state: State): State =>
            slots.reduce((now, slot) => tie(now, slot, 'forward'), state);
          const once = orderIn(repeat(begin));
          const period = cycleLengths(once).reduce(leastCommonMultiple, 1);
          expect(period).toBeLessThanOrEqual(LANDAU.get(count) as number);
          let state = begin;
          for (let times = 1; times <= 2 * period; times++) {
            state = repeat(state);
            expect(orderIn(state).join() === orderIn(begin).join()).toBe(times % period === 0);
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
