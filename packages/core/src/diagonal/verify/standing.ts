import { changesPlaces, type KnotKind } from '../../model/knot.js';
import { Machine } from '../../model/machine.js';
import { Op, type StepList } from '../../model/steplist.js';
import { Lookahead } from '../../verify/lookahead.js';
import { knotIndex, knotsAcross, knotsInRow, type Lattice, slotOfPlace } from '../lattice.js';
import { NO_KNOT } from '../pattern.js';
import type { DiagonalPicture } from '../picture.js';
import type { DiagonalPlan } from '../plan.js';
import { NO_STRING_HERE } from '../simulate.js';
import type { DiagonalFindingCode } from './findings.js';
import type { DiagonalLog } from './log.js';
import * as say from './messages.js';
import type { Wanted } from './wanted.js';

/** After so many mistakes the plan is not for this picture, and following it helps nobody. */
export const MISTAKES_FOLLOWED = 2_000;

/** Where a diagonal piece stands, as far as the steps of its plan have been followed. */
export class Standing {
  readonly tying: Uint16Array;
  readonly kinds: Uint8Array;
  readonly order: Uint16Array;
  knots = 0;
  halfHitches = 0;
  row = 0;
  readonly machine: Machine;
  readonly steps: StepList;
  readonly look: Lookahead;
  readonly lattice: Lattice;
  readonly rows: number;
  /** Where each string was knotted last: an entry of the lattice, and its row. */
  readonly lastCell: Int32Array;
  readonly lastRow: Int32Array;

  constructor(
    plan: DiagonalPlan,
    picture: DiagonalPicture,
    readonly wanted: Wanted,
    readonly log: DiagonalLog,
  ) {
    this.steps = plan.steps;
    this.look = new Lookahead(plan.steps);
    this.lattice = picture;
    this.rows = picture.rows;
    this.machine = new Machine(plan.strings, plan.hung);
    const cells = picture.rows * knotsAcross(picture);
    this.tying = new Uint16Array(cells).fill(NO_STRING_HERE);
    this.kinds = new Uint8Array(cells).fill(NO_KNOT);
    this.order = new Uint16Array((picture.rows + 1) * picture.strings);
    this.lastCell = new Int32Array(plan.strings.length).fill(-1);
    this.lastRow = new Int32Array(plan.strings.length).fill(-1);
    this.writeOrder();
  }

  /** Ends the row: what it lacks is reported, and its strings hang as if it had been tied. */
  nextRow(i: number): void {
    for (let place = 0; place < knotsInRow(this.lattice, this.row); place++) {
      if (this.isTied(place) || !this.wanted.knot(this.row, place)) continue;
      const kind = this.wanted.kind(this.row, place);
      this.wrong('missing-knot', place, () => say.missing(...this.pairIds(place), kind));
      if (this.exchangesAt(i, place, kind)) this.exchangePair(place);
    }
    this.machine.run(Op.turn, 0, 0);
    this.row++;
    this.writeOrder();
  }

  /** Whether the knot that belongs in a place exchanges its strings. */
  exchangesAt(i: number, place: number, kind: KnotKind | null): boolean {
    if (this.wanted.pattern === null) return this.needsExchange(i, place);
    return kind !== null && changesPlaces(kind);
  }

  /**
   * Whether the strings of a place must change sides for the knots that come next: what is to be
   * knotted with a string on its right must find it on the right.
   */
  private needsExchange(i: number, place: number): boolean {
    if (this.log.wrong > MISTAKES_FOLLOWED) return false;
    const { op, a, b } = this.steps;
    const [left, right] = this.pairOf(place);
    const slot = this.machine.slotOf[left] as number;
    for (let j = this.look.nextHalf(i, true); j >= 0; j = this.look.nextHalf(j, true, i)) {
      const [one, other] = [a[j] as number, b[j] as number];
      for (const [string, partner] of [
        [one, other],
        [other, one],
      ] as const) {
        if (string !== left && string !== right) continue;
        // With each other again: the way says on which side the tying string is to hang.
        if (partner === left || partner === right) {
          return (one === right) === (op[j] === Op.halfForward);
        }
        const onRight = (this.machine.slotOf[partner] ?? 0) > slot;
        return (string === left) === onRight;
      }
    }
    return false;
  }

  /** How many knots the row still lacks. */
  lacks(): number {
    let count = 0;
    for (let place = 0; place < knotsInRow(this.lattice, this.row); place++) {
      if (!this.isTied(place) && this.wanted.knot(this.row, place)) count++;
    }
    return count;
  }

  firstLacking(): number {
    const count = knotsInRow(this.lattice, this.row);
    for (let place = 0; place < count; place++) {
      if (!this.isTied(place) && this.wanted.knot(this.row, place)) return place;
    }
    return -1;
  }

  isTied(place: number): boolean {
    return this.tying[knotIndex(this.lattice, this.row, place)] !== NO_STRING_HERE;
  }

  /** The place of this row whose pair two strings are, or -1. */
  pairPlace(one: number, other: number): number {
    const slot = this.leftSlot(one, other);
    return slot < 0 ? -1 : this.wanted.placeAt(this.row, slot);
  }

  /** The slot of the left one of two strings that hang side by side, or -1. */
  leftSlot(one: number, other: number): number {
    const { slotOf, count } = this.machine;
    if (one >= count || other >= count) return -1;
    const first = slotOf[one] as number;
    const second = slotOf[other] as number;
    return Math.abs(first - second) === 1 ? Math.min(first, second) : -1;
  }

  /** The strings of a place of this row, the left one first. */
  pairOf(place: number): readonly [number, number] {
    const slot = slotOfPlace(this.lattice, this.row, place);
    const { front } = this.machine;
    return [front[slot] as number, front[slot + 1] as number];
  }

  pairIds(place: number): readonly [string, string] {
    const [left, right] = this.pairOf(place);
    return [this.id(left), this.id(right)];
  }

  exchangePair(place: number): void {
    this.exchange(slotOfPlace(this.lattice, this.row, place));
  }

  /** Hangs two neighbours the other way round. */
  exchange(slot: number): void {
    const { front, slotOf } = this.machine;
    const [left, right] = [front[slot] as number, front[slot + 1] as number];
    front[slot] = right;
    front[slot + 1] = left;
    slotOf[right] = slot;
    slotOf[left] = slot + 1;
  }

  private writeOrder(): void {
    const { strings } = this.lattice;
    this.order.set(this.machine.front.subarray(0, strings), this.row * strings);
  }

  wrong(code: DiagonalFindingCode, place: number, text: () => string): void {
    this.log.atPlace('wrong', code, this.row, place, text);
  }

  id(string: number): string {
    return this.machine.strings[string]?.id ?? 'a string that is not in the table';
  }
}
