import type { Chart, StartSide } from '../chart/chart.js';
import { directionOf } from '../plan/plan.js';

/**
 * The knots of a chart in the order of knotting, as stints: a lead ties a stint of knots, then
 * another takes over. Knots are numbered from 0 in that order, over the turns.
 */
export class Stints {
  readonly columns: number;
  readonly rows: number;
  readonly knots: number;
  readonly count: number;
  /** First knot of each stint, and the number of all knots after the last. */
  readonly start: Int32Array;
  /** Colour of each stint, a place in the legend. */
  readonly colour: Uint8Array;
  /** The stint before and the one after by the same lead, -1 where there is none. */
  readonly before: Int32Array;
  readonly after: Int32Array;
  private readonly startsLeft: boolean;

  constructor(
    readonly chart: Chart,
    start: StartSide,
  ) {
    const { rows, columns, colours } = chart;
    this.rows = rows;
    this.columns = columns;
    this.knots = rows * columns;
    this.startsLeft = directionOf(start, 0) === 'right';
    let count = 0;
    let last = -1;
    for (let knot = 0; knot < this.knots; knot++) {
      const colour = this.colourOf(knot);
      if (colour !== last) count++;
      last = colour;
    }
    this.count = count;
    this.start = new Int32Array(count + 1);
    this.colour = new Uint8Array(count);
    this.before = new Int32Array(count).fill(-1);
    this.after = new Int32Array(count).fill(-1);
    this.start[count] = this.knots;
    const latest = new Int32Array(colours.length).fill(-1);
    let stint = -1;
    last = -1;
    for (let knot = 0; knot < this.knots; knot++) {
      const colour = this.colourOf(knot);
      if (colour === last) continue;
      last = colour;
      stint++;
      this.start[stint] = knot;
      this.colour[stint] = colour;
      const earlier = latest[colour] as number;
      this.before[stint] = earlier;
      if (earlier >= 0) this.after[earlier] = stint;
      latest[colour] = stint;
    }
  }

  length(stint: number): number {
    return (this.start[stint + 1] as number) - (this.start[stint] as number);
  }

  rowOf(knot: number): number {
    return Math.floor(knot / this.columns);
  }

  columnOf(knot: number): number {
    const order = knot % this.columns;
    const right = this.startsLeft === (this.rowOf(knot) % 2 === 0);
    return right ? order : this.columns - 1 - order;
  }

  /** Place in the chart's cells. */
  cellOf(knot: number): number {
    return this.rowOf(knot) * this.columns + this.columnOf(knot);
  }

  private colourOf(knot: number): number {
    return this.chart.cells[this.cellOf(knot)] as number;
  }

  /**
   * Where a lead rests when another takes over at a knot: at that knot, since it is caught there
   * or passed behind it, but at a turn where its own last one is.
   */
  restAt(takeOver: number): number {
    return takeOver % this.columns === 0 ? takeOver - 1 : takeOver;
  }

  /** Length of a float between two knots, in knots. */
  float(from: number, to: number): number {
    return Math.hypot(this.rowOf(to) - this.rowOf(from), this.columnOf(to) - this.columnOf(from));
  }

  /** Whether a change at this knot leaves an edge knot alone in its colour within its row. */
  atEdge(takeOver: number): boolean {
    const order = takeOver % this.columns;
    return order > 0 && (order === 1 || order === this.columns - 1);
  }
}
