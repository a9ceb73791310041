import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import {
  BARE,
  type DiagonalPattern,
  diagonalGeometry,
  drawDiagonal,
  halvesOf,
  KNOT_KINDS,
  type KnotKind,
  knotAt,
  knotIndex,
  knotsInRow,
  makeDiagonalMistakes,
  simulateDiagonal,
  slotOfPlace,
} from '../../src/index.js';
import { refusal } from '../support/refusal.js';

const USE =
  /<use href="#hh-([a-z-]+)" x="(\d+)" stroke="(#[0-9a-f]{6})" data-row="(\d+)" data-place="(\d+)"\/>/g;

describe('the picture of a diagonal piece', () => {
  it('shows each knot once, with its kind and the colour that it shows', () => {
    fc.assert(
      fc.property(anyDiagonal({ bareTenths: 2 }), (pattern) => {
        const reading = simulateDiagonal(pattern);
        const svg = drawDiagonal(reading);
        const seen = new Set<number>();
        for (const [, kind, , colour, row, place] of svg.matchAll(USE)) {
          const [r, p] = [Number(row) - 1, Number(place) - 1];
          expect(kind).toBe(knotAt(pattern, r, p));
          const cell = knotIndex(pattern, r, p);
          seen.add(cell);
          expect(colour).toBe(pattern.colours[reading.picture.cells[cell] as number]?.hex);
        }
        const knots = [...reading.picture.cells].filter((cell) => cell !== BARE).length;
        expect(seen.size).toBe(knots);
        expect([...svg.matchAll(USE)]).toHaveLength(knots);
      }),
      { numRuns: 40 },
    );
  });

  // Read back from the picture: the ends below the work hang as the order after the last row says.
  it('leads every string from its slot above to its slot below', () => {
    fc.assert(
      fc.property(anyDiagonal({ bareTenths: 2 }), (pattern) => {
        const { strings, rows } = pattern;
        const { order, ...reading } = simulateDiagonal(pattern);
        const svg = drawDiagonal({ ...reading, order });
        const left = diagonalGeometry(pattern).centreOf(0, -1).x;
        for (const [, string, path] of svg.matchAll(/<path id="hh-s(\d+)" d="([^"]+)"/g)) {
          let x = Number(/^M([\d.]+) /.exec(path as string)?.[1]);
          expect(x).toBeCloseTo(left + (Number(string) - 0.5) * 12, 1);
          for (const [, dx] of (path as string).matchAll(/c0 [-\d.]+ ([-\d.]+) /g)) x += Number(dx);
          const slot = [...order.slice(rows * strings)].indexOf(Number(string) - 1);
          expect(x).toBeCloseTo(left + (slot + 0.5) * 12, 0);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('finds the place at a point, and none beside the places', () => {
    fc.assert(
      fc.property(anyDiagonal(), fc.double({ min: 0, max: 0.999, noNaN: true }), (pattern, t) => {
        const { centreOf, placeAt, slotWidth, rowHeight } = diagonalGeometry(pattern);
        for (let row = 0; row < pattern.rows; row++) {
          for (let place = 0; place < knotsInRow(pattern, row); place++) {
            const { x, y } = centreOf(row, slotOfPlace(pattern, row, place));
            expect(placeAt(x, y)).toEqual({ row, place });
            expect(placeAt(x + slotWidth * t * 0.5, y - rowHeight * t * 0.49)).toEqual({
              row,
              place,
            });
          }
        }
        expect(placeAt(0, 0)).toBeNull();
      }),
      { numRuns: 30 },
    );
  });

  it('draws the shapes of all kinds as thread, and nothing that could run', () => {
    const [pattern] = fc.sample(anyDiagonal(), 1) as [never];
    const svg = drawDiagonal(simulateDiagonal(pattern), { title: '<b>"', idPrefix: 'two-' });
    for (const kind of KNOT_KINDS) expect(svg).toContain(`<g id="two-${kind}"`);
    expect(svg).toContain('&lt;b&gt;&quot;</title>');
    expect(svg).not.toMatch(/<script|<circle|<text| on[a-z]+=/);
  });

  it('shows half a knot as a single wrap', () => {
    const [pattern] = fc.sample(
      anyDiagonal({ bareTenths: 0 }).filter((one) => knotsInRow(one, 0) > 0),
      1,
    ) as [DiagonalPattern];
    const { drawn } = makeDiagonalMistakes(pattern, [{ kind: 'half-knot', row: 0, place: 0 }]);
    const [first] = halvesOf(knotAt(pattern, 0, 0) as KnotKind);
    expect(drawDiagonal(drawn).match(/href="#hh-half-[a-z]+"/g)).toEqual([
      `href="#hh-half-${first}"`,
    ]);
  });

  it('refuses what would be too large to show', () => {
    const strings = 300;
    const rows = 3000;
    const knots = new Uint8Array(rows * 150);
    const reading = {
      pattern: {
        name: '',
        strings,
        rows,
        first: 0 as const,
        colours: [],
        start: new Uint8Array(300),
        knots,
      },
      picture: { name: '', strings, rows, first: 0 as const, colours: [], cells: knots },
      tying: new Uint16Array(knots.length),
      held: new Uint16Array(knots.length),
      order: new Uint16Array((rows + 1) * strings),
    };
    expect(refusal(() => drawDiagonal(reading))).toMatchObject({ code: 'picture-too-large' });
  });
});
