import type { Box } from '../../view/box.js';
import type { Place, Size } from '../edit/place.js';
import type { SightLayout } from './sight.js';

/** Room for the numbers of the columns above the knots, px. */
const HEADER = 26;
const BELOW = 14;

export const CELL_HEIGHTS = { least: 3, most: 72 } as const;

/** Where a knot may be met by a finger or seen as a shape, px. */
const COMFORTABLE = { least: 18, most: 36 } as const;

/** The whole chart is shown at first where that leaves knots so high, px. */
const WHOLE = 20;

export interface LayoutWish extends Size {
  /** Width of a knot by its height. */
  readonly aspect: number;
  /** px; null for the height that suits the room. */
  readonly cellHeight: number | null;
  /** Rows of the repeat that are shown above and below, each. */
  readonly repeated: number;
  /** What is in sight, px. */
  readonly view: { readonly width: number; readonly height: number };
}

/**
 * Where the knots are on a sheet that is scrolled about, px from its top left. Beside the knots is
 * room on both sides for the numbers of the rows and the turns of the lead; above for the columns'.
 */
export class SheetLayout implements SightLayout {
  readonly header = HEADER;
  readonly rows: number;
  readonly columns: number;
  readonly repeated: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  /** Width of the room beside the knots, on each side. */
  readonly gutter: number;
  /** Of the first knot. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;

  constructor(wish: LayoutWish) {
    const { rows, columns, aspect, repeated, view } = wish;
    this.rows = rows;
    this.columns = columns;
    this.repeated = repeated;
    this.gutter = 24 + 7 * String(rows).length;
    this.cellHeight = wish.cellHeight ?? this.suiting(aspect, view);
    this.cellWidth = this.cellHeight * aspect;
    const across = columns * this.cellWidth + 2 * this.gutter;
    this.width = Math.max(across, view.width);
    this.left = (this.width - across) / 2 + this.gutter;
    this.top = HEADER + repeated * this.cellHeight;
    this.height = Math.max(HEADER + (rows + 2 * repeated) * this.cellHeight + BELOW, view.height);
  }

  get size(): number {
    return this.cellHeight;
  }

  get step(): { readonly across: number; readonly down: number } {
    return { across: this.cellWidth, down: this.cellHeight };
  }

  /** All columns in sight if that leaves knots to be met, rows too; no larger than is needed. */
  private suiting(aspect: number, { width, height }: LayoutWish['view']): number {
    const filling = (width - 2 * this.gutter - 2) / this.columns / aspect;
    const suits = Math.max(COMFORTABLE.least, Math.min(COMFORTABLE.most, filling));
    const whole = (height - HEADER - BELOW) / this.rows;
    return whole >= WHOLE ? Math.min(suits, whole) : suits;
  }

  /** The place at a point; may be beside the chart. */
  placeAt(x: number, y: number): Place {
    return {
      row: Math.floor((y - this.top) / this.cellHeight),
      column: Math.floor((x - this.left) / this.cellWidth),
    };
  }

  boxOf({ row, column, rows = 1, columns = 1 }: Place & Partial<Size>): Box {
    return {
      x: this.left + column * this.cellWidth,
      y: this.top + row * this.cellHeight,
      width: columns * this.cellWidth,
      height: rows * this.cellHeight,
    };
  }

  /** Rows that a stretch of the sheet shows, those of the repeat too; the end is not included. */
  rowsIn(from: number, end: number): { readonly first: number; readonly end: number } {
    return {
      first: Math.max(-this.repeated, Math.floor((from - this.top) / this.cellHeight)),
      end: Math.min(this.rows + this.repeated, Math.ceil((end - this.top) / this.cellHeight)),
    };
  }

  columnsIn(from: number, end: number): { readonly first: number; readonly end: number } {
    return {
      first: Math.max(0, Math.floor((from - this.left) / this.cellWidth)),
      end: Math.min(this.columns, Math.ceil((end - this.left) / this.cellWidth)),
    };
  }
}

/** Every how many lines a number is written so that they don't run into each other. */
export function numberEvery(size: number, room: number): number {
  for (const every of [1, 2, 5, 10, 20, 50, 100, 200, 500]) if (every * size >= room) return every;
  return 1_000;
}

/** Whether a line, counted from 0, has its number written: the first, and every so many. */
export function isNumbered(line: number, every: number): boolean {
  return line === 0 || (line + 1) % every === 0;
}

export function withinZoom(cellHeight: number): number {
  return Math.max(CELL_HEIGHTS.least, Math.min(CELL_HEIGHTS.most, cellHeight));
}
