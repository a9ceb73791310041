import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ANY_COLOUR, BARE, type DiagonalPicture, knotsAcross } from '../../src/index.js';
import { type KnotPlace, solveDiagonal } from '../../src/solve/index.js';
import { fewestWrong } from '../support/row-states.js';
import { anyPicture } from '../support/wanted-pictures.js';

/** The picture with only these knots wanting their colours. */
function onlyWanting(picture: DiagonalPicture, places: readonly KnotPlace[]): DiagonalPicture {
  const kept = new Set(places.map(({ cell }) => cell));
  const cells = picture.cells.map((colour, cell) =>
    colour === BARE || kept.has(cell) ? colour : ANY_COLOUR,
  );
  return { ...picture, cells };
}

describe('the conflicting part of an impossible picture', () => {
  test('conflicts by itself, and without any one of its knots it does not', async () => {
    await fc.assert(
      fc.asyncProperty(
        anyPicture({ maxStrings: 6, maxRows: 8, maxColours: 4 }),
        async (picture) => {
          const { status, conflict } = await solveDiagonal(picture, { nearest: false });
          if (status === 'solved') {
            expect(conflict).toBeNull();
            return;
          }
          if (conflict === null) throw new Error('no conflict told');
          expect(fewestWrong(onlyWanting(picture, conflict.cells))).toBeGreaterThan(0);
          if (!conflict.minimal) return;
          for (const place of conflict.cells) {
            const others = conflict.cells.filter((other) => other !== place);
            expect(fewestWrong(onlyWanting(picture, others))).toBe(0);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('is small and near the fault in a large piece', async () => {
    const wanted = withFault();
    const { status, conflict } = await solveDiagonal(wanted, { nearest: false });
    expect(status).toBe('impossible');
    expect(conflict?.minimal).toBe(true);
    for (const { row } of conflict?.cells ?? []) {
      expect(row).toBeGreaterThanOrEqual(40);
      expect(row).toBeLessThan(60);
    }
    expect(conflict?.message).toMatch(/^These \d+ knots cannot all show their colours/);
  });

  test('is told by counting too where a row needs more strings than there are', async () => {
    const { status, conflict } = await solveDiagonal(bands(), { nearest: false });
    expect(status).toBe('impossible');
    expect(conflict?.cells.length).toBeLessThanOrEqual(9);
    expect(conflict?.message).toMatch(
      /row 5 needs 4 strings of reed green, .*; together 12, which 8 strings do not have\.$/,
    );
  });

  test('says which limit it comes from', async () => {
    const { conflict } = await solveDiagonal(bands(), { nearest: false, most: [null, 2] });
    expect(conflict?.message).toContain(
      'row 3 needs 4 strings of buoy orange, but at most 2 may have that colour.',
    );
  });
});

/** Two colours, which can always be knotted, but for a band of four. */
function withFault(): DiagonalPicture {
  const lattice = { strings: 16, rows: 100, first: 0 as const };
  const across = knotsAcross(lattice);
  const cells = new Uint8Array(lattice.rows * across).fill(BARE);
  for (let row = 0; row < lattice.rows; row++) {
    for (let place = 0; place < across - (row % 2); place++) {
      const patch = row >= 46 && row < 52;
      cells[row * across + place] = patch
        ? (row * row + 3 * place * row + place) % 4
        : (row + place) % 2;
    }
  }
  return { ...lattice, name: '', colours: COLOURS, cells };
}

/** Bands as wide as the work, of four colours in turn. */
function bands(): DiagonalPicture {
  const lattice = { strings: 8, rows: 8, first: 0 as const };
  const across = knotsAcross(lattice);
  const cells = new Uint8Array(lattice.rows * across).fill(BARE);
  for (let row = 0; row < lattice.rows; row++) {
    for (let place = 0; place < across - (row % 2); place++) {
      cells[row * across + place] = Math.floor(row / 2);
    }
  }
  return { ...lattice, name: '', colours: COLOURS, cells };
}

const COLOURS = [
  { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
  { key: 'o', hex: '#e8702a', name: 'buoy orange' },
  { key: 'g', hex: '#4f7942', name: 'reed green' },
  { key: 'c', hex: '#f4f1e8', name: 'chalk' },
];
