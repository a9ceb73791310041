import {
  checkDiagonalPattern,
  type DiagonalPattern,
  firstSlotOf,
  hangingStrings,
  KNOT_KINDS,
  type KnotKind,
  knotIndex,
  knotsAcross,
  NO_KNOT,
  simulateDiagonal,
  slotOfPlace,
  type ThreadString,
} from '@halfhitch/core';

/** A knot of a pattern in the order of knotting. */
export interface LatticeKnotting {
  readonly row: number;
  readonly place: number;
  /** Among the knots of its row, from 0. */
  readonly order: number;
  /** Slot of its left string, from 0. */
  readonly slot: number;
  readonly kind: KnotKind;
  readonly tying: ThreadString;
  readonly held: ThreadString;
}

/** The knots of a pattern one after another: row by row, each row from the left. */
export class LatticeOrder {
  readonly strings: readonly ThreadString[];
  /** How many knots there are. */
  readonly length: number;
  private readonly across: number;
  /** Knots tied before each row, and all of them. */
  private readonly beforeRow: Int32Array;
  private readonly cells: Int32Array;
  private readonly tying: Uint16Array;
  private readonly held: Uint16Array;
  /** String in each slot before each row. */
  private readonly slots: Uint16Array;

  /** @throws InputError when the pattern is outside the limits, or not whole */
  constructor(readonly pattern: DiagonalPattern) {
    checkDiagonalPattern(pattern);
    const { rows, knots } = pattern;
    const { tying, held, order } = simulateDiagonal(pattern);
    this.strings = hangingStrings(pattern);
    this.across = knotsAcross(pattern);
    this.tying = tying;
    this.held = held;
    this.slots = order;
    this.beforeRow = new Int32Array(rows + 1);
    const cells: number[] = [];
    for (let row = 0; row < rows; row++) {
      this.beforeRow[row] = cells.length;
      for (let cell = row * this.across; cell < (row + 1) * this.across; cell++) {
        if (knots[cell] !== NO_KNOT) cells.push(cell);
      }
    }
    this.beforeRow[rows] = cells.length;
    this.cells = Int32Array.from(cells);
    this.length = cells.length;
  }

  /** Knots tied before a place. */
  before(row: number, place: number): number {
    let many = this.beforeRow[row] as number;
    const cell = knotIndex(this.pattern, row, place);
    while (many < this.length && (this.cells[many] as number) < cell) many++;
    return many;
  }

  knotsOf(row: number): number {
    return (this.beforeRow[row + 1] as number) - (this.beforeRow[row] as number);
  }

  knot(number: number): LatticeKnotting | undefined {
    const cell = this.cells[number];
    if (cell === undefined) return undefined;
    const row = Math.floor(cell / this.across);
    const place = cell % this.across;
    return {
      row,
      place,
      order: number - (this.beforeRow[row] as number),
      slot: slotOfPlace(this.pattern, row, place),
      kind: KNOT_KINDS[this.pattern.knots[cell] as number] as KnotKind,
      tying: this.strings[this.tying[cell] as number] as ThreadString,
      held: this.strings[this.held[cell] as number] as ThreadString,
    };
  }

  /** The outermost strings that have no neighbour in a row; null where they have one. */
  idling(row: number): { readonly left: ThreadString | null; readonly right: ThreadString | null } {
    const { strings } = this.pattern;
    const first = firstSlotOf(this.pattern, row);
    const inSlot = (slot: number) =>
      this.strings[this.slots[row * strings + slot] as number] as ThreadString;
    return {
      left: first === 1 ? inSlot(0) : null,
      right: (strings - first) % 2 === 1 ? inSlot(strings - 1) : null,
    };
  }

  /** The row in work at a time, and how far it is. */
  rowAt(position: number): number {
    const knot = this.knot(Math.min(this.length - 1, Math.floor(position)));
    if (knot === undefined) return 0;
    const begun = this.beforeRow[knot.row] as number;
    return knot.row + Math.min(1, (position - begun) / this.knotsOf(knot.row));
  }

  /** The first knot that a string is part of, in the order of knotting; -1 for none. */
  firstOf(string: number): number {
    this.firsts ??= this.findFirsts();
    return this.firsts[string] ?? -1;
  }
  private firsts: Int32Array | null = null;

  private findFirsts(): Int32Array {
    const firsts = new Int32Array(this.strings.length).fill(-1);
    for (let k = this.length - 1; k >= 0; k--) {
      const cell = this.cells[k] as number;
      firsts[this.tying[cell] as number] = k;
      firsts[this.held[cell] as number] = k;
    }
    return firsts;
  }
}
