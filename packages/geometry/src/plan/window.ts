import type { KnotReading, RowReading } from '@halfhitch/core';
import { type ChangeHow, ROW_LIMITS, type RowKnot, type RowScene } from '../row/scene.js';

/** A part of a piece as a scene that can be posed, with the knots of the piece that are in it. */
export interface PlanScene {
  readonly scene: RowScene;
  /** In the order of the scene's knots. */
  readonly knots: readonly KnotReading[];
  /** Column of the piece that is the scene's first. */
  readonly firstColumn: number;
}

export interface WindowOptions {
  /** Base strings shown on each side of the knot, at least. Default: 5. */
  readonly beside?: number;
  /** Thickness of the tying and the held string, mm. */
  readonly tyingDiameter?: number;
  readonly heldDiameter?: number;
}

const BESIDE = 5;

const HOW = { through: 'laid-through', behind: 'passed-behind', down: 'taken-down' } as const;

/**
 * The base strings shown round a column: at least `beside` on each side. Neighbouring columns share
 * a window, so that what is worked out for one of its knots serves the others.
 */
export function columnsRound(column: number, columns: number, beside = BESIDE): [number, number] {
  const most = Math.floor(ROW_LIMITS.columns / 3);
  const block = Math.min(Math.max(Math.trunc(beside), 1), most);
  const first = Math.floor(column / block) * block;
  return [Math.max(0, first - block), Math.min(columns - 1, first + 2 * block - 1)];
}

/**
 * The knots of some columns of a row, and of the row before it.
 *
 * @param rows the row last, the row before it first where there is one
 * @param columns first and last column shown
 */
export function sceneOf(
  rows: readonly RowReading[],
  [firstColumn, lastColumn]: readonly [number, number],
  options: WindowOptions = {},
): PlanScene {
  const { hung } = (rows[rows.length - 1] as RowReading).before;
  const firstRow = (rows[0] as RowReading).row;
  const inside = rows
    .flatMap((reading) => reading.knots)
    .filter(({ column }) => column >= firstColumn && column <= lastColumn);
  return {
    scene: {
      base: hung.slice(firstColumn, lastColumn + 1),
      knots: inside.map((knot) => rowKnot(knot, knot.row - firstRow, firstColumn)),
      ...(options.tyingDiameter === undefined ? {} : { tyingDiameter: options.tyingDiameter }),
      ...(options.heldDiameter === undefined ? {} : { heldDiameter: options.heldDiameter }),
    },
    knots: inside,
    firstColumn,
  };
}

/** How the scene names the hand-over at a knot; null where no lead is handed over. */
export function changeHow(knot: KnotReading): ChangeHow | null {
  const { change } = knot;
  if (change === null || change.oldLead === null || change.oldLeadRoute === null) return null;
  return HOW[change.oldLeadRoute];
}

function rowKnot(knot: KnotReading, row: number, firstColumn: number): RowKnot {
  const how = changeHow(knot);
  const old = knot.change?.oldLead;
  return {
    row,
    column: knot.column - firstColumn,
    kind: knot.kind,
    tying: knot.tying.id,
    held: knot.held.id,
    ...(how === null || old == null ? {} : { change: { how, oldLead: old.id } }),
  };
}
