import type { Chart } from '../chart/chart.js';
import { Fault, faultInWords } from '../model/fault.js';
import { type HalfWay, halvesOf, KNOT_KINDS, type KnotKind, kindOf } from '../model/knot.js';
import { Op } from '../model/steplist.js';
import type { Plan } from '../plan/plan.js';
import type { FindingLog, LoggedFinding } from './log.js';
import * as say from './messages.js';
import { hangForKnot } from './repair.js';
import { NO_KNOT, Standing } from './standing.js';
import type { Technique } from './technique.js';

const KIND_NUMBER = new Map<KnotKind, number>(KNOT_KINDS.map((kind, number) => [kind, number]));

const HALF_OP = { forward: Op.halfForward, backward: Op.halfBackward } as const;

/** Judges half hitch after half hitch which knot they make, and whether it belongs there. */
export class KnotFollower extends Standing {
  private readonly colourMatches: Uint8Array;
  /** The knot begun: as the step gave its strings, and as they were taken. */
  private givenTying = -1;
  private givenHeld = -1;
  private knotTying = -1;
  private knotHeld = -1;
  protected knotColumn = -1;
  private knotExcused = false;
  /** A knot too many, whose half hitches are passed over. */
  private passTying = -1;
  private passHeld = -1;
  /** The last knot, if it was of another kind than its place asks for. */
  private oddKnot: { finding: LoggedFinding; row: number; column: number } | null = null;
  protected placeExcused = false;

  constructor(plan: Plan, chart: Chart, technique: Technique, log: FindingLog, longFloat: number) {
    super(plan, chart, technique, log, longFloat);
    this.colourMatches = colourTable(plan, chart);
  }

  protected half(i: number, way: HalfWay, tying: number, held: number): void {
    if (tying === this.passTying && held === this.passHeld) return;
    this.stopPassing();
    if (this.machine.halfTying < 0) this.begin(i, way, tying, held);
    else this.second(i, way, tying, held);
  }

  private begin(i: number, givenWay: HalfWay, givenTying: number, givenHeld: number): void {
    this.settle();
    let tying = givenTying;
    let held = givenHeld;
    let way = givenWay;
    this.knotExcused = false;
    if (this.row >= this.rows) {
      this.log.add('wrong', 'row-too-many', this.row, -1, () => say.rowTooMany(this.rows));
      this.row = this.rows + 1;
      return;
    }
    if (this.isLead[tying] !== 1) {
      this.wrong('wrong-lead', this.cellOf(held), () =>
        tying < this.machine.count ? say.baseTies(this.id(tying)) : say.unlistedTies(),
      );
      if (this.inHand < 0) return this.pass(givenTying, givenHeld);
      tying = this.inHand;
    }
    if (this.order === this.columns && !this.beginsAfterRow(i, held)) {
      return this.pass(givenTying, givenHeld);
    }
    const expected = this.technique.columnAt(this.row, this.order);
    let column = held < this.machine.count ? (this.machine.columnOf[held] as number) : -1;
    if (column < 0) {
      this.wrong('wrong-string', expected, () =>
        say.heldIsNoBase(this.id(held), this.base(expected)),
      );
      held = this.baseOf[expected] as number;
      column = expected;
    }
    if (column !== expected) {
      const taken = this.placeKnot(i, tying, column, expected);
      if (taken < 0) return this.pass(givenTying, givenHeld);
      column = taken;
      held = this.baseOf[column] as number;
    }
    if (this.machine.frontLength > this.columns + 1) this.clearStrays(tying);
    const kind = this.technique.kindAt(this.row, column);
    const fault = this.machine.run(HALF_OP[way], tying, held);
    if (fault !== Fault.none) {
      [tying, way] = this.putRight(i, fault, way, tying, held, column, kind);
      this.machine.run(HALF_OP[way], tying, held);
    }
    this.placeExcused = false;
    this.oddKnot = null;
    this.halfHitches++;
    this.givenTying = givenTying;
    this.givenHeld = givenHeld;
    this.knotTying = tying;
    this.knotHeld = held;
    this.knotColumn = column;
  }

