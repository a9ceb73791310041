import { directionOf } from '../plan/plan.js';
import { Edge, Look, Sight, Stick } from './seen.js';
import type { TiedRow } from './watch.js';
import type { Written } from './written.js';

/** One row as it is seen; the same things as in Seen, none of them unknown. */
export interface RowView {
  readonly cells: Int16Array;
  readonly looks: Uint8Array;
  readonly backs: Uint8Array;
  knots: number;
  readonly edges: [number, number];
  readonly sticks: [number, number];
}

/** A row above or below; undefined where there is none. */
type Neighbour = TiedRow | undefined;

export function emptyView(columns: number): RowView {
  return {
    cells: new Int16Array(columns),
    looks: new Uint8Array(columns),
    backs: new Uint8Array(columns),
    knots: 0,
    edges: [Edge.unknown, Edge.unknown],
    sticks: [Stick.unknown, Stick.unknown],
  };
}

/**
 * Makes of a tied row what is seen of it. At a turn one edge string has knots of two rows; those
 * of the same lead look alike, so that none can tell whether it was the upper or the lower that
 * is missing: what is seen is then counted from the upper row on.
 */
export function viewRow(
  written: Written,
  row: number,
  above: Neighbour,
  tied: TiedRow,
  below: Neighbour,
  view: RowView,
): void {
  view.cells.set(tied.cells);
  view.looks.set(tied.looks);
  view.backs.set(tied.backs);
  view.knots = tied.knots;
  const end = directionOf(written.plan.start, row) === 'right' ? 1 : 0;
  const start = end === 1 ? 0 : 1;
  view.edges[end] = edgeOf(written, tied, below, end);
  view.edges[start] =
    above === undefined
      ? tied.outside[start] && written.columns > 1
        ? Edge.out
        : Edge.straight
      : edgeOf(written, above, tied, start);
  view.sticks[0] = tied.sticks[0] ? Stick.yes : Stick.no;
  view.sticks[1] = tied.sticks[1] ? Stick.yes : Stick.no;
  if (written.columns === 1) return;
  if (below !== undefined && movesUp(written, tied, below, end)) {
    const column = columnOf(written, end);
    view.knots++;
    view.cells[column] = below.cells[column] as number;
    view.looks[column] =
      (tied.counts[column] as number) === 0 ? (below.looks[column] as number) : Look.two;
  }
  if (above !== undefined && movesUp(written, above, tied, start)) {
    const column = columnOf(written, start);
    view.knots--;
    if ((tied.counts[column] as number) === 1) {
      view.cells[column] = Sight.bare;
      view.looks[column] = Look.none;
    } else {
      // Two of the three are of the row above: one is left, as that row's own was.
      view.looks[column] = above.looks[column] as number;
    }
  }
}

function columnOf(written: Written, side: number): number {
  return side === 0 ? 0 : written.columns - 1;
}

/** Whether a knot below a turn is seen as one of the row above it. */
function movesUp(written: Written, above: TiedRow, below: TiedRow, side: 0 | 1): boolean {
  const column = columnOf(written, side);
  if (above.looks[column] === Look.half || below.looks[column] === Look.half) return false;
  const upper = above.counts[column] as number;
  const lower = below.counts[column] as number;
  if (upper === 0 && lower === 1) return below.edgeTying[side] === above.lastTying;
  return (
    upper === 1 &&
    lower === 2 &&
    below.edgeTying[side] === above.edgeTying[side] &&
    below.firstEdgeTying[side] === above.edgeTying[side]
  );
}

function edgeOf(written: Written, above: TiedRow, below: Neighbour, side: number): number {
  const column = columnOf(written, side);
  if (below !== undefined && written.columns > 1) {
    const knots = (above.counts[column] as number) + (below.counts[column] as number);
    if (knots < 2) return Edge.in;
    if (knots > 2) return Edge.out;
  }
  return above.outside[side] || (below?.outside[side] ?? false) ? Edge.out : Edge.straight;
}
