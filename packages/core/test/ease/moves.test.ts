import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Count, countOf } from '../../src/ease/count.js';
import { type Move, Moves } from '../../src/ease/moves.js';
import { Stints } from '../../src/ease/stints.js';
import type { Chart } from '../../src/index.js';
import { anyChart, anyStart } from '../support/charts.js';

const LONG = 4;

function moved(chart: Chart, stints: Stints, move: Move): Chart {
  const cells = chart.cells.slice();
  for (let knot = move.first; knot < move.end; knot++) cells[stints.cellOf(knot)] = move.to;
  return { ...chart, cells };
}

describe('what a move along the thread saves, from the stints nearby', () => {
  it('is what counting the whole chart before and after gives', () => {
    fc.assert(
      fc.property(anyChart({ columns: 7, rows: 8, colours: 4 }), anyStart, (chart, start) => {
        const stints = new Stints(chart, start);
        const moves = new Moves(stints, LONG);
        const before = countOf(chart, start, LONG);
        for (let stint = 0; stint < stints.count; stint++) {
          for (const move of [
            moves.intoBefore(stint),
            moves.intoAfter(stint),
            moves.shifted(stint, 1),
            moves.shifted(stint, -1),
          ]) {
            if (move === null) continue;
            const after = countOf(moved(chart, stints, move), start, LONG);
            const saved: Count = {
              changes: before.changes - after.changes,
              edgeChanges: before.edgeChanges - after.edgeChanges,
              floats: before.floats - after.floats,
              longFloats: before.longFloats - after.longFloats,
              floatKnots: move.gain.floatKnots,
            };
            expect(move.gain).toEqual(saved);
            expect(move.gain.floatKnots).toBeCloseTo(before.floatKnots - after.floatKnots, 6);
          }
        }
      }),
      { numRuns: 300 },
    );
  });
});
