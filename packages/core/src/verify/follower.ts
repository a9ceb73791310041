import { Fault, faultInWords } from '../model/fault.js';
import { Op } from '../model/steplist.js';
import { KnotFollower } from './knot-follower.js';
import * as say from './messages.js';

/** After so many mistakes the plan is not for this chart, and following it helps nobody. */
const MISTAKES_FOLLOWED = 2_000;

/**
 * Follows a plan's steps through the state machine, knowing only the steps, the drawing and the
 * rules of the edge technique. What a step does wrong is reported where it happens; then the
 * strings are put right, so that the rest of the plan can be judged too.
 */
export class Follower extends KnotFollower {
  /** Follows every step, or as many as make sense. */
  run(): void {
    const { op, a, b, length } = this.steps;
    for (let i = 0; i < length; i++) {
      const code = op[i] as number;
      if (code === Op.halfForward) this.half(i, 'forward', a[i] as number, b[i] as number);
      else if (code === Op.halfBackward) this.half(i, 'backward', a[i] as number, b[i] as number);
      else if (code === Op.turn) this.turn(i);
      else this.other(i, code, a[i] as number, b[i] as number);
      if (this.log.wrong > MISTAKES_FOLLOWED || this.row >= this.rows + 1) break;
    }
    if (this.machine.halfTying >= 0) this.completeHalf();
    this.settle();
    this.clearStrays(this.inHand);
  }

  private turn(i: number): void {
    this.stopPassing();
    if (this.machine.halfTying >= 0) {
      if (this.secondHalfFollows(i)) {
        this.wrong('turn-too-soon', this.knotColumn, () =>
          say.turnInKnot(this.base(this.knotColumn)),
        );
        return;
      }
      this.completeHalf();
    }
    this.settle();
    const next = this.look.nextHalf(i, true);
    if (this.order < this.columns) {
      const expected = this.technique.columnAt(this.row, this.order);
      const nextColumn = next < 0 ? -1 : this.cellOf(this.steps.b[next] as number);
      // The edge string comes at both sides of a turn; what follows tells which knot is missing.
      const startsNext = this.order === this.columns - 1 && this.look.nextOtherHeld(next) >= 0;
      if (nextColumn === expected && !startsNext) {
        this.wrong('turn-too-soon', expected, () => say.turnTooSoon(this.order));
        return;
      }
      this.missRest();
    } else if (next < 0) {
      // A turn after the last knot changes nothing.
      return;
    }
    // The lead of the row to come may be taken up before the turn as well as after it.
    this.clearStrays(next < 0 ? this.inHand : (this.steps.a[next] as number));
    this.nextRow();
  }

  /** Reports every knot that the row still lacks. */
  missRest(): void {
    for (; this.order < this.columns; this.order++) {
      const column = this.technique.columnAt(this.row, this.order);
      this.wrong('missing-knot', column, () =>
        say.missing(
          this.base(column),
          this.technique.kindAt(this.row, column),
          this.isEdge(column),
        ),
      );
      this.placeExcused = true;
    }
  }

  private other(i: number, op: number, a: number, b: number): void {
    if (op === Op.takeUp || op === Op.add) {
      this.settle();
      this.putBackOddKnot();
      if (op === Op.takeUp && a < this.machine.count) this.handOvers.takenUp(a, this.machine);
    }
    const leaving = op !== Op.takeUp && op !== Op.add && op !== Op.layThrough;
    if (leaving && a < this.machine.count && this.isLead[a] !== 1) {
      this.wrong('wrong-string', this.here(), () => say.baseLeaves(this.id(a)));
      return;
    }
    const fault = this.machine.run(op, a, b);
    if (fault === Fault.none) return;
    this.reportOther(i, fault, op, a);
    if (fault === Fault.addedBefore) this.machine.run(Op.takeUp, a, b);
    else if (fault === Fault.neverAdded) this.machine.run(Op.add, a, b);
    else if (fault === Fault.noSuchSlot) {
      this.machine.run(op, a, this.machine.frontLength);
      this.placeExcused = true;
    } else if (fault === Fault.notLocked) {
      this.machine.run(Op.parkBehind, a, 0);
      if (this.handOvers.waitingFor === a) this.handOvers.excuse();
    } else if (fault === Fault.lockedGoesThrough) this.machine.run(Op.parkThrough, a, 0);
  }

  private reportOther(i: number, fault: Fault, op: number, a: number): void {
    const why = faultInWords(fault, this.steps.at(i));
    if (fault === Fault.notLocked) {
      this.wrong('lead-not-caught', this.here(), () => say.notCaught(this.id(a), why));
      return;
    }
    const beforeNext = op === Op.takeUp || op === Op.add;
    const column =
      beforeNext && this.order < this.columns
        ? this.technique.columnAt(this.row, this.order)
        : this.here();
    this.wrong('step-cannot-be-done', column, () => say.cannotBeDone(why));
  }

  /** The column worked last in this row, or the one to come when the row has none yet. */
  private here(): number {
    if (this.machine.halfTying >= 0) return this.knotColumn;
    return this.technique.columnAt(this.row, Math.max(0, Math.min(this.order, this.columns) - 1));
  }
}
