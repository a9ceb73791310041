import { quoted } from '../document/quote.js';
import { InputError } from '../errors.js';
import { Fault } from './fault.js';
import type { HalfWay } from './knot.js';
import type { HalfMade, Parked, State } from './state.js';
import type { ParkRoute } from './step.js';
import { Op, routeOfOp, stringIndex } from './steplist.js';
import type { StringId, ThreadString } from './strings.js';

/** Where a string is. */
export const Whereabouts = { waiting: 0, front: 1, parked: 2, ended: 3 } as const;

const NONE = -1;

/**
 * The state machine in typed arrays, changed in place: the one place where the rules of a step
 * are written. `apply` wraps it in immutable values; the verifier and the cursor run it directly.
 * Strings are named by their places in the table of strings.
 */
export class Machine {
  readonly strings: readonly ThreadString[];
  readonly count: number;
  /** Column of a base string, by string; -1 for a lead. */
  readonly columnOf: Int32Array;
  /** String in each slot of the front; only the first `frontLength` count. */
  readonly front: Int32Array;
  frontLength = 0;
  /** Slot of each string, -1 when it is not in front. */
  readonly slotOf: Int32Array;
  readonly whereabouts: Uint8Array;
  readonly parkedRow: Int32Array;
  readonly parkedColumn: Int32Array;
  readonly parkedBy: Uint8Array;
  /** When a string was parked or ended, counted in such events. */
  private readonly since: Int32Array;
  private events = 0;
  lead: number = NONE;
  halfTying: number = NONE;
  halfHeld: number = NONE;
  halfFirst: HalfWay = 'forward';
  halfLaid: number = NONE;
  locked: number = NONE;
  row = 0;
  column = -1;
  private readonly hung: readonly StringId[];

  constructor(strings: readonly ThreadString[], hung: readonly StringId[]) {
    const index = stringIndex(strings);
    this.strings = strings;
    this.hung = hung;
    this.count = strings.length;
    this.columnOf = new Int32Array(this.count).fill(NONE);
    this.front = new Int32Array(this.count);
    this.slotOf = new Int32Array(this.count).fill(NONE);
    this.whereabouts = new Uint8Array(this.count);
    this.parkedRow = new Int32Array(this.count);
    this.parkedColumn = new Int32Array(this.count);
    this.parkedBy = new Uint8Array(this.count);
    this.since = new Int32Array(this.count);
    for (const id of hung) {
      const string = index.get(id);
      if (string === undefined || this.slotOf[string] !== NONE) {
        throw new InputError(
          'hung-strings',
          `String ${quoted(id)} is ${string === undefined ? 'not in the table of strings' : 'hung twice'}.`,
          {},
          'Every string that hangs at the start must be in the table, and hang once.',
        );
      }
      this.columnOf[string] = this.frontLength;
      this.whereabouts[string] = Whereabouts.front;
      this.slotOf[string] = this.frontLength;
      this.front[this.frontLength++] = string;
    }
  }

  static of(state: State): Machine {
    const machine = new Machine(state.strings, state.hung);
    const index = stringIndex(state.strings);
    const place = (id: StringId | null): number => (id === null ? NONE : (index.get(id) ?? NONE));
    machine.slotOf.fill(NONE);
    machine.whereabouts.fill(Whereabouts.waiting);
    machine.frontLength = 0;
    for (const id of state.front) {
      const string = place(id);
      machine.front[machine.frontLength] = string;
      machine.slotOf[string] = machine.frontLength++;
      machine.whereabouts[string] = Whereabouts.front;
    }
    for (const parked of state.parked) {
      machine.leave(place(parked.string), Whereabouts.parked);
      machine.rest(place(parked.string), parked.at.row, parked.at.column, parked.how);
    }
    for (const id of state.ended) machine.leave(place(id), Whereabouts.ended);
    machine.lead = place(state.lead);
    if (state.halfMade !== null) {
      machine.halfTying = place(state.halfMade.tying);
      machine.halfHeld = place(state.halfMade.held);
      machine.halfFirst = state.halfMade.first;
      machine.halfLaid = place(state.halfMade.laid);
    }
    machine.locked = place(state.locked);
    machine.row = state.at.row;
    machine.column = state.at.column;
    return machine;
  }

