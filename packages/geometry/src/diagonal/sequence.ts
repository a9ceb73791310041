import { slotOfPlace } from '@halfhitch/core';
import { type LatticeWork, NO_KNOT } from './knots.js';
import { type LatticeKnot, latticeKnots, type Strand } from './shapes.js';
import { spacing } from './spacing.js';

/** The knots of some work in the order of knotting, and those of each string. */
export class KnotSequence {
  /** Place of each knot in the arrays of the lattice. */
  readonly cells: Int32Array;
  /** For each string where its knots are among `orders`: from `from[s]` to before `from[s + 1]`. */
  private readonly from: Int32Array;
  private readonly orders: Int32Array;

  constructor(readonly work: LatticeWork) {
    const { strings, kinds, tying, held } = work;
    const count = kinds.reduce((sum, kind) => sum + (kind === NO_KNOT ? 0 : 1), 0);
    this.cells = new Int32Array(count);
    this.from = new Int32Array(strings.length + 1);
    let order = 0;
    kinds.forEach((kind, cell) => {
      if (kind === NO_KNOT) return;
      this.cells[order++] = cell;
      for (const string of [tying[cell]!, held[cell]!]) this.from[string + 1]!++;
    });
    for (let k = 0; k < strings.length; k++) this.from[k + 1]! += this.from[k]!;
    this.orders = new Int32Array(2 * count);
    const next = this.from.slice();
    this.cells.forEach((cell, at) => {
      for (const string of [tying[cell]!, held[cell]!]) this.orders[next[string]!++] = at;
    });
  }

  /** The string's last knot that is begun before a time, in the order of knotting; -1 for none. */
  lastBegun(string: number, time: number): number {
    const found = this.countBegun(string, time);
    return found > 0 ? this.orders[this.from[string]! + found - 1]! : -1;
  }

  /** The string's last knots begun before a time, at most so many, the earliest first. */
  lastKnots(string: number, time: number, most: number): Int32Array {
    const end = this.from[string]! + this.countBegun(string, time);
    return this.orders.subarray(Math.max(this.from[string]!, end - most), end);
  }

  rowOf(cell: number): number {
    return Math.floor(cell / this.work.across);
  }

  slotOf(cell: number): number {
    return slotOfPlace(this.work, this.rowOf(cell), cell % this.work.across);
  }

  /** Middle of a knot's place, in diameters. */
  placeOf(cell: number): readonly [x: number, y: number] {
    const { slot, row } = spacing();
    return [(this.slotOf(cell) + 0.5) * slot, this.rowOf(cell) * row];
  }

  kindOf(cell: number): number {
    return this.work.kinds[cell]!;
  }

  /** A string's part of a knot. */
  strandOf(string: number, cell: number): Strand {
    const knot = latticeKnots()[this.kindOf(cell)] as LatticeKnot;
    return this.work.tying[cell] === string ? knot.tying : knot.held;
  }

  private countBegun(string: number, time: number): number {
    let low = this.from[string]!;
    let high = this.from[string + 1]!;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.orders[middle]! < time) low = middle + 1;
      else high = middle;
    }
    return low - this.from[string]!;
  }
}
