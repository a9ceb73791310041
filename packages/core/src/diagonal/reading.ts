import { InputError } from '../errors.js';
import { Fault, faultInWords } from '../model/fault.js';
import { type HalfWay, type KnotKind, kindOf } from '../model/knot.js';
import { Machine } from '../model/machine.js';
import type { State } from '../model/state.js';
import { Op } from '../model/steplist.js';
import type { ThreadString } from '../model/strings.js';
import { rowMissing } from '../plan/row-missing.js';
import { firstSlotOf } from './lattice.js';
import type { DiagonalPlan } from './plan.js';

/** One knot of a plan, as its steps tie it; rows, places and slots from 0. */
export interface DiagonalKnotReading {
  readonly row: number;
  /** Place in the row, counted from the left. */
  readonly place: number;
  /** Slot of the left one of the two strings. */
  readonly slot: number;
  readonly kind: KnotKind;
  readonly tying: ThreadString;
  readonly held: ThreadString;
  /**
   * The steps of this knot, from `first` up to before `end`; the turn before a row counts among those
   * of its first knot.
   */
  readonly steps: { readonly first: number; readonly end: number };
}

export interface DiagonalRowReading {
  readonly row: number;
  /** The knots in the order in which they are tied. */
  readonly knots: readonly DiagonalKnotReading[];
  /** Where the strings hang before the first step of the row. */
  readonly before: State;
}

interface RowStart {
  readonly step: number;
  readonly before: State;
}

/**
 * Reads the rows of a diagonal plan from its steps. Rows are read as they are asked for; going back
 * to an earlier row is cheap.
 */
export class DiagonalPlanReader {
  readonly plan: DiagonalPlan;
  private readonly starts: RowStart[];

  constructor(plan: DiagonalPlan) {
    this.plan = plan;
    this.starts = [{ step: 0, before: new Machine(plan.strings, plan.hung).state() }];
  }

  /**
   * @param row from 0
   * @throws InputError when the plan has no such row, a step up to its end cannot be done, or a knot
   *   is in no place of the lattice
   */
  row(row: number): DiagonalRowReading {
    const { rows } = this.plan.lattice;
    if (!Number.isInteger(row) || row < 0 || row >= rows) {
      throw new InputError(
        'no-such-row',
        `The plan has no row ${row + 1}.`,
        { row: row + 1 },
        `Choose a row from 1 to ${rows}.`,
      );
    }
    while (this.starts.length <= row) {
      const known = this.starts.length;
      this.read(known - 1);
      if (this.starts.length === known) throw rowMissing(known);
    }
    return this.read(row);
  }

  *[Symbol.iterator](): IterableIterator<DiagonalRowReading> {
    for (let row = 0; row < this.plan.lattice.rows; row++) yield this.row(row);
  }

  private read(row: number): DiagonalRowReading {
    const start = this.starts[row];
    if (start === undefined) throw rowMissing(row);
    const { knots, next } = readRow(this.plan, row, start);
    if (row + 1 === this.starts.length && next !== null) this.starts.push(next);
    return { row, knots, before: start.before };
  }
}

function readRow(
  plan: DiagonalPlan,
  row: number,
  start: RowStart,
): { knots: DiagonalKnotReading[]; next: RowStart | null } {
  const { op, a, b, length } = plan.steps;
  const machine = Machine.of(start.before);
  const knots: DiagonalKnotReading[] = [];
  let knotStart = start.step;
  let firstWay: HalfWay | null = null;
  for (let i = start.step; i < length; i++) {
    const code = op[i] as number;
    // A row begins with the turn before it, but for the first.
    const rowEnds = code === Op.turn && (i > start.step || row === 0);
    if (rowEnds && firstWay === null) {
      return { knots, next: { step: i, before: machine.state() } };
    }
    if (code !== Op.halfForward && code !== Op.halfBackward && code !== Op.turn) {
      throw cannot(row, i, 'In a diagonal pattern every string stays in front.');
    }
    const fault = machine.run(code, a[i] as number, b[i] as number);
    if (fault !== Fault.none) throw cannot(row, i, faultInWords(fault, plan.steps.at(i)));
    if (code === Op.turn) continue;
    const way: HalfWay = code === Op.halfForward ? 'forward' : 'backward';
    if (firstWay === null) {
      firstWay = way;
      continue;
    }
    const slot = Math.min(
      machine.slotOf[a[i] as number] as number,
      machine.slotOf[b[i] as number] as number,
    );
    const place = (slot - firstSlotOf(plan.lattice, row)) / 2;
    // Two neighbours are a pair of this row, or of those above and below it.
    if (!Number.isInteger(place)) {
      throw cannot(row, i, `Row ${row + 1} has no place for a knot at string ${slot + 1}.`);
    }
    knots.push({
      row,
      place,
      slot,
      kind: kindOf(firstWay, way),
      tying: plan.strings[a[i] as number] as ThreadString,
      held: plan.strings[b[i] as number] as ThreadString,
      steps: { first: knotStart, end: i + 1 },
    });
    knotStart = i + 1;
    firstWay = null;
  }
  return { knots, next: null };
}

function cannot(row: number, step: number, why: string): InputError {
  return new InputError(
    'step-cannot-be-done',
    why,
    { row: row + 1, path: `step ${step + 1}` },
    'Verify the plan to see where it first goes wrong.',
  );
}
