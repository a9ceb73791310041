import { chevrons, diagonalStripes, KNOT_KINDS, mirrorKnot, NO_KNOT } from '@halfhitch/core';
import { describe, expect, it } from 'vitest';
import { MESSAGES } from '../src/messages/words.js';
import { PatternKnotting } from '../src/piece/knotting.js';
import { LatticeOrder } from '../src/piece/lattice-order.js';
import { PatternRow } from '../src/row/pattern-row.js';

const COLOURS = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'c', hex: '#f4f1e8', name: 'chalk' },
];
const STRIPES = diagonalStripes({ strings: 5, rows: 10, colours: COLOURS });
const CHEVRONS = chevrons({ strings: 8, rows: 16, colours: COLOURS });
const ENGLISH = MESSAGES.in('en');
const GERMAN = MESSAGES.in('de');

describe('knots of a pattern in the order of knotting', () => {
  it('go row by row from the left, places without a knot left out', () => {
    const knots = STRIPES.knots.slice();
    knots[0] = NO_KNOT;
    const order = new LatticeOrder({ ...STRIPES, knots });
    const whole = Array.from({ length: order.length }, (_, i) => order.knot(i));
    expect(order.length).toBe(19);
    expect(whole.slice(0, 3).map((knot) => [knot?.row, knot?.place, knot?.order])).toEqual([
      [0, 1, 0],
      [1, 0, 0],
      [1, 1, 1],
    ]);
    expect(order.knot(19)).toBeUndefined();
    whole.forEach((knot, i) => {
      expect(order.before(knot?.row ?? 0, knot?.place ?? 0)).toBe(i);
    });
    for (let at = 0; at < order.length; at += 0.25) {
      expect(Math.floor(order.rowAt(at) + 1e-9)).toBe(order.knot(Math.floor(at))?.row);
    }
  });

  it('leave the outermost string idle where it has no neighbour', () => {
    const order = new LatticeOrder(STRIPES);
    for (let row = 0; row < STRIPES.rows; row++) {
      const { left, right } = order.idling(row);
      const startsLate = (STRIPES.first + row) % 2 === 1;
      // Five strings: one of the two edges idles in every row.
      expect([left !== null, right !== null]).toEqual([startsLate, !startsLate]);
    }
    expect(new LatticeOrder(CHEVRONS).idling(1 - CHEVRONS.first)).not.toEqual({
      left: null,
      right: null,
    });
  });
});

describe('words for diagonal work', () => {
  it('name row, place, slots, kind and both strings', () => {
    const knotting = new PatternKnotting(STRIPES);
    const first = knotting.order.knot(0);
    expect(knotting.sayKnot(0, false, ENGLISH)).toBe(
      `Row 1, knot 1 of 2, slots ${(first?.slot ?? 0) + 1} and ${(first?.slot ?? 0) + 2}: forward, ` +
        `${first?.tying.id} (${first?.tying.name}) tied on ${first?.held.id} (${first?.held.name})`,
    );
    expect(knotting.sayDone(GERMAN)).toBe('Das Stück ist fertig: 10 Reihen mit 5 Fäden.');
  });

  it('count slots from the other side in the mirror, and name the mirrored kind', () => {
    const knotting = new PatternKnotting(CHEVRONS);
    for (let number = 0; number < knotting.length; number++) {
      const knot = knotting.order.knot(number);
      const said = knotting.sayKnot(number, true, ENGLISH);
      const kind = mirrorKnot(knot?.kind ?? 'forward');
      expect(said).toContain(`: ${kind}, `);
      expect(said).toContain(`slots ${7 - (knot?.slot ?? 0)} and ${8 - (knot?.slot ?? 0)}:`);
    }
  });

  it('say two halves of every knot, whether places change, and who idles', () => {
    for (const words of [ENGLISH, GERMAN]) {
      for (const kind of KNOT_KINDS) {
        const code = KNOT_KINDS.indexOf(kind);
        const knots = STRIPES.knots.map((given) => (given === NO_KNOT ? given : code));
        const order = new LatticeOrder({ ...STRIPES, knots });
        const row = new PatternRow(order, 1);
        expect(row.moves).toEqual([2, 2]);
        const { moves } = row.words(0, false, words);
        expect(moves).toHaveLength(2);
        const change = words('lattice.changed');
        expect(moves[1]?.endsWith(change)).toBe(code < 2);
        const { left, right } = order.idling(1);
        const idle = (left ?? right)?.id ?? '';
        expect(moves[0]).toContain(idle);
        expect(row.words(1, false, words).moves[0]).not.toMatch(/idle|ruht/);
      }
    }
  });
});
