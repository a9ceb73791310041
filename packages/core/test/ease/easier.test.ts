import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CHART_LIMITS,
  type Chart,
  EASIER_LIMITS,
  type EasierOptions,
  easier,
  effortOf,
  type KnottingChoice,
  planAlpha,
  type Suggestion,
  verifyPlan,
  withCells,
} from '../../src/index.js';
import { anyChart, anyEdge, anyStart, drawn } from '../support/charts.js';

const LEFT: KnottingChoice = { edge: 'straight', start: 'left' };

function only(chart: Chart, kind: Suggestion['kind'], options: EasierOptions = {}): Suggestion {
  const found = easier(chart, LEFT, options).suggestions.filter((one) => one.kind === kind);
  expect(found).toHaveLength(1);
  return found[0] as Suggestion;
}

/** Plain background with a few knots of other colours strewn about, as imported pictures have. */
const strewn: fc.Arbitrary<Chart> = fc
  .tuple(
    fc.integer({ min: 2, max: 12 }),
    fc.integer({ min: 2, max: 16 }),
    fc.array(fc.tuple(fc.nat(), fc.integer({ min: 1, max: 3 })), { maxLength: 12 }),
  )
  .map(([columns, rows, knots]) => {
    const chart = drawn(
      ...Array.from({ length: rows }, (_, row) => (row === 0 ? 'a' : 'b').repeat(columns)),
    );
    const cells = chart.cells.slice();
    for (const [place, colour] of knots) cells[place % cells.length] = colour;
    const colours = [0, 1, 2, 3].map((i) => ({
      key: 'abcd'[i] as string,
      hex: `#00000${i}`,
      name: '',
    }));
    return { ...chart, colours, cells };
  });

