import type { Chart } from '@halfhitch/core';
import { type Area, sameArea } from '../edit/area.js';
import { withCells } from '../edit/cells.js';
import { emptied, type Patch, pasted, patchOf } from '../edit/patch.js';
import type { Place } from '../edit/place.js';

/**
 * A piece of drawing that was laid down last, and what it lies on. Moved again, it leaves what was
 * under it and not a hole.
 */
interface Laid {
  readonly on: Chart;
  readonly patch: Patch;
  /** Where it lies; may be over the side. */
  readonly at: Place;
  readonly selection: Area;
}

/** Takes selections up and lays them down elsewhere. */
export class Lifting {
  /** The chart that came of laying it down; another chart means that something was done since. */
  private result: Chart | null = null;
  private laid: Laid | null = null;

  /** Lays a patch on a chart. */
  lay(on: Chart, patch: Patch, at: Place, selection: Area): Chart {
    const result = pasted(on, patch, at);
    this.laid = { on, patch, at, selection };
    this.result = result;
    return result;
  }

  /**
   * What moving a selection begins with: the drawing without it, and the patch.
   *
   * @param ground colour that is left where it was
   * @param leave whether it stays where it was as well
   */
  lift(
    chart: Chart,
    selection: Area,
    ground: number,
    leave: boolean,
  ): { readonly on: Chart; readonly patch: Patch; readonly at: Place } {
    const { laid } = this;
    if (laid !== null && chart === this.result && sameArea(laid.selection, selection)) {
      return { ...laid, on: leave ? chart : laid.on };
    }
    const on = leave ? chart : emptied(chart, selection, ground);
    return { on, patch: patchOf(chart, selection), at: selection };
  }
}

/** The chart as it was if nothing differs, so that there is nothing to undo. */
export function ifChanged(before: Chart, after: Chart): Chart {
  return after.colours === before.colours &&
    after.rows === before.rows &&
    after.columns === before.columns
    ? withCells(before, after.cells)
    : after;
}
