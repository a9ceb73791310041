import { InputError } from '../errors.js';
import { Fault, faultInWords } from '../model/fault.js';
import { type HalfWay, type KnotKind, kindOf } from '../model/knot.js';
import { Machine } from '../model/machine.js';
import type { Cell, State } from '../model/state.js';
import type { ParkRoute } from '../model/step.js';
import { Op, routeOfOp } from '../model/steplist.js';
import type { ThreadString } from '../model/strings.js';
import { type ChangePlace, changePlace } from './changes.js';
import { checkPlanSize } from './check-plan.js';
import { type Direction, directionOf, type Plan } from './plan.js';
import { rowMissing } from './row-missing.js';

/** A hand-over from one lead to another, at the first knot of the new one. */
export interface ChangeReading {
  /** Null at the first knot of the piece, which takes over from nothing. */
  readonly place: ChangePlace | null;
  readonly oldLead: ThreadString | null;
  readonly newLead: ThreadString;
  /** How the old lead leaves the front; null when there was none or it stays in front. */
  readonly oldLeadRoute: ParkRoute | null;
  /** Whether this is the first use ever of the new lead's colour. */
  readonly firstUse: boolean;
  /** Whether the new lead only goes on in the colour of one that has run out. */
  readonly join: boolean;
  /** The stretch the new lead spans behind the work since it was parked. */
  readonly float: { readonly from: Cell; readonly rows: number; readonly columns: number } | null;
}

/** One knot of a plan, as its steps tie it; rows and columns from 0. */
export interface KnotReading {
  readonly row: number;
  readonly column: number;
  /** Place in the row in the order of knotting, from 0. */
  readonly order: number;
  readonly direction: Direction;
  readonly kind: KnotKind;
  readonly tying: ThreadString;
  readonly held: ThreadString;
  /** The steps of this knot, with those of its colour change: from `first` up to before `end`. */
  readonly steps: { readonly first: number; readonly end: number };
  readonly change: ChangeReading | null;
  /** Whether the knot ends its row, starts it, both (one column), or neither. */
  readonly place: 'first' | 'inner' | 'last' | 'only';
}

export interface RowReading {
  readonly row: number;
  readonly direction: Direction;
  readonly knots: readonly KnotReading[];
  /** Where everything is before the first step of the row. */
  readonly before: State;
}

/** Where the steps of a row begin, and what is so then. */
interface RowStart {
  readonly step: number;
  readonly before: State;
  /** Place of the lead in hand in the table of strings, or -1. */
  readonly inHand: number;
  readonly coloursUsed: ReadonlySet<string>;
}

/** Where rows begin is kept for every row up to this many strings, else for fewer, as it is large. */
const STRINGS_KEPT_EACH_ROW = 512;

/**
 * Reads the rows of a plan from its steps. Rows are read as they are asked for, so the first
 * rows of a long piece cost little; going back to an earlier row is cheap.
 *
 * A row's steps run from the turn before it; the steps by which an old lead goes down at a turn
 * belong to the row that the turn begins, since that is the row whose colour asks for it.
 */
export class PlanReader {
  readonly plan: Plan;
  /** Where every so many rows begin. */
  private readonly starts: RowStart[];
  private readonly apart: number;
  /** The row after the one read last. */
  private following: { readonly row: number; readonly start: RowStart };

  /** @throws InputError when the plan is for a piece outside the limits, or hangs other strings */
  constructor(plan: Plan) {
    checkPlanSize(plan);
    this.plan = plan;
    const before = new Machine(plan.strings, plan.hung).state();
    const start = { step: 0, before, inHand: -1, coloursUsed: new Set<string>() };
    this.starts = [start];
    this.apart = Math.max(1, Math.ceil(plan.strings.length / STRINGS_KEPT_EACH_ROW));
    this.following = { row: 0, start };
  }

  /**
   * @param row from 0
   * @throws InputError when the plan has no such row, or a step up to its end cannot be done
   */
  row(row: number): RowReading {
    if (!Number.isInteger(row) || row < 0 || row >= this.plan.rows) {
      throw new InputError(
        'no-such-row',
        `The plan has no row ${row + 1}.`,
        { row: row + 1 },
        `Choose a row from 1 to ${this.plan.rows}.`,
      );
    }
    let { row: at, start } = this.following;
    const kept = Math.min(Math.floor(row / this.apart), this.starts.length - 1);
    if (at > row || at < kept * this.apart) {
      at = kept * this.apart;
      start = this.starts[kept] as RowStart;
    }
    for (; at < row; at++) {
      const { next } = this.pass(at, start);
      if (next === null) throw rowMissing(at + 1);
      start = next;
    }
    const { knots } = this.pass(row, start);
    const direction = directionOf(this.plan.start, row);
    return { row, direction, knots, before: start.before };
  }

  *[Symbol.iterator](): IterableIterator<RowReading> {
    for (let row = 0; row < this.plan.rows; row++) yield this.row(row);
  }