  /** A half hitch that comes when the row is full: a turn left out, or a knot too many. */
  private beginsAfterRow(i: number, held: number): boolean {
    const column = this.cellOf(held);
    if (this.row + 1 < this.rows && !this.look.turnComesFirst(i)) {
      this.wrong('turn-missing', this.technique.columnAt(this.row, this.columns - 1), () =>
        say.turnMissing(this.row),
      );
      this.nextRow();
      return true;
    }
    if (this.isTied(column)) {
      this.wrong('doubled-knot', column, () => say.doubled(this.base(column), this.isEdge(column)));
    } else this.wrong('wrong-string', column, () => say.tooLate(this.base(column)));
    return false;
  }

  private isTied(column: number): boolean {
    return this.tying[this.row * this.columns + column] !== NO_KNOT;
  }

  /**
   * A knot on another string than the next in the row. Says which column it is taken to be for,
   * or -1 when it is one too many.
   */
  private placeKnot(i: number, tying: number, column: number, expected: number): number {
    const after = this.look.nextOtherHeld(i);
    const afterColumn =
      after < 0 || after >= this.machine.count ? -1 : (this.machine.columnOf[after] as number);
    const last = this.order === this.columns - 1;
    const second = last ? -1 : this.technique.columnAt(this.row, this.order + 1);
    const tied = this.isTied(column);
    const passed = this.orderOf(column) < this.order;
    // The knot was meant for the next string when the steps go on as if that were tied.
    const meant =
      (afterColumn === expected && !(passed && this.look.repeatsNext(i))) ||
      (second >= 0 && afterColumn === second && column !== second) ||
      (last && afterColumn < 0 && passed);
    if (meant) {
      this.wrong('wrong-string', expected, () =>
        say.wrongHeld(this.base(column), this.base(expected), tied),
      );
      return expected;
    }
    if (tied) {
      this.wrong('doubled-knot', column, () => say.doubled(this.base(column), this.isEdge(column)));
      return -1;
    }
    if (passed) {
      this.wrong('wrong-string', column, () => say.tooLate(this.base(column)));
      return -1;
    }
    while (this.technique.columnAt(this.row, this.order) !== column) {
      const skipped = this.technique.columnAt(this.row, this.order);
      this.wrong('missing-knot', skipped, () =>
        say.skipped(this.base(skipped), this.id(tying), this.base(column), this.isEdge(skipped)),
      );
      this.order++;
    }
    this.placeExcused = true;
    return column;
  }

  /** Reports why a half hitch cannot begin, and hangs the strings so that it can. */
  private putRight(
    i: number,
    fault: Fault,
    way: HalfWay,
    tying: number,
    held: number,
    column: number,
    kind: KnotKind,
  ): [number, HalfWay] {
    const wanted = halvesOf(kind)[0];
    let lead = tying;
    let taken = way;
    if (fault !== Fault.tyingNotInFront) {
      // It hangs on the other side, or further away.
      const odd = this.oddKnot;
      if (odd !== null && tying === this.inHand) {
        this.blameOddKnot(odd.finding, tying, column);
      } else if (fault === Fault.wrongSide && way !== wanted && !this.placeExcused) {
        this.wrong('wrong-kind', column, () => say.wrongFirstHalf(way, kind, this.id(tying)));
        this.knotExcused = true;
        taken = wanted;
      } else if (!this.placeExcused) {
        this.wrong('lead-out-of-place', column, () =>
          say.outOfPlace(this.id(tying), this.base(column), faultInWords(fault, this.steps.at(i))),
        );
      }
    } else {
      this.wrong('lead-not-in-hand', column, () =>
        say.notInHand(this.id(tying), this.base(column)),
      );
      const inFront = this.inHand >= 0 && (this.machine.slotOf[this.inHand] as number) >= 0;
      if (inFront && this.look.tiesNextKnot(i) !== tying) lead = this.inHand;
    }
    const old = this.inHand;
    const beside = old >= 0 && old !== lead && (this.machine.slotOf[old] as number) >= 0 ? old : -1;
    const side = taken === 'forward' ? 'left' : 'right';
    this.machine = hangForKnot(this.machine, lead, held, side, beside);
    return [lead, taken];
  }

  private second(i: number, way: HalfWay, tying: number, held: number): void {
    const asGiven = tying === this.givenTying && held === this.givenHeld;
    const asTaken = tying === this.knotTying && held === this.knotHeld;
    if (!asGiven && !asTaken) {
      if (this.look.repeatsNext(i) || !(tying === this.knotTying || held === this.knotHeld)) {
        this.completeHalf();
        this.begin(i, way, tying, held);
        return;
      }
      if (tying !== this.knotTying) {
        this.wrong('wrong-lead', this.knotColumn, () =>
          say.secondHalfBy(this.id(tying), this.id(this.knotTying)),
        );
      } else {
        this.wrong('wrong-string', this.knotColumn, () =>
          say.secondHalfOn(this.id(held), this.id(this.knotHeld)),
        );
      }
    }
    const first = this.machine.halfFirst;
    this.machine.run(HALF_OP[way], this.knotTying, this.knotHeld);
    this.halfHitches++;
    this.finish(kindOf(first, way));
  }

