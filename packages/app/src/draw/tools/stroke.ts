import type { Chart } from '@halfhitch/core';
import { areaBetween } from '../edit/area.js';
import { withCells } from '../edit/cells.js';
import { linePlaces } from '../edit/line.js';
import { nearest, type Place } from '../edit/place.js';
import { blockPlaces, cellsOf, outlinePlaces } from '../edit/strokes.js';
import type { Symmetry } from '../edit/symmetry.js';

export type DrawingTool = 'pencil' | 'line' | 'frame' | 'block';

const WHAT: Readonly<Record<DrawingTool, string>> = {
  pencil: 'Draw with the pencil',
  line: 'Draw a line',
  frame: 'Draw a frame',
  block: 'Draw a block',
};

export interface StrokeResult {
  readonly chart: Chart;
  /** For the button that takes it back. */
  readonly what: string;
}

/**
 * A stroke from the moment the pen comes down. The drawing is copied once and only the cells that
 * the stroke touches are written, so that a pen on the largest chart is followed without delay.
 */
export class Stroke {
  /** The drawing with the stroke so far. */
  readonly cells: Uint8Array;
  private touched = new Set<number>();
  private last: Place;

  constructor(
    private readonly chart: Chart,
    private readonly tool: DrawingTool,
    private readonly colour: number,
    private readonly symmetry: Symmetry,
    readonly from: Place,
  ) {
    this.cells = chart.cells.slice();
    this.last = from;
    this.moveTo(from);
  }

  moveTo(place: Place): void {
    const { chart, symmetry, from } = this;
    if (this.tool === 'pencil') {
      this.write(cellsOf(linePlaces(this.last, place), chart, symmetry));
      this.last = place;
      return;
    }
    for (const at of this.touched) this.cells[at] = chart.cells[at] as number;
    this.touched = new Set();
    this.last = place;
    const area = areaBetween(nearest(chart, from), nearest(chart, place));
    const places =
      this.tool === 'line'
        ? linePlaces(from, place)
        : this.tool === 'frame'
          ? outlinePlaces(area)
          : blockPlaces(area);
    this.write(cellsOf(places, chart, symmetry));
  }

  private write(cells: ReadonlySet<number>): void {
    for (const at of cells) {
      this.cells[at] = this.colour;
      this.touched.add(at);
    }
  }

  /** The chart with the stroke; the very same where it changed nothing. */
  finish(): StrokeResult {
    return { chart: withCells(this.chart, this.cells), what: WHAT[this.tool] };
  }
}
