import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextMoves, partOf, runOf } from '../../src/tie/next-moves.js';
import type { RowSheet } from '../../src/work/messages.js';
import { anyWork, CHOICE, chartOf, rowsOf, type Work } from './works.js';

const sheetsOf = (work: Work): RowSheet[] => rowsOf(work).map(({ sheet }) => sheet);
const sheets = sheetsOf({ chart: chartOf(['bbbbbbbb', 'bboooobb']), choice: CHOICE });
const at = (row: number): RowSheet => {
  const sheet = sheets[row];
  if (sheet === undefined) throw new Error('No such row.');
  return sheet;
};

describe('the next moves', () => {
  it('go on with the run, to the edge, round the turn and into the next row', () => {
    expect(nextMoves(at(0), at(1), 2, 5).map(({ text }) => text)).toEqual([
      'forward knots on base strings 4 to 7',
      'a forward-backward knot on base string 8, the edge knot',
      'turn; row 2 goes from right to left',
      'a forward-backward knot on base string 8, the edge knot',
      'a backward knot on base string 7',
    ]);
  });

  it('name a change with its lead and its first knot', () => {
    const [next, after] = nextMoves(at(1), null, 6, 9);
    expect(next).toEqual({
      kind: 'change',
      text: 'change to L2 (buoy orange); its first knot is a backward knot on base string 6',
    });
    expect(after?.text).toBe('backward knots on base strings 5 to 3');
  });

  it('are none after the last knot', () => {
    expect(nextMoves(at(1), null, 0, 4)).toEqual([]);
  });

  it('say how far a run has come', () => {
    expect(runOf(at(0), 1)).toEqual({ at: 1, of: 6 });
    expect(runOf(at(0), 6)).toEqual({ at: 6, of: 6 });
    expect(runOf(at(0), 0)).toEqual({ at: 1, of: 1 });
  });

  it('are the same as those of the knot after, but for what is then in hand', () => {
    fc.assert(
      fc.property(anyWork, (work) => {
        for (const sheet of sheetsOf(work)) {
          const knots = sheet.reading.knots;
          for (const [order, knot] of knots.entries()) {
            const run = runOf(sheet, knot.column);
            expect(partOf(sheet, knot.column)).not.toBeNull();
            const moves = nextMoves(sheet, null, knot.column, 99);
            const then = knots[order + 1];
            if (then === undefined) {
              expect(moves).toEqual([]);
              continue;
            }
            const following = nextMoves(sheet, null, then.column, 99);
            const thenRun = runOf(sheet, then.column);
            // What is left of its run goes first, and has been said with the run's beginning.
            const more = thenRun.at < thenRun.of;
            expect(moves.slice(1)).toEqual(more ? following.slice(1) : following);
            expect(thenRun.at).toBe(run.at < run.of ? run.at + 1 : 1);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