  /** Whether the knot begun is finished after step `i`, which is no part of it. */
  protected secondHalfFollows(i: number): boolean {
    return this.look.finishes(i, this.givenTying, this.givenHeld);
  }

  /** A knot of which the second half never comes: reported, and tied as it should be. */
  protected completeHalf(): void {
    const kind = this.technique.kindAt(this.row, this.knotColumn);
    this.wrong('half-knot', this.knotColumn, () =>
      say.halfKnot(this.id(this.knotTying), this.base(this.knotColumn), kind),
    );
    const first = this.machine.halfFirst;
    const [wantedFirst, wantedSecond] = halvesOf(kind);
    const way = first === wantedFirst ? wantedSecond : first;
    this.machine.run(HALF_OP[way], this.knotTying, this.knotHeld);
    this.knotExcused = true;
    this.knots--;
    this.finish(kindOf(first, way));
  }

  private finish(kind: KnotKind): void {
    const { row, knotTying: tying, knotColumn: column } = this;
    const cell = row * this.columns + column;
    this.knots++;
    this.tying[cell] = tying;
    this.kinds[cell] = KIND_NUMBER.get(kind) as number;
    const wanted = this.technique.kindAt(row, column);
    if (kind !== wanted && !this.knotExcused) this.reportKind(kind, wanted, row, column);
    const drawn = this.chart.cells[cell] as number;
    if (this.colourMatches[tying * this.chart.colours.length + drawn] !== 1) {
      this.wrong('colour-differs', column, () =>
        say.colourDiffers(this.machine.strings[tying], this.chart.colours[drawn]),
      );
    }
    if (tying !== this.inHand) {
      this.handOvers.happened(this.inHand, tying, row, column, this.order, this.machine);
      this.inHand = tying;
    }
    this.order++;
  }

  private reportKind(kind: KnotKind, wanted: KnotKind, row: number, column: number): void {
    const edge = this.isEdge(column);
    const displaced = this.technique.turnsInside(column);
    const finding = this.log.add(
      edge ? 'weak' : 'wrong',
      displaced ? 'edge-string-displaced' : 'wrong-kind',
      row,
      column,
      () => say.wrongKind(kind, wanted, this.base(column), displaced),
    );
    if (finding !== null) this.oddKnot = { finding, row, column };
  }

  /** A new lead comes in beside the old one, which an odd knot has left on the wrong side. */
  protected putBackOddKnot(): void {
    const odd = this.oddKnot;
    const inFront = this.inHand >= 0 && (this.machine.slotOf[this.inHand] as number) >= 0;
    if (odd === null || !inFront || this.order >= this.columns) return;
    const column = this.technique.columnAt(this.row, this.order);
    this.blameOddKnot(odd.finding, this.inHand, column);
    const way = halvesOf(this.technique.kindAt(this.row, column))[0];
    const side = way === 'forward' ? 'left' : 'right';
    const held = this.baseOf[column] as number;
    this.machine = hangForKnot(this.machine, this.inHand, held, side, -1);
  }

  private blameOddKnot(finding: LoggedFinding, lead: number, column: number): void {
    const { message } = finding;
    this.log.worsen(
      finding,
      'wrong-kind',
      say.oddKnotBlocks(message, this.id(lead), this.base(column), this.row, column),
    );
    this.oddKnot = null;
  }

  private pass(tying: number, held: number): void {
    this.passTying = tying;
    this.passHeld = held;
  }

  /** What follows a turn is no part of a knot too many, though it may be of the same strings. */
  protected stopPassing(): void {
    this.passTying = -1;
  }
}

/** Whether a string (row) is of a chart's colour (column): a byte each. */
function colourTable(plan: Plan, chart: Chart): Uint8Array {
  const table = new Uint8Array(plan.strings.length * chart.colours.length);
  plan.strings.forEach((string, i) => {
    chart.colours.forEach((colour, j) => {
      if (string.colour === colour.hex) table[i * chart.colours.length + j] = 1;
    });
  });
  return table;
}
