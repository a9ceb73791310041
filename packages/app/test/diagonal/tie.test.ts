import {
  DiagonalPlanReader,
  diagonalStepInWords,
  diamonds,
  instructDiagonalRow,
  planDiagonal,
  simulateDiagonal,
} from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diagonalInHand } from '../../src/diagonal/tie/in-hand.js';
import { DiagonalRows } from '../../src/diagonal/tie/rows.js';
import type { DiagonalRowSheet } from '../../src/diagonal/work/messages.js';
import { announced, spoken } from '../../src/tie/in-hand.js';
import { driftOf, goneOn, rowMarks } from '../../src/tie/row-marks.js';
import { COLOURS as ALL, anyPattern } from './projects.js';

const COLOURS = ALL.slice(0, 2);

const rowsOf = (pattern: Parameters<typeof simulateDiagonal>[0]): DiagonalRows => {
  const { tying, held } = simulateDiagonal(pattern);
  return new DiagonalRows(pattern, tying, held);
};

describe('knots of a diagonal pattern, counted', () => {
  it('are those that the steps of the plan tie, in their order', () => {
    fc.assert(
      fc.property(anyPattern, (pattern) => {
        const rows = rowsOf(pattern);
        const tied = [...new DiagonalPlanReader(planDiagonal(pattern))].flatMap(
          ({ knots }) => knots,
        );
        expect(rows.total).toBe(tied.length);
        tied.forEach(({ row, place }, done) => {
          expect(rows.rowsOf(done + 1) - 1).toBe(row);
          expect(rows.placesOf(row)[done - rows.before(row)]).toBe(place);
        });
        expect(rows.rowsOf(0)).toBe(0);
      }),
    );
  });

  it('have the same marks whether taken at once or knot by knot', () => {
    fc.assert(
      fc.property(anyPattern, fc.array(fc.nat(), { maxLength: 6 }), (pattern, stops) => {
        const rows = rowsOf(pattern);
        let marks = rowMarks(rows, 0);
        let done = 0;
        for (const stop of stops) {
          const to = stop % (rows.total + 1);
          marks = goneOn(marks, rows, done, to);
          done = to;
          expect(marks).toEqual(rowMarks(rows, done));
        }
      }),
    );
  });

  it('tell of a knot that is changed exactly where it is tied', () => {
    const pattern = diamonds({ strings: 8, rows: 6, colours: COLOURS });
    const rows = rowsOf(pattern);
    const tied = { done: 10, columns: 8, marks: rowMarks(rows, 10) };
    const changed = (at: number) => {
      const knots = pattern.knots.slice();
      knots[at] = (knots[at] as number) ^ 2;
      return driftOf(tied, rowsOf({ ...pattern, knots }));
    };
    expect(driftOf(tied, rows)).toEqual({ what: 'none' });
    // Knots 1 to 4 are in row 1, 5 to 7 in row 2, 8 to 10 in row 3; its fourth is not tied.
    expect(changed(4)).toEqual({ what: 'row', row: 1 });
    expect(changed(11)).toEqual({ what: 'none' });
    const wider = diamonds({ strings: 10, rows: 6, colours: COLOURS });
    expect(driftOf(tied, rowsOf(wider))).toEqual({ what: 'columns', was: 8, now: 10 });
    expect(driftOf(tied, rowsOf({ ...pattern, start: pattern.start.map(() => 0) })).what).toBe(
      'row',
    );
  });
});

describe('the knot in hand', () => {
  const pattern = diamonds({ strings: 8, rows: 4, colours: COLOURS });
  const plan = planDiagonal(pattern);
  const sheets = [...new DiagonalPlanReader(plan)].map(
    (reading): DiagonalRowSheet => ({
      reading,
      instructions: instructDiagonalRow(reading, plan),
      steps: reading.knots.map(({ steps: { first, end } }) =>
        Array.from({ length: end - first }, (_, i) => diagonalStepInWords(plan, first + i)),
      ),
    }),
  );
  const handAt = (row: number, order: number) => {
    const [sheet, next = null] = sheets.slice(row);
    const column = sheet?.reading.knots[order]?.place ?? 0;
    const hand = sheet && diagonalInHand(sheet, next, { row, order, column });
    if (!hand) throw new Error('No knot there.');
    return hand;
  };

  it('is said with its slots, its two strings and what comes then', () => {
    const hand = handAt(0, 0);
    expect(hand.heading).toMatch(/^(Forward|Backward) knot on slots 1-2$/);
    expect(hand.does.tying).toMatch(/^S[12] \(.+\) ties$/);
    expect(hand.does.held).toMatch(/^onto S[12] \(.+\)$/);
    expect(hand.way).toMatch(/^4 knots\./);
    expect(hand.run).toEqual({ at: 1, of: 2 });
    expect(hand.next.map(({ kind }) => kind)).toEqual(['knot', 'knot', 'turn']);
    expect(spoken(hand)).toMatch(/^Row 1\. 4 knots\..*knot on slots 1-2\.$/);
    expect(announced(hand, 4)).toMatch(/^Row 1, knot 1 of 4: a \w+ knot on slots 1-2\.$/);
  });

  it('has two half hitches, and never a colour change', () => {
    for (const [row, { reading }] of sheets.entries()) {
      for (const [order] of reading.knots.entries()) {
        const hand = handAt(row, order);
        expect(hand.change).toBeNull();
        expect(hand.steps.filter((step) => /^Lay/.test(step))).toHaveLength(2);
      }
    }
  });
});
