import { knotsInRow, type Lattice, slotOfPlace } from '../diagonal/lattice.js';

/** Thickness of the drawn thread in a knot, in the picture's own units. */
export const KNOT_THREAD = 10;

/** Thickness of a string where it hangs. */
export const STRING_THREAD = 8.6;

/**
 * Width of a slot and height of a row. A knot is two slots wide and lies between two knots of the
 * row above and two of the row below, so that the knots fill the lattice as diamonds do.
 */
export const SLOT = 12;
export const ROW = 12.4;

const MARGIN = { side: 16, above: 46, below: 56 } as const;

/** Where things are in a picture of a diagonal piece, in the units of its viewBox. */
export interface DiagonalGeometry {
  readonly width: number;
  readonly height: number;
  /** Width of a slot and height of a row. */
  readonly slotWidth: number;
  readonly rowHeight: number;
  /** Middle of a knot by its row and the slot of its left string, from 0. */
  centreOf(row: number, slot: number): { readonly x: number; readonly y: number };
  /** The place of the lattice at a point, from 0; null beside all of them. */
  placeAt(x: number, y: number): { readonly row: number; readonly place: number } | null;
}

export function diagonalGeometry(lattice: Lattice): DiagonalGeometry {
  const left = MARGIN.side;
  const top = MARGIN.above + ROW;
  return {
    width: lattice.strings * SLOT + 2 * MARGIN.side,
    height: (lattice.rows + 1) * ROW + MARGIN.above + MARGIN.below,
    slotWidth: SLOT,
    rowHeight: ROW,
    centreOf: (row, slot) => ({ x: left + (slot + 1) * SLOT, y: top + row * ROW }),
    placeAt(x, y) {
      const across = (x - left) / SLOT;
      const down = (y - top) / ROW;
      // A point lies in the diamond whose middle is nearest, with both ways counted together.
      for (const row of [Math.floor(down), Math.floor(down) + 1]) {
        if (row < 0 || row >= lattice.rows) continue;
        const first = slotOfPlace(lattice, row, 0);
        const place = Math.round((across - 1 - first) / 2);
        if (place < 0 || place >= knotsInRow(lattice, row)) continue;
        const aside = Math.abs(across - 1 - slotOfPlace(lattice, row, place));
        if (aside + Math.abs(down - row) <= 1) return { row, place };
      }
      return null;
    },
  };
}
