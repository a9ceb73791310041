import type { ResolvedOptions } from '../knot/options.js';
import { entryOf, exitOf, type Layout } from './layout.js';
import type { RowKnot, RowPhase, RowScene } from './scene.js';

/** A moment of a scene. */
export interface Setting {
  readonly scene: RowScene;
  readonly layout: Layout;
  readonly options: ResolvedOptions;
  readonly index: number;
  readonly phase: RowPhase;
  /** 0 to 1 within the phase. */
  readonly progress: number;
}

/** Whether a lead turns back between two knots. */
export const turnsBack = ({ layout }: Setting, from: RowKnot, to: RowKnot): boolean =>
  exitOf(layout, from).heading[0] * entryOf(layout, to).heading[0] < 0;

/** Points per base string. */
const BASE_POINTS = 48;

/** Centre-lines of the base strings, from the left. */
export function baseLines({ scene, layout, options }: Setting): Float64Array[] {
  const d = options.diameter;
  const rows = Math.max(...scene.knots.map((k) => k.row ?? 0));
  const top = -6 * d;
  const bottom = rows * layout.rowHeight + 18 * d;
  return scene.base.map((_, column) => {
    const points = new Float64Array(BASE_POINTS * 3);
    for (let i = 0; i < BASE_POINTS; i++) {
      points[i * 3] = layout.columns[column]!;
      points[i * 3 + 1] = top + ((bottom - top) * i) / (BASE_POINTS - 1);
    }
    return points;
  });
}
