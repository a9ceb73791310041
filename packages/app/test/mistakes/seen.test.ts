import { makeMistakes, possibleMistakes, Sight } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextSight } from '../../src/mistakes/seen-colours.js';
import { isMarked, rowsOfSeen, seenOfRows, unseenRow } from '../../src/mistakes/seen-rows.js';
import { explainRows } from '../../src/mistakes/tell.js';
import { soundPiece } from './pieces.js';

const ROWS = ['bbbooobb', 'bboooobb', 'bbbooobb', 'bboooobb', 'bbbooobb', 'bbbbbbbb'];

describe('pressing a knot', () => {
  it('comes round to every colour, the bare string and not looked at, each once', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.nat(), (colours, at) => {
        const drawn = (at % (colours + 1)) - 1;
        const seen: number[] = [];
        let sight: number = Sight.unknown;
        do {
          const next = nextSight(sight, drawn, colours, 1);
          expect(nextSight(next, drawn, colours, -1)).toBe(sight);
          sight = next;
          seen.push(sight);
        } while (sight !== Sight.unknown && seen.length < 50);
        expect(seen).toHaveLength(colours + 2);
        expect(new Set(seen).size).toBe(colours + 2);
        // The likeliest first.
        if (drawn >= 0) expect(seen[0]).toBe(drawn);
      }),
    );
  });
});

describe('rows marked', () => {
  it('hold what was seen, as far as anything was', () => {
    const { plan, written } = soundPiece(ROWS);
    const { seen } = makeMistakes(plan, [{ kind: 'single-edge-knot', row: 2, lacking: 'end' }]);
    const rows = rowsOfSeen(seen);
    expect(seenOfRows(rows, plan, written.colours, 1000)).toEqual(seen);
    expect(isMarked(unseenRow(3, 8))).toBe(false);
  });

  it('reach a row further where an edge was seen at the end of a row', () => {
    const { plan, written } = soundPiece(ROWS);
    const right = { ...unseenRow(2, 8), edges: [0, 3] as const };
    expect(seenOfRows([right], plan, written.colours, 1000).rows).toBe(4);
    const left = { ...unseenRow(2, 8), edges: [3, 0] as const };
    expect(seenOfRows([left], plan, written.colours, 1000).rows).toBe(3);
  });

  it('are refused, with the rows that will do, when they lie too far down', () => {
    const { plan, written } = soundPiece(ROWS);
    const low = { ...unseenRow(5, 8), knots: 8 };
    expect(() => seenOfRows([low], plan, written.colours, 47)).toThrow(
      'Mark a row among the first 5.',
    );
  });

  it('lead to the mistake behind them, whichever it is', () => {
    const sound = soundPiece(ROWS);
    const made = [...possibleMistakes(sound.written, 2, 2, 6)];
    expect(made.length).toBeGreaterThan(50);
    let explained = 0;
    for (const mistake of made) {
      const { seen } = makeMistakes(sound.plan, [mistake]);
      const told = explainRows(sound, rowsOfSeen(seen));
      const same = told.explanations
        .slice(0, 3)
        .some(({ parts }) =>
          parts.some(({ alternatives }) =>
            alternatives.some(({ mistakes }) =>
              mistakes.some((one) => one.kind === mistake.kind && one.row === mistake.row),
            ),
          ),
        );
      // A mistake that falls on nothing visible explains nothing.
      if (told.explanations.length === 0) continue;
      explained++;
      expect(same, JSON.stringify(mistake)).toBe(true);
    }
    expect(explained).toBeGreaterThan(made.length * 0.9);
  });
});