  /** An immutable copy of where everything is. */
  state(): State {
    return {
      strings: this.strings,
      hung: this.hung,
      front: this.frontIds(),
      parked: this.parkedStrings(),
      ended: this.sorted(Whereabouts.ended).map((string) => this.id(string)),
      lead: this.idOrNull(this.lead),
      halfMade: this.halfMade(),
      locked: this.idOrNull(this.locked),
      at: { row: this.row, column: this.column },
    };
  }

  frontIds(): StringId[] {
    const ids: StringId[] = [];
    for (let slot = 0; slot < this.frontLength; slot++) {
      ids.push(this.id(this.front[slot] as number));
    }
    return ids;
  }

  parkedStrings(): Parked[] {
    return this.sorted(Whereabouts.parked).map((string) => ({
      string: this.id(string),
      at: { row: this.parkedRow[string] as number, column: this.parkedColumn[string] as number },
      how: routeOfOp(this.parkedBy[string] as number),
    }));
  }

  /** Does one step, or changes nothing and says why the step cannot be done. */
  run(op: number, a: number, b: number): Fault {
    switch (op) {
      case Op.halfForward:
        return this.halfHitch('forward', a, b);
      case Op.halfBackward:
        return this.halfHitch('backward', a, b);
      case Op.layThrough:
        return this.layThrough(a);
      case Op.parkThrough:
      case Op.parkBehind:
      case Op.parkDown:
        return this.park(a, op);
      case Op.takeUp:
        return this.enter(a, b, Whereabouts.parked);
      case Op.add:
        return this.enter(a, b, Whereabouts.waiting);
      case Op.end:
        return this.end(a);
      case Op.turn:
        if (this.halfTying !== NONE) return Fault.halfMadeKnot;
        this.row++;
        this.locked = NONE;
        return Fault.none;
      default:
        return Fault.unknownStep;
    }
  }

  /**
   * The column a knot counts for: that of the base string a lead ties onto. Where two hanging
   * strings tie each other, as in diagonal patterns, no string keeps its column: it is the slot
   * of the left one.
   */
  columnOfKnot(tying: number, held: number): number {
    const own = this.columnOf[held] as number;
    const wanders = own === NONE || this.columnOf[tying] !== NONE;
    return wanders ? Math.min(this.slotOf[held] as number, this.slotOf[tying] as number) : own;
  }

  private halfHitch(way: HalfWay, tying: number, held: number): Fault {
    if (tying >= this.count || held >= this.count) return Fault.unknownString;
    if (tying === held) return Fault.sameString;
    const tyingSlot = this.slotOf[tying] as number;
    const heldSlot = this.slotOf[held] as number;
    if (this.halfTying === NONE) {
      if (tyingSlot === NONE) return Fault.tyingNotInFront;
      if (heldSlot === NONE) return Fault.heldNotInFront;
      const needed = way === 'forward' ? 1 : -1;
      if (heldSlot - tyingSlot !== needed) {
        return heldSlot - tyingSlot === -needed ? Fault.wrongSide : Fault.notSideBySide;
      }
      this.halfTying = tying;
      this.halfHeld = held;
      this.halfFirst = way;
      this.halfLaid = NONE;
      this.locked = NONE;
      this.lead = tying;
      this.column = this.columnOfKnot(tying, held);
      return Fault.none;
    }
    if (this.halfTying !== tying || this.halfHeld !== held) return Fault.halfMadeKnot;
    if (way === this.halfFirst) {
      this.front[tyingSlot] = held;
      this.front[heldSlot] = tying;
      this.slotOf[tying] = heldSlot;
      this.slotOf[held] = tyingSlot;
    }
    this.locked = this.halfLaid;
    this.halfTying = NONE;
    this.halfHeld = NONE;
    this.halfLaid = NONE;
    return Fault.none;
  }

  private layThrough(string: number): Fault {
    if (string >= this.count) return Fault.unknownString;
    if (this.halfTying === NONE) return Fault.noHalfMadeKnot;
    if (this.slotOf[string] === NONE) return Fault.notInFront;
    if (string === this.halfTying || string === this.halfHeld) return Fault.partOfKnot;
    if (this.halfLaid !== NONE) return Fault.alreadyLaid;
    const apart = (this.slotOf[string] as number) - (this.slotOf[this.halfTying] as number);
    if (Math.abs(apart) !== 1) return Fault.notBesideKnot;
    this.halfLaid = string;
    return Fault.none;
  }

