import type { Cell } from '../model/state.js';

/** Thickness of the drawn thread, in the picture's own units. */
export const THREAD = 11.4;

/** Width and height of a knot: about two threads each way, so that neighbours touch. */
export const CELL = { width: 24, height: 22 } as const;

const MARGIN = { side: 18, above: 44, below: 58 } as const;

/** Where things are in a picture of the fabric, in the units of its viewBox. */
export interface FabricGeometry {
  readonly rows: number;
  readonly columns: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  /** Left and top of the first knot. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** The knot at a point, rows and columns from 0; null beside the knots. */
  knotAt(x: number, y: number): Cell | null;
  /** The box of a knot, rows and columns from 0. */
  boxOf(cell: Cell): {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
}

export function fabricGeometry(rows: number, columns: number): FabricGeometry {
  const left = MARGIN.side;
  const top = MARGIN.above;
  return {
    rows,
    columns,
    cellWidth: CELL.width,
    cellHeight: CELL.height,
    left,
    top,
    width: columns * CELL.width + 2 * MARGIN.side,
    height: rows * CELL.height + MARGIN.above + MARGIN.below,
    knotAt(x, y) {
      const column = Math.floor((x - left) / CELL.width);
      const row = Math.floor((y - top) / CELL.height);
      const inside = row >= 0 && row < rows && column >= 0 && column < columns;
      return inside ? { row, column } : null;
    },
    boxOf({ row, column }) {
      return {
        x: left + column * CELL.width,
        y: top + row * CELL.height,
        width: CELL.width,
        height: CELL.height,
      };
    },
  };
}
