import { mistakeKey } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { viewMistakes } from '../../src/mistakes/make.js';
import { offersAt } from '../../src/mistakes/offers.js';
import { soundPiece } from './pieces.js';

const charts = fc
  .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 7 }))
  .chain(([rows, columns]) =>
    fc.array(
      fc.string({
        unit: fc.constantFrom('b', 'o', 'w'),
        minLength: columns,
        maxLength: columns,
      }),
      { minLength: rows, maxLength: rows },
    ),
  );

const WAVE = ['bbbooobb', 'bboooobb', 'bbbooobb', 'bboooobb', 'bbbooobb', 'bbbbbbbb'];

describe('mistakes offered', () => {
  it('can all be made, each is named once, and each is shown and put into words', () => {
    fc.assert(
      fc.property(
        charts,
        fc.constantFrom('straight' as const, 'wrapped' as const),
        fc.nat(),
        fc.nat(),
        (rows, edge, r, c) => {
          const sound = soundPiece(rows, edge);
          const place = { row: r % sound.plan.rows, column: c % sound.plan.columns };
          const offers = offersAt(sound.written, place).flatMap((group) => group.offers);
          expect(new Set(offers.map(({ label }) => label)).size).toBe(offers.length);
          expect(new Set(offers.map(({ mistake }) => mistakeKey(mistake))).size).toBe(
            offers.length,
          );
          for (const { mistake } of offers) {
            const view = viewMistakes(sound, [mistake], null);
            expect(view.what.join(' ')).toContain(`${mistake.row + 1}`);
            expect(view.goOn).not.toBe('');
            expect(view.undo.length).toBeGreaterThan(0);
            expect(view.made).toContain('class="slip"');
            expect(view.drawn).not.toContain('class="slip"');
            expect(view.place.row).toBeLessThan(sound.plan.rows);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('are in the words of a maker', () => {
    const { written } = soundPiece(WAVE);
    const labels = offersAt(written, { row: 2, column: 3 }).flatMap(({ name, offers }) =>
      offers.map(({ label }) => `${name}: ${label}`),
    );
    expect(labels).toContain('The knot: Skip this string and tie onto the next');
    expect(labels).toContain('The knot: Tie a backward knot');
    expect(labels).not.toContain('The knot: Tie a forward knot');
    expect(labels).toContain('The colour: Change colour one knot late');
    expect(labels).toContain('The colour: Leave the old lead uncaught');
    expect(labels).toContain('The whole row: Leave this row out');
    // A turn's mistakes are offered at both of its knots.
    const turn = 'Forget the edge knot that ends row 1';
    for (const row of [0, 1]) {
      const offers = offersAt(written, { row, column: 7 }).flatMap((group) => group.offers);
      expect(offers.map(({ label }) => label)).toContain(turn);
    }
  });
});

describe('a mistaken piece', () => {
  it('tells of a skipped string what is seen, what to undo and how to go on', () => {
    const view = viewMistakes(
      soundPiece(WAVE),
      [{ kind: 'skipped-string', row: 2, column: 1 }],
      null,
    );
    expect(view.seen).toEqual([
      'Row 3: column 2 is a bare string; columns 4 and 7 have another colour; 7 knots in place of 8.',
      'From row 4 on everything looks as drawn again.',
    ]);
    // Knots on strings 3 to 8 were tied before the row's end, when it is noticed.
    expect(view.undo[0]).toBe('Undo 6 knots, the last one first, back to base string 2 in row 3.');
    expect(view.findings.some((text) => text.startsWith('Wrong. Row 3, column 2:'))).toBe(true);
    expect(view.knot?.made).toBe('No knot: the bare string.');
    expect(view.knot?.drawn).toMatchObject({ kind: 'forward', name: 'lake blue' });
  });

  it('tells of one edge knot at a turn that the edge pulls in', () => {
    const view = viewMistakes(
      soundPiece(WAVE),
      [{ kind: 'single-edge-knot', row: 2, lacking: 'end' }],
      null,
    );
    expect(view.seen.join(' ')).toContain('the right edge pulls in');
    expect(view.made).toContain('class="edge"');
    // The knot that is there at the turn, and the seven of the rest of row 4.
    expect(view.undo[0]).toContain('Undo 8 knots');
  });

  it('shows a lead caught at an edge sticking out', () => {
    const sound = soundPiece(['bbbb', 'oooo', 'bbbb']);
    const offers = offersAt(sound.written, { row: 1, column: 3 }).flatMap(({ offers: all }) => all);
    const caught = offers.find(({ mistake }) => mistake.kind === 'caught-at-edge');
    if (caught === undefined) throw new Error('The lead cannot be caught.');
    const view = viewMistakes(sound, [caught.mistake], null);
    expect(view.seen.join(' ')).toContain('a lead sticks out on the right');
    expect(view.made).toContain('stroke="#1f6fb2" stroke-width="5.6"');
    expect(view.drawn).not.toContain('stroke-width="5.6"');
  });

  it('may have a row too many or too few', () => {
    const sound = soundPiece(WAVE);
    const longer = viewMistakes(sound, [{ kind: 'extra-row', row: 2 }], null);
    expect(longer.seen.at(-1)).toBe('The piece comes out a row too long.');
    expect(longer.rows.last).toBe(7);
    expect(longer.knot).toBeNull();
    const shorter = viewMistakes(sound, [{ kind: 'missing-row', row: 5 }], null);
    expect(shorter.seen.at(-1)).toBe('The piece comes out a row too short.');
    expect(shorter.rows.last).toBe(5);
  });
});
