import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import { Comparison } from '../../src/diagonal-mistakes/comparison.js';
import {
  knotPiece,
  type Piece,
  pieceOf,
  soundPiece,
  withMistake,
} from '../../src/diagonal-mistakes/piece.js';
import {
  possibleAtStart,
  possibleInRow,
  possibleRows,
} from '../../src/diagonal-mistakes/possible.js';
import { Trial } from '../../src/diagonal-mistakes/trial.js';
import {
  ANY_COLOUR,
  type DiagonalMistake,
  type DiagonalSeen,
  diagonalMistakeKey,
  makeDiagonalMistakes,
  simulateDiagonal,
} from '../../src/index.js';
import { everyDiagonalSlip } from '../support/diagonal-slips.js';

const small = anyDiagonal({ maxStrings: 7, maxRows: 7, maxColours: 3 });

function possible(piece: Piece): DiagonalMistake[] {
  const rows = [...piece.rows.keys()].flatMap((row) => [...possibleInRow(piece, row)]);
  return [...rows, ...possibleAtStart(piece), ...possibleRows(piece, piece.rows.length)];
}

/** What was seen, with some of it not looked at. */
function partly(seen: DiagonalSeen, dice: Iterator<number>): DiagonalSeen {
  const hide = (values: Uint8Array | undefined): Uint8Array =>
    Uint8Array.from(values ?? [], (value) => (dice.next().value < 3 ? ANY_COLOUR : value));
  return {
    ...seen,
    cells: hide(seen.cells),
    looks: hide(seen.looks),
    hanging: hide(seen.hanging),
  };
}

/** Tries every mistake on a piece, and knots each whole to compare. */
function compareAll(base: Piece, comparison: Comparison): void {
  const trial = new Trial(base, comparison);
  for (const slip of possible(base)) {
    const anew = new Trial(withMistake(base, slip), comparison);
    const upTo = [...anew.differing.slice(0, trial.first)].every((number) => number === 0);
    const better =
      trial.total > 0 &&
      upTo &&
      (anew.differing[trial.first] as number) < (trial.differing[trial.first] as number);
    const outcome = trial.try(slip);
    if (outcome === null) {
      expect(better && anew.total < trial.total, diagonalMistakeKey(slip)).toBe(false);
    } else {
      expect(outcome.differing, diagonalMistakeKey(slip)).toBe(anew.total);
      expect(outcome.first).toBe(anew.total === 0 ? comparison.rows : anew.first);
    }
  }
}

describe('a piece with mistakes', () => {
  it('is what the state machine makes of the steps, for every single mistake', () => {
    fc.assert(
      fc.property(small, (pattern) => {
        for (const slip of everyDiagonalSlip(pattern)) {
          const made = makeDiagonalMistakes(pattern, [slip]);
          const { cells, order, rows } = knotPiece(pieceOf(pattern, [slip]));
          expect(made.seen.cells).toEqual(cells);
          expect(made.drawn.order).toEqual(order);
          expect(made.sources).toHaveLength(rows);
        }
      }),
      { numRuns: 10 },
    );
  });

  it('is the pattern when there is none', () => {
    fc.assert(
      fc.property(small, (pattern) => {
        const { cells } = makeDiagonalMistakes(pattern, []).seen;
        expect(cells).toEqual(simulateDiagonal(pattern).picture.cells);
      }),
      { numRuns: 25 },
    );
  });
});

describe('the mistakes that are possible', () => {
  it('are those that a second listing has', () => {
    fc.assert(
      fc.property(small, (pattern) => {
        const keys = possible(soundPiece(pattern)).map(diagonalMistakeKey).sort();
        expect(keys).toEqual(everyDiagonalSlip(pattern).map(diagonalMistakeKey).sort());
      }),
      { numRuns: 40 },
    );
  });
});

describe('trying one mistake more', () => {
  it('says what knotting the whole piece anew says', () => {
    fc.assert(
      fc.property(
        small,
        fc.nat(),
        fc.nat(),
        fc.infiniteStream(fc.nat(9)),
        fc.nat(3),
        (pattern, one, two, dice, less) => {
          const slips = everyDiagonalSlip(pattern);
          const chosen = [slips[one % slips.length], slips[two % slips.length]] as [
            DiagonalMistake,
            DiagonalMistake,
          ];
          const planted = chosen.slice(0, 1 + (one % 2));
          const moving = planted.some(({ kind }) => kind.endsWith('row'));
          const { seen } = makeDiagonalMistakes(pattern, moving ? planted.slice(0, 1) : planted, {
            rows: Math.max(1, pattern.rows - less),
          });
          const comparison = new Comparison(pattern, partly(seen, dice));
          // From a piece that has a mistake already, too.
          const sound = soundPiece(pattern);
          const base = one % 3 === 0 ? sound : withMistake(sound, chosen[one % 3 === 1 ? 0 : 1]);
          compareAll(base, comparison);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('follows strings down through rows whose knots share a string', () => {
    fc.assert(
      fc.property(small, fc.nat(), fc.nat(), (pattern, one, two) => {
        const slips = everyDiagonalSlip(pattern);
        const off = slips.filter(({ kind }) => kind === 'one-slot-off');
        fc.pre(off.length > 0);
        const shifted = off[one % off.length] as DiagonalMistake & { row: number };
        const above = slips.filter((slip) => 'place' in slip && slip.row < shifted.row);
        fc.pre(above.length > 0);
        const slip = above[two % above.length] as DiagonalMistake;
        const { seen } = makeDiagonalMistakes(pattern, [shifted, slip]);
        compareAll(withMistake(soundPiece(pattern), shifted), new Comparison(pattern, seen));
      }),
      { numRuns: 40 },
    );
  });
});
