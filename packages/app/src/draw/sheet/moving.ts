import type { Chart } from '@halfhitch/core';
import { type Area, clipped } from '../edit/area.js';
import { type Place, samePlace } from '../edit/place.js';
import { type Lifted, Lifting } from '../tools/lifting.js';

/** A selection that is moved by a hand or by keys. */
export class Moving {
  private to: Place;

  constructor(
    private readonly lifted: Lifted,
    readonly selection: Area,
    /** Where the hand took hold of it. */
    private readonly from: Place,
    /** Whether it stays where it was as well. */
    readonly leaves: boolean,
  ) {
    this.to = selection;
  }

  /** Whether it has been moved at all. */
  get isMoved(): boolean {
    return !samePlace(this.to, this.selection);
  }

  /** The selection where it has been moved to; may be over the side. */
  get shown(): Area {
    const { row, column } = this.to;
    return { ...this.selection, row, column };
  }

  /** The hand is at a place now. @returns whether that moves it */
  follow(place: Place): boolean {
    return this.moveBy(place.row - this.from.row, place.column - this.from.column);
  }

  /** From where it was taken up. */
  moveBy(rows: number, columns: number): boolean {
    const { row, column } = this.selection;
    const to = { row: row + rows, column: column + columns };
    if (samePlace(to, this.to)) return false;
    this.to = to;
    return true;
  }

  /**
   * The chart with it laid down where it is.
   *
   * @param lifting remembers it; another one for what is only looked at
   */
  laidOn(chart: Chart, lifting = new Lifting()): Chart {
    return lifting.lay(chart, this.laid, clipped(this.shown, chart) ?? this.selection);
  }

  /** A patch where it is moved to: part of it may lie over the side, beyond the selection. */
  private get laid(): Lifted {
    const { on, patch, at } = this.lifted;
    const { selection, to } = this;
    const row = at.row + to.row - selection.row;
    const column = at.column + to.column - selection.column;
    return { on, patch, at: { row, column } };
  }
}
