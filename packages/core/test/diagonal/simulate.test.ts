import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import {
  apply,
  BARE,
  type DiagonalPattern,
  knotAt,
  knotIndex,
  knotsAcross,
  knotsInLattice,
  knotsInRow,
  NO_KNOT,
  planDiagonal,
  simulateDiagonal,
  slotOfPlace,
  startState,
} from '../../src/index.js';

describe('a diagonal pattern knotted on paper', () => {
  it('ties neighbours in brick order', () => {
    const pattern = allForward(5, 4, 0);
    expect([0, 1, 2, 3].map((row) => knotsInRow(pattern, row))).toEqual([2, 2, 2, 2]);
    expect([0, 1].map((row) => slotOfPlace(pattern, row, 1))).toEqual([2, 3]);
    const { order } = simulateDiagonal(pattern);
    expect([...order.slice(5, 10)]).toEqual([1, 0, 3, 2, 4]);
    expect([...order.slice(10, 15)]).toEqual([1, 3, 0, 4, 2]);
  });

  // The steps run through the state machine of alpha work, which knows nothing of lattices.
  it('is what the state machine makes of the steps', () => {
    fc.assert(
      fc.property(anyDiagonal(), (pattern) => {
        const plan = planDiagonal(pattern);
        const reading = simulateDiagonal(pattern);
        let state = startState(plan.strings, plan.hung);
        let row = 0;
        const check = () =>
          expect(state.front).toEqual(
            [...reading.order.slice((row + 1) * pattern.strings, (row + 2) * pattern.strings)].map(
              (string) => plan.hung[string],
            ),
          );
        let halves = 0;
        for (const step of plan.steps) {
          if (step.do === 'turn') {
            check();
            row++;
          }
          const result = apply(state, step);
          if (!result.ok) throw new Error(result.fault.message);
          state = result.state;
          if (step.do !== 'halfHitch') continue;
          halves++;
          const place = (state.at.column - slotOfPlace(pattern, row, 0)) / 2;
          const cell = knotIndex(pattern, row, place);
          expect(plan.hung[reading.tying[cell] as number]).toBe(step.tying);
          expect(plan.hung[reading.held[cell] as number]).toBe(step.held);
        }
        check();
        expect(halves).toBe(2 * pattern.knots.filter((kind) => kind !== NO_KNOT).length);
      }),
    );
  });

  it('shows the colour of the tying string, and nothing where no knot is', () => {
    fc.assert(
      fc.property(anyDiagonal(), (pattern) => {
        const { picture, tying } = simulateDiagonal(pattern);
        let places = 0;
        for (let row = 0; row < pattern.rows; row++) {
          for (let place = 0; place < knotsAcross(pattern); place++) {
            const cell = knotIndex(pattern, row, place);
            const bare = place >= knotsInRow(pattern, row) || knotAt(pattern, row, place) === null;
            if (place < knotsInRow(pattern, row)) places++;
            expect(picture.cells[cell]).toBe(bare ? BARE : pattern.start[tying[cell] as number]);
          }
        }
        expect(places).toBe(knotsInLattice(pattern));
      }),
    );
  });
});

function allForward(strings: number, rows: number, first: 0 | 1): DiagonalPattern {
  const base = { strings, rows, first };
  const knots = new Uint8Array(rows * knotsAcross(base)).fill(NO_KNOT);
  for (let row = 0; row < rows; row++) {
    for (let place = 0; place < knotsInRow(base, row); place++) {
      knots[knotIndex(base, row, place)] = 0;
    }
  }
  return {
    ...base,
    name: '',
    colours: [{ key: 'b', hex: '#1f6fb2', name: 'lake blue' }],
    start: new Uint8Array(strings),
    knots,
  };
}
