import type { KnotReading, RowReading, State } from '@halfhitch/core';
import { type ChangeHow, type RowKnot, type RowScene, rowPhases } from '@halfhitch/geometry/row';

/** A row to be played, with the row before it to stand on. */
export interface RowToPlay {
  readonly reading: RowReading;
  /** The row tied before, or null for the first. */
  readonly previous: RowReading | null;
}

/** What of a row is drawn while one of its knots is tied. */
export interface RowWindow {
  readonly scene: RowScene;
  /** Place of the knot in the scene. */
  readonly index: number;
  /** Column of the chart that is the scene's first. */
  readonly firstColumn: number;
}

/** Base strings drawn on each side of the knot being tied: more are out of the picture anyway. */
const BESIDE = 5;

const HOW = { through: 'laid-through', behind: 'passed-behind', down: 'taken-down' } as const;

/** How the geometry names the hand-over at a knot; null where no lead is handed over. */
export function changeHow(knot: KnotReading): ChangeHow | null {
  const { change } = knot;
  if (change === null || change.oldLead === null || change.oldLeadRoute === null) return null;
  return HOW[change.oldLeadRoute];
}

/** The scene round one knot of a row: the knots near it, of this row and the one before. */
export function windowAt(play: RowToPlay, order: number): RowWindow {
  const { reading, previous } = play;
  const hung = reading.before.hung;
  const knot = reading.knots[order] as KnotReading;
  const first = Math.max(0, knot.column - BESIDE);
  const last = Math.min(hung.length - 1, knot.column + BESIDE);
  const inside = (other: KnotReading): boolean => other.column >= first && other.column <= last;
  const above = (previous?.knots ?? []).filter(inside);
  const here = reading.knots.filter(inside);
  const row = above.length > 0 ? 1 : 0;
  const knots = [
    ...above.map((other) => placed(other, 0, first)),
    ...here.map((other) => placed(other, row, first)),
  ];
  return {
    scene: { base: hung.slice(first, last + 1), knots },
    index: above.length + here.indexOf(knot),
    firstColumn: first,
  };
}

/** How many moves each knot of a row takes. */
export function movesOf(play: RowToPlay): number[] {
  return play.reading.knots.map((_, order) => {
    const { scene, index } = windowAt(play, order);
    return rowPhases(scene, index).length;
  });
}

export function colourOfString(before: State, id: string): string {
  return before.strings.find((string) => string.id === id)?.colour ?? '#8a8f94';
}

function placed(knot: KnotReading, row: number, firstColumn: number): RowKnot {
  const how = changeHow(knot);
  const old = knot.change?.oldLead ?? null;
  return {
    row,
    column: knot.column - firstColumn,
    kind: knot.kind,
    tying: knot.tying.id,
    held: knot.held.id,
    ...(how === null || old === null || old.id === knot.tying.id
      ? {}
      : { change: { how, oldLead: old.id } }),
  };
}
