import { InputError } from '../errors.js';
import type { HalfWay } from './knot.js';
import type { ParkRoute, Step } from './step.js';
import type { StringId, ThreadString } from './strings.js';

/** Step codes: what a step does, in one byte. */
export const Op = {
  halfForward: 0,
  halfBackward: 1,
  layThrough: 2,
  parkThrough: 3,
  parkBehind: 4,
  parkDown: 5,
  takeUp: 6,
  add: 7,
  end: 8,
  turn: 9,
} as const;
export type Op = (typeof Op)[keyof typeof Op];

const ROUTE_OF: readonly ParkRoute[] = ['through', 'behind', 'down'];

export function parkOp(route: ParkRoute): Op {
  return (Op.parkThrough + ROUTE_OF.indexOf(route)) as Op;
}

export function routeOfOp(op: number): ParkRoute {
  return ROUTE_OF[op - Op.parkThrough] ?? 'behind';
}

/** Stands for a string that the table of strings does not have. */
export const NO_STRING = 0xffff;

const indexOfTable = new WeakMap<readonly ThreadString[], Map<StringId, number>>();

/** Place of each string in a table of strings, by its id; made once for a table. */
export function stringIndex(strings: readonly ThreadString[]): ReadonlyMap<StringId, number> {
  let index = indexOfTable.get(strings);
  if (index === undefined) {
    index = new Map(strings.map((string, place) => [string.id, place]));
    indexOfTable.set(strings, index);
  }
  return index;
}

/**
 * A list of steps that cannot be changed, five bytes a step: a piece of three million knots
 * has some six million of them, too many for an object each.
 */
export class StepList implements Iterable<Step> {
  readonly strings: readonly ThreadString[];
  readonly length: number;
  /** Columns for hot loops: code, first operand (a string), second operand (a string or slot). */
  readonly op: Uint8Array;
  readonly a: Uint16Array;
  readonly b: Uint16Array;

  /**
   * @param length steps that there are; the columns may have room for more
   * @throws InputError when the columns hold fewer steps, or a code that stands for none
   */
  constructor(
    strings: readonly ThreadString[],
    op: Uint8Array,
    a: Uint16Array,
    b: Uint16Array,
    length: number,
  ) {
    checkColumns(op, a, b, length);
    this.strings = strings;
    this.op = op;
    this.a = a;
    this.b = b;
    this.length = length;
  }

  static from(strings: readonly ThreadString[], steps: Iterable<Step>): StepList {
    const builder = new StepListBuilder(strings);
    for (const step of steps) builder.push(step);
    return builder.finish();
  }

  /** The step at an index counted from 0. */
  at(index: number): Step {
    if (!(index >= 0 && index < this.length)) {
      throw new RangeError(`There is no step ${index}; the list has ${this.length}.`);
    }
    const op = this.op[index] as Op;
    const string = this.id(this.a[index] as number);
    const b = this.b[index] as number;
    switch (op) {
      case Op.halfForward:
      case Op.halfBackward: {
        const way: HalfWay = op === Op.halfForward ? 'forward' : 'backward';
        return { do: 'halfHitch', way, tying: string, held: this.id(b) };
      }
      case Op.layThrough:
        return { do: 'layThrough', string };
      case Op.parkThrough:
      case Op.parkBehind:
      case Op.parkDown:
        return { do: 'park', string, route: routeOfOp(op) };
      case Op.takeUp:
        return { do: 'takeUp', string, slot: b };
      case Op.add:
        return { do: 'add', string, slot: b };
      case Op.end:
        return { do: 'end', string };
      case Op.turn:
        return { do: 'turn' };
    }
  }

  *[Symbol.iterator](): IterableIterator<Step> {
    for (let i = 0; i < this.length; i++) yield this.at(i);
  }

  private id(place: number): StringId {
    return this.strings[place]?.id ?? '?';
  }
}

function checkColumns(op: Uint8Array, a: Uint16Array, b: Uint16Array, length: number): void {
  const room = Math.min(op.length, a.length, b.length);
  if (!Number.isInteger(length) || length < 0 || length > room) {
    throw new InputError(
      'steps-incomplete',
      `The list is to have ${String(length)} steps, but its columns hold ${room}.`,
      {},
      'Give columns of at least as many entries as there are steps.',
    );
  }
  for (let i = 0; i < length; i++) {
    if ((op[i] as number) <= Op.turn) continue;
    throw new InputError(
      'unknown-step',
      `Step ${i + 1} has the code ${op[i]}, which stands for no step.`,
      { path: `step ${i + 1}` },
      `Codes go from 0 to ${Op.turn}.`,
    );
  }
}

/** Collects steps; `finish` hands the list over and leaves the builder empty. */
export class StepListBuilder {
  private readonly strings: readonly ThreadString[];
  private op: Uint8Array;
  private a: Uint16Array;
  private b: Uint16Array;
  private count = 0;

  constructor(strings: readonly ThreadString[], expected = 1024) {
    this.strings = strings;
    const room = Math.max(16, expected);
    this.op = new Uint8Array(room);
    this.a = new Uint16Array(room);
    this.b = new Uint16Array(room);
  }

  get length(): number {
    return this.count;
  }

  /** Adds a step by its code and operands, which are places in the table of strings. */
  code(op: Op, a = 0, b = 0): void {
    if (this.count === this.op.length) this.grow();
    this.op[this.count] = op;
    this.a[this.count] = a;
    this.b[this.count] = b;
    this.count++;
  }

  push(step: Step): void {
    switch (step.do) {
      case 'halfHitch':
        this.code(
          step.way === 'forward' ? Op.halfForward : Op.halfBackward,
          this.place(step.tying),
          this.place(step.held),
        );
        return;
      case 'layThrough':
        this.code(Op.layThrough, this.place(step.string));
        return;
      case 'park':
        this.code(parkOp(step.route), this.place(step.string));
        return;
      case 'takeUp':
      case 'add':
        this.code(Op[step.do], this.place(step.string), clampSlot(step.slot));
        return;
      case 'end':
        this.code(Op.end, this.place(step.string));
        return;
      case 'turn':
        this.code(Op.turn);
    }
  }

  finish(): StepList {
    const { strings, op, a, b, count } = this;
    this.count = 0;
    return new StepList(strings, op.slice(0, count), a.slice(0, count), b.slice(0, count), count);
  }

  private place(id: StringId): number {
    return stringIndex(this.strings).get(id) ?? NO_STRING;
  }

  private grow(): void {
    const room = this.op.length * 2;
    const grown = <T extends Uint8Array | Uint16Array>(old: T, fresh: T): T => {
      fresh.set(old);
      return fresh;
    };
    this.op = grown(this.op, new Uint8Array(room));
    this.a = grown(this.a, new Uint16Array(room));
    this.b = grown(this.b, new Uint16Array(room));
  }
}

/** Slots outside 16 bits, and what is no whole number, become a slot no front can have. */
function clampSlot(slot: number): number {
  return Number.isInteger(slot) && slot >= 0 && slot < 0xffff ? slot : 0xffff;
}
