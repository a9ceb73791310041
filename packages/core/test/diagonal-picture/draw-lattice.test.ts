import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDiagonal } from '../../../../testing/diagonals.js';
import {
  ANY_COLOUR,
  BARE,
  drawLattice,
  knotIndex,
  knotsInRow,
  simulateDiagonal,
} from '../../src/index.js';
import { refusal } from '../support/refusal.js';

describe('the drawn lattice', () => {
  it('marks just the places that differ, and says in words how', () => {
    fc.assert(
      fc.property(anyDiagonal({ bareTenths: 1 }), fc.infiniteStream(fc.nat(5)), (pattern, dice) => {
        const wanted = simulateDiagonal(pattern).picture;
        const cells = wanted.cells.slice();
        const expected: string[] = [];
        for (let row = 0; row < wanted.rows; row++) {
          for (let place = 0; place < knotsInRow(wanted, row); place++) {
            const cell = knotIndex(wanted, row, place);
            const roll = dice.next().value as number;
            if (roll === 0) cells[cell] = BARE;
            if (roll === 1) cells[cell] = ANY_COLOUR;
            if (roll === 2) cells[cell] = (row + place) % pattern.colours.length;
            const free = cells[cell] === ANY_COLOUR;
            if (!free && cells[cell] !== wanted.cells[cell]) {
              expected.push(`Row ${row + 1}, slots ${((wanted.first + row) % 2) + 2 * place + 1}-`);
            }
          }
        }
        const svg = drawLattice(wanted, { knotted: { ...wanted, cells } });
        const titles = [...svg.matchAll(/data-differs="\d+"><title>(Row \d+, slots \d+-)/g)];
        expect(titles.map(([, title]) => title)).toEqual(expected);
      }),
      { numRuns: 40 },
    );
  });

  it('draws each place once, with its key', () => {
    fc.assert(
      fc.property(anyDiagonal({ bareTenths: 2 }), (pattern) => {
        const { picture } = simulateDiagonal(pattern);
        const svg = drawLattice(picture);
        const keys = [...svg.matchAll(/<text[^>]+fill="#(?:000|fff)">([a-z])<\/text>/g)];
        const wanted = [...picture.cells].filter((cell) => cell !== BARE);
        expect(keys.map(([, key]) => key)).toEqual(
          wanted.map((cell) => pattern.colours[cell]?.key),
        );
      }),
      { numRuns: 40 },
    );
  });

  it('refuses to compare what is not of one lattice', () => {
    const [pattern] = fc.sample(anyDiagonal(), 1) as [never];
    const { picture } = simulateDiagonal(pattern);
    const other = { ...picture, rows: picture.rows + 1 };
    expect(refusal(() => drawLattice(picture, { knotted: other }))).toMatchObject({
      code: 'other-lattice',
    });
  });
});
