import type { KnotSize } from './size.js';

/**
 * Gives each stray knot, one whose neighbours on all sides and corners are of other colours, the
 * commonest colour among those neighbours that are no strays themselves; of equally common ones
 * that with most sides in common, and then the one met first. Where strays lie only among strays,
 * all of them count. Everything else stays: a line of knots stays a line, even a slanting one.
 *
 * A knot that changes joins a neighbour, and takes nothing from any other, so that none becomes
 * stray by it: afterwards there are none, and doing it again changes nothing.
 *
 * @returns how many knots were changed; `cells` is changed in place
 */
export function takeOutStrays(cells: Uint8Array, size: KnotSize): number {
  const grid = new Grid(cells, size);
  const left: number[] = [];
  let changed = 0;
  for (let cell = 0; cell < cells.length; cell++) {
    if (!grid.isStray(cell)) continue;
    const colour = grid.commonestAround(cell, true);
    if (colour === null) {
      left.push(cell);
      continue;
    }
    cells[cell] = colour;
    changed++;
  }
  for (const cell of left) {
    if (!grid.isStray(cell)) continue;
    const colour = grid.commonestAround(cell, true) ?? grid.commonestAround(cell, false);
    cells[cell] = colour as number;
    changed++;
  }
  return changed;
}

/** A side counts little beside a neighbour, and only where neighbours are equal in number. */
const NEIGHBOUR = 16;
const SIDE = 1;

class Grid {
  private readonly rows: number;
  private readonly columns: number;

  constructor(
    private readonly cells: Uint8Array,
    { rows, columns }: KnotSize,
  ) {
    this.rows = rows;
    this.columns = columns;
  }

  isStray(cell: number): boolean {
    let neighbours = 0;
    for (const other of this.around(cell)) {
      if (this.cells[other] === this.cells[cell]) return false;
      neighbours++;
    }
    return neighbours > 0;
  }

  /** Null where no neighbour counts. */
  commonestAround(cell: number, settledOnly: boolean): number | null {
    const counts = new Map<number, number>();
    for (const other of this.around(cell)) {
      if (settledOnly && this.isStray(other)) continue;
      const colour = this.cells[other] as number;
      const beside = Math.abs(other - cell) === 1 || Math.abs(other - cell) === this.columns;
      counts.set(colour, (counts.get(colour) ?? 0) + NEIGHBOUR + (beside ? SIDE : 0));
    }
    let commonest: number | null = null;
    for (const [colour, count] of counts) {
      if (commonest === null || count > (counts.get(commonest) as number)) commonest = colour;
    }
    return commonest;
  }

  private *around(cell: number): Generator<number> {
    const { rows, columns } = this;
    const row = Math.floor(cell / columns);
    const column = cell % columns;
    for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++) {
      for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++) {
        if (y !== row || x !== column) yield y * columns + x;
      }
    }
  }
}
