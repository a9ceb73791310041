import { InputError } from '../errors.js';
import { Fault, faultInWords } from '../model/fault.js';
import { type HalfWay, type KnotKind, kindOf } from '../model/knot.js';
import { Machine } from '../model/machine.js';
import type { Cell, State } from '../model/state.js';
import type { ParkRoute } from '../model/step.js';
import { Op, routeOfOp } from '../model/steplist.js';
import type { ThreadString } from '../model/strings.js';
import { type ChangePlace, changePlace } from './changes.js';
import { type Direction, directionOf, type Plan } from './plan.js';

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

/**
 * Reads the rows of a plan from its steps. Rows are read as they are asked for, so the first
 * rows of a long piece cost little; going back to an earlier row is cheap.
 *
 * A row's steps run from the turn before it; the steps by which an old lead goes down at a turn
 * belong to the row that the turn begins, since that is the row whose colour asks for it.
 */
export class PlanReader {
  readonly plan: Plan;
  private readonly rowsRead: { first: number; before: State; inHand: number; used: Set<string> }[];

  constructor(plan: Plan) {
    this.plan = plan;
    this.rowsRead = [
      {
        first: 0,
        before: new Machine(plan.strings, plan.hung).state(),
        inHand: -1,
        used: new Set(),
      },
    ];
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
    while (this.rowsRead.length <= row) this.read(this.rowsRead.length - 1);
    return this.read(row);
  }

  *[Symbol.iterator](): IterableIterator<RowReading> {
    for (let row = 0; row < this.plan.rows; row++) yield this.row(row);
  }

  private read(row: number): RowReading {
    const { plan } = this;
    const { steps, columns } = plan;
    const mark = this.rowsRead[row];
    if (mark === undefined) {
      throw new InputError(
        'row-missing',
        `The steps of the plan end before row ${row + 1}.`,
        { row: row + 1 },
        'Check the plan to see which turn is missing.',
      );
    }
    const machine = Machine.of(mark.before);
    const direction = directionOf(plan.start, row);
    const knots: KnotReading[] = [];
    const used = new Set(mark.used);
    let inHand = mark.inHand;
    let first = mark.first;
    let firstWay: HalfWay | null = null;
    let route: ParkRoute | null = null;
    let float: ChangeReading['float'] = null;
    let tied = 0;
    let i = mark.first;
    for (; i < steps.length; i++) {
      const op = steps.op[i] as number;
      const a = steps.a[i] as number;
      const b = steps.b[i] as number;
      const startsNext =
        op === Op.turn || op === Op.parkDown ? tied === columns && this.turnAhead(i) : false;
      if (startsNext) break;
      if (op === Op.takeUp && a < machine.count) {
        float = {
          from: {
            row: machine.parkedRow[a] as number,
            column: machine.parkedColumn[a] as number,
          },
          rows: 0,
          columns: 0,
        };
      }
      const fault = machine.run(op, a, b);
      if (fault !== Fault.none) {
        throw new InputError(
          'step-cannot-be-done',
          faultInWords(fault, steps.at(i)),
          { row: row + 1, path: `step ${i + 1}` },
          'Verify the plan to see where it first goes wrong.',
        );
      }
      if (op === Op.parkThrough || op === Op.parkBehind || op === Op.parkDown) {
        route = routeOfOp(op);
      }
      if (op !== Op.halfForward && op !== Op.halfBackward) continue;
      const way: HalfWay = op === Op.halfForward ? 'forward' : 'backward';
      if (firstWay === null) {
        firstWay = way;
        continue;
      }
      // A lead locked in this knot leaves after it, and a used-up one is finished then.
      let end = i + 1;
      while (end < steps.length && this.closesKnot(steps.op[end] as number)) {
        if (steps.op[end] === Op.parkThrough) route = 'through';
        machine.run(steps.op[end] as number, steps.a[end] as number, steps.b[end] as number);
        end++;
      }
      const tying = plan.strings[a] as ThreadString;
      const column = machine.columnOf[b] as number;
      const order = direction === 'right' ? column : columns - 1 - column;
      const old = inHand < 0 ? null : (plan.strings[inHand] as ThreadString);
      const cell = { row, column };
      knots.push({
        row,
        column,
        order,
        direction,
        kind: kindOf(firstWay, way),
        tying,
        held: plan.strings[b] as ThreadString,
        steps: { first, end },
        change:
          a === inHand
            ? null
            : {
                place: old === null ? null : changePlace(order, columns),
                oldLead: old,
                newLead: tying,
                oldLeadRoute: route,
                firstUse: !used.has(tying.colour),
                join: old !== null && old.colour === tying.colour,
                float: float === null ? null : floatTo(float.from, cell),
              },
        place:
          columns === 1 ? 'only' : order === 0 ? 'first' : order === columns - 1 ? 'last' : 'inner',
      });
      used.add(tying.colour);
      inHand = a;
      first = end;
      firstWay = null;
      route = null;
      float = null;
      tied++;
      i = end - 1;
    }
    if (row + 1 === this.rowsRead.length && i < steps.length) {
      this.rowsRead.push({ first: i, before: machine.state(), inHand, used });
    }
    return { row, direction, knots, before: mark.before };
  }

  private closesKnot(op: number): boolean {
    return op === Op.parkThrough || op === Op.end;
  }

  /** Whether only leads going down come between this step and the turn. */
  private turnAhead(from: number): boolean {
    const { op, length } = this.plan.steps;
    let i = from;
    while (i < length && op[i] === Op.parkDown) i++;
    return i < length && op[i] === Op.turn;
  }
}

function floatTo(from: Cell, to: Cell): { from: Cell; rows: number; columns: number } {
  return {
    from,
    rows: Math.abs(to.row - from.row),
    columns: Math.abs(to.column - from.column),
  };
}
