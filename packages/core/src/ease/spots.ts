import type { Chart } from '../chart/chart.js';
import type { CellEdit } from './suggestion.js';

/** Knots of one colour that touch each other, corners too, and no others of it. */
export interface Spot {
  /** Places in the chart's cells, in order. */
  readonly cells: readonly number[];
  readonly colour: number;
}

/**
 * The spot that a cell belongs to, or null when there are more than `most` knots of its colour
 * that hang together.
 */
export function spotAt(chart: Chart, cell: number, most: number): Spot | null {
  const { cells } = chart;
  const colour = cells[cell] as number;
  const found = [cell];
  for (let i = 0; i < found.length; i++) {
    for (const beside of around(chart, found[i] as number)) {
      if (cells[beside] !== colour || found.includes(beside)) continue;
      if (found.length === most) return null;
      found.push(beside);
    }
  }
  return { cells: found.sort((one, other) => one - other), colour };
}

/** A spot in the colour that most of the knots round it have; null where all is one spot. */
export function filled(chart: Chart, spot: Spot): CellEdit[] | null {
  const votes = new Map<number, number>();
  const ring = new Set<number>();
  for (const cell of spot.cells) {
    for (const beside of around(chart, cell)) {
      const colour = chart.cells[beside] as number;
      if (colour === spot.colour || ring.has(beside)) continue;
      ring.add(beside);
      votes.set(colour, (votes.get(colour) ?? 0) + 1);
    }
  }
  const [winner] = [...votes].sort((one, other) => other[1] - one[1] || one[0] - other[0]);
  if (winner === undefined) return null;
  return spot.cells.map((cell) => ({
    row: Math.floor(cell / chart.columns),
    column: cell % chart.columns,
    from: spot.colour,
    to: winner[0],
  }));
}

function* around({ rows, columns }: Chart, cell: number): Generator<number> {
  const row = Math.floor(cell / columns);
  const column = cell % columns;
  for (let r = Math.max(0, row - 1); r <= Math.min(rows - 1, row + 1); r++) {
    for (let c = Math.max(0, column - 1); c <= Math.min(columns - 1, column + 1); c++) {
      if (r !== row || c !== column) yield r * columns + c;
    }
  }
}