  private pass(row: number, start: RowStart): RowPass {
    const pass = new RowPass(this.plan, row, start);
    pass.run();
    if (pass.next !== null) {
      this.following = { row: row + 1, start: pass.next };
      if (row + 1 === this.starts.length * this.apart) this.starts.push(pass.next);
    }
    return pass;
  }
}

/** One run through the steps of a row, which collects its knots. */
class RowPass {
  readonly knots: KnotReading[] = [];
  /** Where the next row begins; null when the steps end with this row. */
  next: RowStart | null = null;
  private readonly machine: Machine;
  private readonly coloursUsed: Set<string>;
  private inHand: number;
  private knotStart: number;
  private firstWay: HalfWay | null = null;
  private route: ParkRoute | null = null;
  private restedAt: Cell | null = null;

  constructor(
    private readonly plan: Plan,
    private readonly row: number,
    private readonly start: RowStart,
  ) {
    this.machine = Machine.of(start.before);
    this.coloursUsed = new Set(start.coloursUsed);
    this.inHand = start.inHand;
    this.knotStart = start.step;
  }

  run(): void {
    const { op, length } = this.plan.steps;
    let i = this.start.step;
    while (i < length) {
      if (this.knots.length >= this.plan.columns && this.nextRowBegins(i)) {
        this.next = {
          step: i,
          before: this.machine.state(),
          inHand: this.inHand,
          coloursUsed: this.coloursUsed,
        };
        return;
      }
      this.step(i);
      const code = op[i] as number;
      i++;
      if (code !== Op.halfForward && code !== Op.halfBackward) continue;
      const way: HalfWay = code === Op.halfForward ? 'forward' : 'backward';
      if (this.firstWay === null) {
        this.firstWay = way;
        continue;
      }
      const second = i - 1;
      // A lead locked in this knot leaves after it, and a used-up one is finished then.
      while (i < length && (op[i] === Op.parkThrough || op[i] === Op.end)) this.step(i++);
      this.knots.push(this.knot(this.firstWay, way, second, i));
    }
  }

  private step(i: number): void {
    const { steps } = this.plan;
    const { machine } = this;
    const op = steps.op[i] as number;
    const a = steps.a[i] as number;
    if (op === Op.takeUp && a < machine.count) {
      const row = machine.parkedRow[a] as number;
      this.restedAt = { row, column: machine.parkedColumn[a] as number };
    }
    const fault = machine.run(op, a, steps.b[i] as number);
    if (fault !== Fault.none) {
      throw new InputError(
        'step-cannot-be-done',
        faultInWords(fault, steps.at(i)),
        { row: this.row + 1, path: `step ${i + 1}` },
        'Verify the plan to see where it first goes wrong.',
      );
    }
    if (op === Op.parkThrough || op === Op.parkBehind || op === Op.parkDown) {
      this.route = routeOfOp(op);
    }
  }

  /** The knot whose second half is step `second`, all of whose steps end before `end`. */
  private knot(first: HalfWay, way: HalfWay, second: number, end: number): KnotReading {
    const { plan, row } = this;
    const { columns } = plan;
    const direction = directionOf(plan.start, row);
    const tyingPlace = plan.steps.a[second] as number;
    const heldPlace = plan.steps.b[second] as number;
    const column = this.machine.columnOf[heldPlace] as number;
    const order = direction === 'right' ? column : columns - 1 - column;
    const tying = plan.strings[tyingPlace] as ThreadString;
    const reading: KnotReading = {
      row,
      column,
      order,
      direction,
      kind: kindOf(first, way),
      tying,
      held: plan.strings[heldPlace] as ThreadString,
      steps: { first: this.knotStart, end },
      change: tyingPlace === this.inHand ? null : this.change(tying, column, order),
      place: placeInRow(order, columns),
    };
    this.coloursUsed.add(tying.colour);
    this.inHand = tyingPlace;
    this.knotStart = end;
    this.firstWay = null;
    this.route = null;
    this.restedAt = null;
    return reading;
  }

  private change(newLead: ThreadString, column: number, order: number): ChangeReading {
    const { plan, row, restedAt } = this;
    const oldLead = this.inHand < 0 ? null : (plan.strings[this.inHand] as ThreadString);
    return {
      place: oldLead === null ? null : changePlace(order, plan.columns),
      oldLead,
      newLead,
      oldLeadRoute: this.route,
      firstUse: !this.coloursUsed.has(newLead.colour),
      join: oldLead !== null && oldLead.colour === newLead.colour,
      float:
        restedAt === null
          ? null
          : {
              from: restedAt,
              rows: Math.abs(row - restedAt.row),
              columns: Math.abs(column - restedAt.column),
            },
    };
  }

  /** Whether only leads going down come between this step and a turn. */
  private nextRowBegins(from: number): boolean {
    const { op, length } = this.plan.steps;
    let i = from;
    while (i < length && op[i] === Op.parkDown) i++;
    return i < length && op[i] === Op.turn;
  }
}

function placeInRow(order: number, columns: number): KnotReading['place'] {
  if (columns === 1) return 'only';
  if (order === 0) return 'first';
  return order === columns - 1 ? 'last' : 'inner';
}
