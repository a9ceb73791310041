import type { Place } from './fabric-picture.js';

interface Grid {
  readonly rows: number;
  readonly columns: number;
  /** Rows that the keys for a page go. */
  readonly page: number;
}

/**
 * Where a key goes from a place in a grid of knots, perhaps outside of it; null for keys that go
 * nowhere. `ends`: with the key held that makes Home and End go to the corners.
 */
export function gridMove(
  key: string,
  { row, column }: Place,
  { rows, columns, page }: Grid,
  ends: boolean,
): Place | null {
  const moves: Record<string, Place> = {
    ArrowLeft: { row, column: column - 1 },
    ArrowRight: { row, column: column + 1 },
    ArrowUp: { row: row - 1, column },
    ArrowDown: { row: row + 1, column },
    PageUp: { row: row - page, column },
    PageDown: { row: row + page, column },
    Home: { row: ends ? 0 : row, column: 0 },
    End: { row: ends ? rows - 1 : row, column: columns - 1 },
  };
  return ends && !['Home', 'End'].includes(key) ? null : (moves[key] ?? null);
}
