import { KNOT_KINDS, kindOf } from '../model/knot.js';
import { type Machine, Whereabouts } from '../model/machine.js';
import { Op } from '../model/steplist.js';
import { Back, Look, Sight } from './seen.js';
import { NOBODY } from './written.js';

/** One row as its steps tied it, before it is known which row the knots at a turn belong to. */
export interface TiedRow {
  /** Colour of the last knot on each string, or Sight.bare. */
  readonly cells: Int16Array;
  readonly looks: Uint8Array;
  readonly backs: Uint8Array;
  /** Whole knots on each string. */
  readonly counts: Uint8Array;
  knots: number;
  /** String that tied the knot on the leftmost and on the rightmost base string. */
  readonly edgeTying: [number, number];
  /** The same for the first of two knots there. */
  readonly firstEdgeTying: [number, number];
  /** Whether the lead came out beyond the leftmost or the rightmost base string. */
  readonly outside: [boolean, boolean];
  /** Whether an old lead was caught in a knot there. */
  readonly sticks: [boolean, boolean];
  /** String that tied the last knot up to here. */
  lastTying: number;
}

/**
 * Watches steps being done and notes what they leave to be seen. It knows nothing of plans and
 * of what was meant: all comes from the steps and the state machine.
 */
export class RowWatch {
  row: TiedRow;
  private firstWay: 'forward' | 'backward' = 'forward';
  private pending: { readonly old: number; readonly column: number } | null = null;

  constructor(
    private readonly columns: number,
    private readonly colourOf: Int16Array,
    /** The string that tied last. */
    public lastTying: number,
  ) {
    this.row = this.empty();
  }

  private empty(): TiedRow {
    return {
      cells: new Int16Array(this.columns).fill(Sight.bare),
      looks: new Uint8Array(this.columns).fill(Look.none),
      backs: new Uint8Array(this.columns).fill(Back.flat),
      counts: new Uint8Array(this.columns),
      knots: 0,
      edgeTying: [NOBODY, NOBODY],
      firstEdgeTying: [NOBODY, NOBODY],
      outside: [false, false],
      sticks: [false, false],
      lastTying: this.lastTying,
    };
  }

  /** Notes a step that the machine has just done. */
  saw(op: number, a: number, b: number, machine: Machine): void {
    if (op === Op.halfForward || op === Op.halfBackward) {
      const way = op === Op.halfForward ? 'forward' : 'backward';
      if (machine.halfTying >= 0) {
        this.settle(machine);
        this.firstWay = way;
      } else this.knot(a, b, KNOT_KINDS.indexOf(kindOf(this.firstWay, way)), machine);
      return;
    }
    if (op !== Op.parkThrough) return;
    const { column } = machine;
    if (column === 0) this.row.sticks[0] = true;
    if (column === this.columns - 1) this.row.sticks[1] = true;
  }

  private knot(tying: number, held: number, kind: number, machine: Machine): void {
    const { row } = this;
    const column = machine.columnOf[held] as number;
    if (column < 0) return;
    row.cells[column] = this.colourOf[tying] as number;
    const count = ((row.counts[column] as number) + 1) & 0xff;
    row.counts[column] = count;
    row.looks[column] = count > 1 ? Look.two : kind + 1;
    row.knots++;
    const beside = (machine.slotOf[tying] as number) - (machine.slotOf[held] as number);
    if (column === 0) this.edge(0, tying, count, beside < 0);
    if (column === this.columns - 1) this.edge(1, tying, count, beside > 0);
    const inner = column > 0 && column < this.columns - 1;
    const old = this.lastTying;
    this.pending = old !== NOBODY && old !== tying && inner ? { old, column } : null;
    this.lastTying = tying;
    row.lastTying = tying;
  }

  private edge(side: 0 | 1, tying: number, count: number, outside: boolean): void {
    const { row } = this;
    row.edgeTying[side] = tying;
    if (count === 1) row.firstEdgeTying[side] = tying;
    if (outside) row.outside[side] = true;
  }

  /** A single half hitch of a lead: it does not hold, so it is no step, but it is there. */
  half(column: number, tying: number): void {
    if (this.row.counts[column] !== 0) return;
    this.row.cells[column] = this.colourOf[tying] as number;
    this.row.looks[column] = Look.half;
  }

  /** Looks behind the last colour change, when the old lead has left. */
  private settle(machine: Machine): void {
    const change = this.pending;
    if (change === null) return;
    this.pending = null;
    const { old, column } = change;
    const loose =
      machine.whereabouts[old] === Whereabouts.parked && machine.parkedBy[old] !== Op.parkThrough;
    if (loose) this.row.backs[column] = Back.loop;
  }

  /** The row is done: gives it away and begins the next. */
  finish(machine: Machine): TiedRow {
    this.settle(machine);
    const { row } = this;
    this.row = this.empty();
    return row;
  }
}