  private park(string: number, op: number): Fault {
    const fault = this.mayLeave(string);
    if (fault !== Fault.none) return fault;
    const through = op === Op.parkThrough;
    if (through && this.locked !== string) return Fault.notLocked;
    if (!through && this.locked === string) return Fault.lockedGoesThrough;
    const column = op === Op.parkBehind ? this.columnPassed(string) : this.column;
    this.close(string);
    this.leave(string, Whereabouts.parked);
    this.rest(string, this.row, column, routeOfOp(op));
    return Fault.none;
  }

  /**
   * The column of the knot a string is passed behind: the one half made, or the one that the
   * lead beside it is about to tie.
   */
  private columnPassed(string: number): number {
    if (this.halfTying !== NONE) return this.column;
    if (this.lead === NONE || this.lead === string) return this.column;
    const slot = this.slotOf[string] as number;
    const towards = (this.slotOf[this.lead] as number) - slot;
    if (Math.abs(towards) !== 1) return this.column;
    const next = slot + 2 * towards;
    if (next < 0 || next >= this.frontLength) return this.column;
    const own = this.columnOf[this.front[next] as number] as number;
    return own === NONE ? this.column : own;
  }

  private end(string: number): Fault {
    if (string >= this.count) return Fault.unknownString;
    const where = this.whereabouts[string];
    if (where !== Whereabouts.parked) {
      const fault = this.mayLeave(string);
      if (fault !== Fault.none) return fault;
      this.close(string);
    }
    this.leave(string, Whereabouts.ended);
    return Fault.none;
  }

  private mayLeave(string: number): Fault {
    if (string >= this.count) return Fault.unknownString;
    if (this.slotOf[string] === NONE) return Fault.notInFront;
    if (string === this.halfTying || string === this.halfHeld) return Fault.partOfKnot;
    if (string === this.halfLaid) return Fault.laidNotLocked;
    return Fault.none;
  }

  private enter(string: number, slot: number, from: number): Fault {
    if (string >= this.count) return Fault.unknownString;
    if (this.halfTying !== NONE) return Fault.halfMadeKnot;
    const where = this.whereabouts[string];
    if (where === Whereabouts.front) return Fault.alreadyInFront;
    if (where === Whereabouts.ended) return Fault.ended;
    if (where !== from) {
      return from === Whereabouts.parked ? Fault.neverAdded : Fault.addedBefore;
    }
    if (slot > this.frontLength) return Fault.noSuchSlot;
    this.front.copyWithin(slot + 1, slot, this.frontLength);
    this.front[slot] = string;
    this.frontLength++;
    for (let i = slot; i < this.frontLength; i++) this.slotOf[this.front[i] as number] = i;
    this.whereabouts[string] = Whereabouts.front;
    this.lead = string;
    return Fault.none;
  }

  /** Closes the gap a string leaves in the front. */
  private close(string: number): void {
    const slot = this.slotOf[string] as number;
    this.front.copyWithin(slot, slot + 1, this.frontLength);
    this.frontLength--;
    for (let i = slot; i < this.frontLength; i++) this.slotOf[this.front[i] as number] = i;
    this.slotOf[string] = NONE;
  }

  private leave(string: number, to: number): void {
    this.whereabouts[string] = to;
    this.since[string] = this.events++;
    if (this.lead === string) this.lead = NONE;
    if (this.locked === string) this.locked = NONE;
  }

  private rest(string: number, row: number, column: number, how: ParkRoute): void {
    this.parkedRow[string] = row;
    this.parkedColumn[string] = column;
    this.parkedBy[string] =
      how === 'through' ? Op.parkThrough : how === 'behind' ? Op.parkBehind : Op.parkDown;
  }

  private sorted(where: number): number[] {
    const found: number[] = [];
    for (let string = 0; string < this.count; string++) {
      if (this.whereabouts[string] === where) found.push(string);
    }
    return found.sort((one, other) => (this.since[one] as number) - (this.since[other] as number));
  }

  private halfMade(): HalfMade | null {
    if (this.halfTying === NONE) return null;
    return {
      tying: this.id(this.halfTying),
      held: this.id(this.halfHeld),
      first: this.halfFirst,
      laid: this.idOrNull(this.halfLaid),
    };
  }

  private id(string: number): StringId {
    return this.strings[string]?.id ?? '?';
  }

  private idOrNull(string: number): StringId | null {
    return string === NONE ? null : this.id(string);
  }
}
