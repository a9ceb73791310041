import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeOutStrays } from '../../src/picture/strays.js';

function tidied(rows: readonly string[]): string[] {
  const columns = rows[0]?.length ?? 0;
  const cells = Uint8Array.from(rows.join(''), (key) => key.charCodeAt(0));
  takeOutStrays(cells, { rows: rows.length, columns });
  return rows.map((_, i) => String.fromCharCode(...cells.subarray(i * columns, (i + 1) * columns)));
}

const grid = fc
  .record({ rows: fc.integer({ min: 1, max: 9 }), columns: fc.integer({ min: 1, max: 9 }) })
  .chain(({ rows, columns }) =>
    fc.record({
      rows: fc.constant(rows),
      columns: fc.constant(columns),
      cells: fc.uint8Array({
        min: 0,
        max: 3,
        minLength: rows * columns,
        maxLength: rows * columns,
      }),
    }),
  );

/** Stated apart from what takes them out: no knot within one row and column has its colour. */
function strays(cells: Uint8Array, rows: number, columns: number): number[] {
  const all = [...cells.keys()];
  if (all.length === 1) return [];
  return all
    .filter(
      (one) =>
        !all.some(
          (other) =>
            other !== one &&
            Math.abs((one % columns) - (other % columns)) <= 1 &&
            Math.abs(Math.floor(one / columns) - Math.floor(other / columns)) <= 1 &&
            cells[other] === cells[one],
        ),
    )
    .filter(() => rows * columns > 1);
}

describe('stray knots', () => {
  it('take the commonest colour round them', () => {
    expect(tidied(['bbb', 'bob', 'bgg'])).toEqual(['bbb', 'bbb', 'bgg']);
    expect(tidied(['ggb', 'gob', 'ggb'])).toEqual(['ggb', 'ggb', 'ggb']);
  });

  it('of equally common colours take the one with more sides in common', () => {
    // Four g at the corners, four b at the sides.
    expect(tidied(['ggggg', 'ggbgg', 'gbobg', 'ggbgg', 'ggggg'])).toEqual([
      'ggggg',
      'ggbgg',
      'gbbbg',
      'ggbgg',
      'ggggg',
    ]);
  });

  it('follow neighbours that stay, not other strays', () => {
    expect(tidied(['gwb', 'wob', 'gbb'])).toEqual(['wwb', 'wbb', 'bbb']);
  });

  it('are not knots of a line, even of a slanting one', () => {
    const lines = ['obbbo', 'bobob', 'bbobb', 'bbbob', 'bbbbo'];
    expect(tidied(lines)).toEqual(lines);
  });

  it('at edges and in narrow charts are seen too', () => {
    expect(tidied(['obb', 'bbb'])).toEqual(['bbb', 'bbb']);
    expect(tidied(['b', 'o', 'b', 'b'])).toEqual(['b', 'b', 'b', 'b']);
    expect(tidied(['o'])).toEqual(['o']);
  });

  it('are gone after once, and all other knots are as they were', () => {
    fc.assert(
      fc.property(grid, ({ rows, columns, cells }) => {
        const before = strays(cells, rows, columns);
        const after = cells.slice();
        const changed = takeOutStrays(after, { rows, columns });
        expect(strays(after, rows, columns)).toEqual([]);
        const differing = [...cells.keys()].filter((i) => cells[i] !== after[i]);
        expect(differing.length).toBe(changed);
        for (const one of differing) expect(before).toContain(one);
        // Done again, nothing changes.
        const again = after.slice();
        expect(takeOutStrays(again, { rows, columns })).toBe(0);
        expect(again).toEqual(after);
      }),
    );
  });
});
