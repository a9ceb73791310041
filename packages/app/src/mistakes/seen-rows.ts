import {
  Back,
  directionOf,
  Edge,
  InputError,
  Look,
  nothingSeen,
  type Plan,
  type Seen,
  Sight,
  Stick,
  UNCOUNTED,
} from '@halfhitch/core';
import type { SeenRow } from './messages.js';

/** A row of which nothing has been marked. */
export function unseenRow(row: number, columns: number): SeenRow {
  return {
    row,
    cells: new Array<number>(columns).fill(Sight.unknown),
    looks: null,
    backs: null,
    edges: [Edge.unknown, Edge.unknown],
    sticks: [Stick.unknown, Stick.unknown],
    knots: UNCOUNTED,
    off: 'no',
  };
}

/** Whether anything is marked of a row. */
export function isMarked(row: SeenRow): boolean {
  return (
    row.cells.some((cell) => cell !== Sight.unknown) ||
    (row.looks?.some((look) => look !== Look.unknown) ?? false) ||
    (row.backs?.some((back) => back !== Back.unknown) ?? false) ||
    row.edges.some((edge) => edge !== Edge.unknown) ||
    row.sticks.some((stick) => stick !== Stick.unknown) ||
    row.knots !== UNCOUNTED ||
    row.off !== 'no'
  );
}

/**
 * The piece as far as it was marked.
 *
 * @param most most knots of all rows down to the last one marked
 * @throws InputError when they are more
 */
export function seenOfRows(
  rows: readonly SeenRow[],
  plan: Plan,
  colours: readonly string[],
  most: number,
): Seen {
  let high = 0;
  for (const { row, edges } of rows) {
    // How an edge turned out at the end of a row is seen when the next one has begun.
    const end = directionOf(plan.start, row) === 'right' ? 1 : 0;
    const turned = edges[end] !== Edge.unknown && row + 1 < plan.rows;
    high = Math.max(high, row + (turned ? 2 : 1));
  }
  if (high * plan.columns > most) {
    throw new InputError(
      'too-many-rows-seen',
      `Row ${high} lies too far down to be looked into.`,
      {},
      `Mark a row among the first ${Math.floor(most / plan.columns)}.`,
    );
  }
  const seen = nothingSeen(high, plan.columns, colours);
  for (const marked of rows) {
    const at = marked.row * plan.columns;
    seen.cells.set(marked.cells, at);
    if (marked.looks !== null) seen.looks.set(marked.looks, at);
    if (marked.backs !== null) seen.backs.set(marked.backs, at);
    seen.edges.set(marked.edges, 2 * marked.row);
    seen.sticks.set(marked.sticks, 2 * marked.row);
    seen.knots[marked.row] = marked.knots;
  }
  const off = rows
    .filter((marked) => marked.off !== 'no')
    .map(({ row, off: towards }) => ({
      row,
      towards: towards === 'left' || towards === 'right' ? towards : null,
    }));
  return { ...seen, off };
}

/** What is seen, row by row; rows of which nothing is known are left out. */
export function rowsOfSeen(seen: Seen): SeenRow[] {
  const { rows, columns } = seen;
  const off = new Map(seen.off.map(({ row, towards }) => [row, towards ?? 'either'] as const));
  const all = Array.from({ length: rows }, (_, row): SeenRow => {
    const from = row * columns;
    const looks = Array.from(seen.looks.subarray(from, from + columns));
    const backs = Array.from(seen.backs.subarray(from, from + columns));
    return {
      row,
      cells: Array.from(seen.cells.subarray(from, from + columns)),
      looks: looks.some((look) => look !== Look.unknown) ? looks : null,
      backs: backs.some((back) => back !== Back.unknown) ? backs : null,
      edges: [seen.edges[2 * row] ?? 0, seen.edges[2 * row + 1] ?? 0],
      sticks: [seen.sticks[2 * row] ?? 0, seen.sticks[2 * row + 1] ?? 0],
      knots: seen.knots[row] ?? UNCOUNTED,
      off: off.get(row) ?? 'no',
    };
  });
  return all.filter(isMarked);
}
