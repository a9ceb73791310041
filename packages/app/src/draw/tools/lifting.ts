import type { Chart } from '@halfhitch/core';
import { type Area, sameArea } from '../edit/area.js';
import { withCells } from '../edit/cells.js';
import { emptied, type Patch, pasted, patchOf } from '../edit/patch.js';
import type { Place } from '../edit/place.js';

/** A patch taken up. */
export interface Lifted {
  /** The drawing without it. */
  readonly on: Chart;
  readonly patch: Patch;
  /** Where it lay; may be over the side. */
  readonly at: Place;
}

/**
 * Takes selections up and lays them down elsewhere. What was laid down last is known: moved again,
 * it leaves what was under it and not a hole.
 */
export class Lifting {
  private laid: (Lifted & { readonly selection: Area; readonly result: Chart }) | null = null;

  /**
   * Lays a patch down.
   *
   * @param open the chart as it is shown; given back when it comes to the same
   * @param selection what of the patch is in the chart
   */
  lay(open: Chart, { on, patch, at }: Lifted, selection: Area): Chart {
    const result = ifChanged(open, pasted(on, patch, at));
    this.laid = { on, patch, at, selection, result };
    return result;
  }

  /**
   * What moving a selection begins with.
   *
   * @param ground colour that is left where it was
   * @param leave whether it stays where it was as well
   */
  lift(chart: Chart, selection: Area, ground: number, leave: boolean): Lifted {
    const { laid } = this;
    // Another chart means that something was done since.
    const known = laid !== null && laid.result === chart && sameArea(laid.selection, selection);
    const { patch, at } = known ? laid : { patch: patchOf(chart, selection), at: selection };
    if (leave) return { on: chart, patch, at };
    return { on: known ? laid.on : emptied(chart, selection, ground), patch, at };
  }
}

/** The chart as it was if nothing differs, so that there is nothing to undo. */
function ifChanged(before: Chart, after: Chart): Chart {
  if (after.colours !== before.colours) return after;
  return withCells(before, after.cells) === before ? before : after;
}