describe('suggestions', () => {
  it('save what they say by a full recount, keep the chart a chart and make nothing worse', () => {
    fc.assert(
      fc.property(
        fc.oneof(anyChart({ columns: 9, rows: 12, colours: 4 }), strewn),
        anyEdge,
        anyStart,
        fc.integer({ min: 2, max: 10 }),
        (chart, edge, start, longFloat) => {
          const choice = { edge, start };
          const { ok, before, suggestions, untried } = easier(chart, choice, { longFloat });
          expect(ok).toBe(true);
          expect(untried).toBe(0);
          expect(before).toEqual(effortOf(chart, choice, { longFloat }).effort);
          expect(suggestions.length).toBeLessThanOrEqual(12);
          for (const suggestion of suggestions) {
            const changed = withCells(chart, suggestion.cells);
            const { gain } = suggestion;
            const {
              ok: stillOk,
              effort,
              weak,
            } = effortOf(changed, suggestion.choice, {
              longFloat,
            });
            expect(stillOk).toBe(true);
            expect(weak).toBe(0);
            expect(suggestion.choice.edge).toBe(edge);
            expect(gain.changes).toBe(before.changes - effort.changes);
            expect(gain.edgeChanges).toBe(before.edgeChanges - effort.edgeChanges);
            expect(gain.floats).toBe(before.floats - effort.floats);
            expect(gain.longFloats).toBe(before.longFloats - effort.longFloats);
            expect(gain.leads).toBe(before.leads - effort.leads);
            expect(gain.seconds).toBe(before.seconds - effort.seconds);
            expect(gain.floatKnots).toBeCloseTo(before.floatKnots - effort.floatKnots, 5);
            for (const saved of [gain.changes, gain.edgeChanges, gain.longFloats, gain.leads]) {
              expect(saved).toBeGreaterThanOrEqual(0);
            }
            expect(gain.floatKnots).toBeGreaterThanOrEqual(-1e-6);
            expect(
              gain.changes + gain.edgeChanges + gain.longFloats + gain.floatKnots,
            ).toBeGreaterThan(0);
            // Only the rows it names are knotted otherwise.
            for (const { row } of suggestion.cells) {
              expect(row).toBeGreaterThanOrEqual(suggestion.rows.first);
              expect(row).toBeLessThan(suggestion.rows.end);
            }
            expect(changed.cells).toHaveLength(chart.cells.length);
            expect(verifyPlan(planAlpha(changed, suggestion.choice), changed).ok).toBe(true);
          }
        },
      ),
      { numRuns: 80 },
    );
  });

  it('are the same where the kinds of knots were worked out by hand, but for the other side', () => {
    fc.assert(
      fc.property(strewn, anyEdge, anyStart, (chart, edge, start) => {
        const choice = { edge, start };
        const { kinds } = verifyPlan(planAlpha(chart, choice), chart);
        const ofKnots = (given: Chart): Suggestion[] =>
          // But for the last: the other side, where it saves something, takes a place in the list.
          easier(given, choice, { most: EASIER_LIMITS.most })
            .suggestions.filter(({ cells }) => cells.length > 0)
            .slice(0, EASIER_LIMITS.most - 1);
        expect(ofKnots({ ...chart, knots: kinds })).toEqual(ofKnots(chart));
      }),
      { numRuns: 30 },
    );
  });

  it('come in the order of what each knot changed saves, and the same each time', () => {
    fc.assert(
      fc.property(strewn, anyStart, (chart, start) => {
        const { suggestions } = easier(chart, { edge: 'straight', start });
        expect(easier(chart, { edge: 'straight', start }).suggestions).toEqual(suggestions);
        const each = suggestions
          .filter(({ cells }) => cells.length > 0)
          .map(({ gain, cells }) => gain.changes / cells.length);
        expect(each).toEqual([...each].sort((one, other) => other - one));
      }),
    );
  });

  it('a lone knot within a row costs two changes', () => {
    const chart = drawn('aaaaaa', 'aabaaa', 'aaaaaa');
    const { cells, gain, ofShape } = only(chart, 'lone-knot');
    expect(cells).toEqual([{ row: 1, column: 2, from: 1, to: 0 }]);
    expect(gain).toMatchObject({ changes: 2, leads: 1, floats: 1, seconds: 40 });
    expect(ofShape).toBe(false);
  });

  it('a change at the last knot and another at the turn are one too many', () => {
    const chart = drawn('aaaab', 'aaaaa', 'bbbbb', 'bbbbb');
    const { cells, gain } = only(chart, 'edge-knot');
    expect(cells).toEqual([{ row: 0, column: 4, from: 1, to: 0 }]);
    expect(gain).toMatchObject({ changes: 2, edgeChanges: 1 });
  });

  it('an edge knot alone in its colour lets the change fall at the turn', () => {
    const later = only(drawn('aaaab', 'bbbbb'), 'edge-knot');
    expect(later.cells).toEqual([{ row: 0, column: 4, from: 1, to: 0 }]);
    expect(later.gain).toMatchObject({ changes: 0, edgeChanges: 1 });
    const earlier = only(drawn('aaaaa', 'bbbba'), 'edge-knot');
    expect(earlier.cells).toEqual([{ row: 1, column: 4, from: 0, to: 1 }]);
    expect(earlier.gain).toMatchObject({ changes: 0, edgeChanges: 1 });
  });

  it('the other side saves the changes that a row of two halves makes at its turns', () => {
    // From the left each row ends in the colour that the next begins with, but for the first.
    const chart = drawn('ab', 'ab', 'ab');
    const left = easier(drawn('aab', 'aaa', 'aaa'), LEFT);
    expect(left.suggestions.some(({ kind }) => kind === 'start-side')).toBe(true);
    const other = left.suggestions.find(({ kind }) => kind === 'start-side');
    expect(other?.choice).toEqual({ edge: 'straight', start: 'right' });
    expect(other?.gain.changes).toBe(1);
    expect(easier(chart, LEFT).suggestions.some(({ kind }) => kind === 'start-side')).toBe(false);
  });

  it('a spot of two rows goes as a whole, and not by parts', () => {
    const chart = drawn('aaaaaa', 'aabbaa', 'aabbaa', 'aaaaaa');
    const { suggestions } = easier(chart, LEFT);
    expect(suggestions.map(({ kind }) => kind)).toEqual(['spot']);
    expect(suggestions[0]?.cells).toHaveLength(4);
    expect(suggestions[0]?.gain).toMatchObject({ changes: 4, leads: 1 });
  });

  it('all spots go together', () => {
    const chart = drawn('aaaaaaa', 'abaacaa', 'aaaaaaa', 'aaabaaa', 'aaaaaaa');
    const { cells, gain } = only(chart, 'every-spot');
    expect(cells).toHaveLength(3);
    expect(gain).toMatchObject({ changes: 6, leads: 2 });
  });

  it('a few knots that a long float is needed for', () => {
    const rows = Array.from({ length: 30 }, () => 'aaaaaaaaaaaa');
    rows[0] = 'bbbbbbbbbbbb';
    rows[25] = 'aaabbbbbbaaa';
    const { suggestions } = easier(drawn(...rows), LEFT);
    const [first] = suggestions.filter(({ gain }) => gain.longFloats > 0);
    const { cells, gain, kind } = first as Suggestion;
    expect(kind).toBe('short-run');
    expect(cells).toHaveLength(6);
    expect(gain.longFloats).toBe(1);
    expect(gain.floatKnots).toBeGreaterThan(24);
  });

  it('part of a shape is named as such, and takes no more than its share', () => {
    const rows = Array.from({ length: 42 }, (_, row) =>
      [...'aaaaaaaaaaaa'].map((a, column) => (column === 3 + (row % 6) ? 'b' : a)).join(''),
    );
    const { suggestions } = easier(drawn(...rows), LEFT);
    expect(suggestions.length).toBeGreaterThan(0);
    const knots = suggestions.filter(({ cells }) => cells.length > 0);
    expect(knots.length).toBeLessThanOrEqual(4);
    for (const { ofShape } of knots) expect(ofShape).toBe(true);
  });

  it('has none for a plain piece, and none for one that does not knot out as drawn', () => {
    expect(easier(drawn('aaa', 'aaa'), LEFT).suggestions).toEqual([]);
    const wrong: Chart = { ...drawn('aba', 'aaa'), knots: new Uint8Array(6) };
    expect(easier(wrong, LEFT)).toMatchObject({ ok: false, suggestions: [] });
  });

  it('says how many ideas the work allowed did not reach', () => {
    const chart = drawn('aaaaaaa', 'abaacaa', 'aaaaaaa', 'aaabaaa', 'aaaaaaa');
    const { suggestions, untried } = easier(chart, LEFT, { work: 1 });
    // The other side and all spots together are always tried.
    expect(suggestions.length).toBeLessThanOrEqual(2);
    expect(untried).toBe(3);
  });

  it('refuses to be applied to another drawing', () => {
    const chart = drawn('aaaaaa', 'aabaaa', 'aaaaaa');
    const { cells } = only(chart, 'lone-knot');
    expect(() => withCells(drawn('aaaaaa', 'aaaaaa', 'aabaaa'), cells)).toThrow(/another drawing/);
    expect(() => withCells(drawn('aab'), cells)).toThrow(/another drawing/);
  });

  it('takes charts of every size up to the limits', { timeout: 60_000 }, () => {
    const { maxColumns: columns, maxRows } = CHART_LIMITS;
    const rows = maxRows / 40;
    const cells = new Uint8Array(rows * columns);
    for (let at = 0; at < cells.length; at++) {
      cells[at] = at % 97 === 0 ? 2 : Math.floor(at / columns / 9) % 2;
    }
    const chart = { ...drawn('abc'), rows, columns, cells };
    const { suggestions } = easier(chart, LEFT);
    expect(suggestions).toHaveLength(12);
    const every = suggestions.find(({ kind }) => kind === 'every-spot');
    expect(every?.cells.length).toBeGreaterThan(500);
    expect(every?.gain.changes).toBeGreaterThan(1.9 * 500);
  });
});
