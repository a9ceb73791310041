import { type Chart, drawFabric, fabricGeometry, planAlpha, verifyPlan } from '@halfhitch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawTile, type Tile, tileBox } from '../src/work/fabric-tile.js';

const HEXES = ['#1f6fb2', '#d9642a', '#f4f1e8'];

const charts = fc
  .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }))
  .chain(([rows, columns]) =>
    fc
      .array(fc.integer({ min: 0, max: 2 }), {
        minLength: rows * columns,
        maxLength: rows * columns,
      })
      .map((cells) => chartOf(rows, columns, cells)),
  );

function chartOf(rows: number, columns: number, cells: readonly number[]): Chart {
  return {
    name: '',
    rows,
    columns,
    colours: HEXES.map((hex, i) => ({ key: 'abc'[i] as string, hex, name: '' })),
    cells: Uint8Array.from(cells),
  };
}

/** Every piece of thread of a picture in its place: what is drawn, where, in which colour. */
function piecesOf(svg: string): Map<string, string[]> {
  const pieces = new Map<string, string[]>();
  for (const group of svg.matchAll(
    /<g transform="translate\(([\d.-]+) ([\d.-]+)\)">(.*?)<\/g>/gs,
  )) {
    const [, left, top, inner] = group;
    for (const use of (inner ?? '').matchAll(
      /<use href="#([\w-]+)" x="([\d.-]+)" stroke="(#\w+)"/g,
    )) {
      const [, shape, x, colour] = use;
      const at = `${(Number(left) + Number(x)).toFixed(1)} ${Number(top).toFixed(1)}`;
      pieces.set(at, [...(pieces.get(at) ?? []), `${shape} ${colour}`].sort());
    }
  }
  return pieces;
}

function tilesOf(chart: Chart, high: number, wide: number): Tile[] {
  const tiles: Tile[] = [];
  for (let row = 0; row < chart.rows; row += high) {
    for (let column = 0; column < chart.columns; column += wide) {
      tiles.push({
        firstRow: row,
        endRow: Math.min(chart.rows, row + high),
        firstColumn: column,
        endColumn: Math.min(chart.columns, column + wide),
      });
    }
  }
  return tiles;
}

describe('tiles of the fabric', () => {
  it('hold the same pieces of thread as the whole picture, in the same places', () => {
    fc.assert(
      fc.property(
        charts,
        fc.constantFrom('straight' as const, 'wrapped' as const),
        fc.constantFrom('left' as const, 'right' as const),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 4 }),
        (chart, edge, start, high, wide) => {
          const plan = planAlpha(chart, { edge, start });
          const verification = verifyPlan(plan, chart);
          const whole = piecesOf(drawFabric({ plan, verification }));
          const { left, top, cellWidth, cellHeight } = fabricGeometry(chart.rows, chart.columns);
          for (const tile of tilesOf(chart, high, wide)) {
            const svg = drawTile(plan, verification, tile);
            // Pieces of a tile are placed from its own first row and column, one before its own.
            const dx = Math.max(0, tile.firstColumn - 1) * cellWidth;
            const dy = Math.max(0, tile.firstRow - 1) * cellHeight;
            for (const [at, drawn] of piecesOf(svg)) {
              const [x, y] = at.split(' ').map(Number) as [number, number];
              const column = Math.round((x + dx - left) / cellWidth);
              const row = Math.round((y + dy - top) / cellHeight);
              const own =
                row >= tile.firstRow &&
                row < tile.endRow &&
                column >= tile.firstColumn &&
                column < tile.endColumn;
              if (!own) continue;
              const place = `${(x + dx).toFixed(1)} ${(y + dy).toFixed(1)}`;
              expect(whole.get(place)).toEqual(drawn);
            }
          }
        },
      ),
    );
  });

  it('lie side by side without gap or overlap and cover the sheet', () => {
    fc.assert(
      fc.property(
        charts,
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 4 }),
        (chart, high, wide) => {
          const { width, height } = fabricGeometry(chart.rows, chart.columns);
          let area = 0;
          for (const tile of tilesOf(chart, high, wide)) {
            const box = tileBox(chart.rows, chart.columns, tile);
            expect(box.x).toBeGreaterThanOrEqual(0);
            expect(box.x + box.width).toBeLessThanOrEqual(width);
            expect(box.y + box.height).toBeLessThanOrEqual(height);
            area += box.width * box.height;
          }
          expect(area).toBeCloseTo(width * height, 6);
        },
      ),
    );
  });
});
