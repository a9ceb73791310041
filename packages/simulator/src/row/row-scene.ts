import type { KnotReading, RowReading, State } from '@halfhitch/core';
import { columnsRound, type PlanScene, sceneOf } from '@halfhitch/geometry/plan';
import { type RowPhase, type RowScene, rowPhases } from '@halfhitch/geometry/row';

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

/** Scenes by their columns: what the geometry works out for one, it keeps as long as the scene. */
const scenes = new WeakMap<RowToPlay, Map<string, PlanScene>>();

/** The scene round one knot of a row: the knots near it, of this row and the one before. */
export function windowAt(play: RowToPlay, order: number): RowWindow {
  const knot = play.reading.knots[order] as KnotReading;
  const { scene, knots, firstColumn } = sceneRound(play, knot.column);
  return { scene, index: knots.indexOf(knot), firstColumn };
}

/** The moves of one knot of a row. */
export function phasesAt(play: RowToPlay, order: number): readonly RowPhase[] {
  const { scene, index } = windowAt(play, order);
  return rowPhases(scene, index);
}

/** How many moves each knot of a row takes. */
export function movesOf(play: RowToPlay): number[] {
  return play.reading.knots.map((_, order) => phasesAt(play, order).length);
}

export function colourOfString(before: State, id: string): string {
  return before.strings.find((string) => string.id === id)?.colour ?? '#8a8f94';
}

/** The whole row with the one before it, as a scene. */
export function wholeScene({ reading, previous }: RowToPlay): RowScene {
  const rows = previous === null ? [reading] : [previous, reading];
  return sceneOf(rows, [0, reading.before.hung.length - 1]).scene;
}

function sceneRound(play: RowToPlay, column: number): PlanScene {
  const { reading, previous } = play;
  const columns = columnsRound(column, reading.before.hung.length);
  const key = columns.join(' ');
  const kept = scenes.get(play) ?? new Map<string, PlanScene>();
  scenes.set(play, kept);
  const found =
    kept.get(key) ?? sceneOf(previous === null ? [reading] : [previous, reading], columns);
  kept.set(key, found);
  return found;
}
