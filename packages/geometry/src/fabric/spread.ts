import type { Passes } from './passes.js';
import type { Seating } from './seating.js';

/**
 * Furthest that a base string goes aside from one row to the next, in tying diameters. Knots sheared
 * by so much come nearer to each other by at most half of it, by the height of a row: 1.5 %.
 */
const MOST_SLANT = 0.1;

/**
 * Where base strings run when the gaps between them open for what passes through: outwards from the
 * middle of the piece, each as little as the gaps up to it and its own gentle slant allow.
 *
 * All else is worked out as if every gap were closed, and then moved aside by `x`: a knot as its base
 * string, and what lies in a gap in proportion. Things only ever move apart.
 */
export class Spread {
  /** How much wider the piece is than a closed one: on average, and where it is widest. */
  readonly mean: number;
  readonly most: number;
  private readonly aside: Float32Array;
  private readonly rows: number;
  private readonly columns: number;
  private readonly free: number;

  private constructor(
    passes: Passes,
    private readonly seating: Seating,
  ) {
    const { rows, columns } = passes;
    this.rows = rows;
    this.columns = columns;
    this.free = seating.pitch / 2 - seating.halfWidth;
    this.aside = new Float32Array(rows * columns);
    const column = new Float64Array(rows);
    for (const side of [1, -1]) {
      column.fill(0);
      const start = side > 0 ? Math.ceil((columns - 1) / 2) : Math.floor((columns - 1) / 2);
      for (let c = start; c >= 0 && c < columns; c += side) {
        // From the middle of the piece; the middle gap opens to both sides.
        const share = c !== start ? 1 : columns % 2 === 0 ? 0.5 : 0;
        const gap = side > 0 ? c : c + 1;
        for (let row = 0; row < rows; row++) {
          column[row] = column[row]! + share * passes.opening(row, gap, seating);
        }
        easeOff(column);
        for (let row = 0; row < rows; row++) this.aside[row * columns + c] = side * column[row]!;
      }
    }
    let sum = 0;
    let most = 0;
    for (let row = 0; row < rows; row++) {
      const wider = this.aside[(row + 1) * columns - 1]! - this.aside[row * columns]!;
      sum += wider;
      most = Math.max(most, wider);
    }
    this.mean = sum / rows;
    this.most = most;
  }

  /** Null where no gap need open. */
  static of(passes: Passes, seating: Seating): Spread | null {
    for (let row = 0; row < passes.rows; row++) {
      for (let gap = 1; gap < passes.columns; gap++) {
        if (passes.opening(row, gap, seating) > 0) return new Spread(passes, seating);
      }
    }
    return null;
  }

  /** Where a point of the closed piece lies; `y` in rows from the middle of the first. */
  x(x: number, y: number): number {
    const height = Math.min(Math.max(y, 0), this.rows - 1);
    const row = Math.floor(height);
    const f = height - row;
    const above = this.inRow(x, row);
    return f === 0 ? above : above + (this.inRow(x, row + 1) - above) * f;
  }

  /** The column nearest to a point of the spread piece. */
  columnAt(x: number, y: number): number {
    const { pitch } = this.seating;
    let column = Math.min(Math.max(Math.round(x / pitch), 0), this.columns - 1);
    const edge = (right: number) => this.x((column + right / 2) * pitch, y);
    while (column > 0 && x < edge(-1)) column--;
    while (column < this.columns - 1 && x > edge(1)) column++;
    if (x < edge(-1)) return -1;
    return x > edge(1) ? this.columns : column;
  }

  private inRow(x: number, row: number): number {
    const { pitch, halfWidth } = this.seating;
    const { columns, aside, free } = this;
    const column = Math.min(Math.max(Math.round(x / pitch), 0), columns - 1);
    const at = row * columns + column;
    const moved = x + aside[at]!;
    const beyond = x - column * pitch;
    if (beyond > halfWidth) {
      if (column === columns - 1) return moved;
      return moved + ((beyond - halfWidth) / free) * 0.5 * (aside[at + 1]! - aside[at]!);
    }
    if (beyond < -halfWidth) {
      if (column === 0) return moved;
      return moved + ((beyond + halfWidth) / free) * 0.5 * (aside[at]! - aside[at - 1]!);
    }
    return moved;
  }
}

/** Raises what lies so far below its neighbours that the slant would be too steep. */
function easeOff(column: Float64Array): void {
  for (let row = 1; row < column.length; row++) {
    column[row] = Math.max(column[row]!, column[row - 1]! - MOST_SLANT);
  }
  for (let row = column.length - 2; row >= 0; row--) {
    column[row] = Math.max(column[row]!, column[row + 1]! - MOST_SLANT);
  }
}
