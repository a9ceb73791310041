import { Op, type StepList } from '../model/steplist.js';

/**
 * Steps looked at, at the most. A row of 300 knots with a change at each has 1,500; without a
 * bound, a plan without turns would be read to its end at each of its mistakes.
 */
const REACH = 4_096;

const isHalf = (op: number): boolean => op === Op.halfForward || op === Op.halfBackward;

/** What comes after a step, read from the steps alone. Each answer looks a few steps on. */
export class Lookahead {
  private readonly steps: StepList;

  constructor(steps: StepList) {
    this.steps = steps;
  }

  /** Index of the next half hitch after step `i`, or -1; stops at a turn unless told not to. */
  nextHalf(i: number, pastTurn = false, from = i): number {
    const { op, length } = this.steps;
    const reach = Math.min(length, from + REACH);
    for (let j = i + 1; j < reach; j++) {
      const code = op[j] as number;
      if (isHalf(code)) return j;
      if (code === Op.turn && !pastTurn) return -1;
    }
    return -1;
  }

  /** Held string of the next half hitch on another string in the same row, or -1. */
  nextOtherHeld(i: number): number {
    const held = this.steps.b[i];
    for (let j = this.nextHalf(i); j >= 0; j = this.nextHalf(j, false, i)) {
      if (this.steps.b[j] !== held) return this.steps.b[j] as number;
    }
    return -1;
  }

  /** Whether the next half hitch is by and on the same strings as the one at `i`. */
  repeatsNext(i: number): boolean {
    const j = this.nextHalf(i);
    return j >= 0 && this.steps.a[j] === this.steps.a[i] && this.steps.b[j] === this.steps.b[i];
  }

  /**
   * Whether the next half hitch before a turn is the second half of a knot of these strings: made by
   * and on them, and not the first of two.
   */
  finishes(i: number, tying: number, held: number): boolean {
    const { a, b } = this.steps;
    const next = this.nextHalf(i);
    return next >= 0 && a[next] === tying && b[next] === held && !this.repeatsNext(next);
  }

  /** The string that ties the first half hitch after the one or two on this held string, or -1. */
  tiesNextKnot(i: number): number {
    const { a, b } = this.steps;
    for (let j = this.nextHalf(i, true); j >= 0; j = this.nextHalf(j, true, i)) {
      if (b[j] !== b[i] || a[j] !== a[i]) return a[j] as number;
    }
    return -1;
  }

  /** Whether a turn comes before any half hitch on another string. */
  turnComesFirst(i: number): boolean {
    const { op, b, length } = this.steps;
    const reach = Math.min(length, i + REACH);
    for (let j = i + 1; j < reach; j++) {
      if (op[j] === Op.turn) return true;
      if (isHalf(op[j] as number) && b[j] !== b[i]) return false;
    }
    return true;
  }
}
