import { knotsAcross } from '../../diagonal/lattice.js';
import type { Problem } from '../problem.js';

/** Rows and slots, the ends not included. */
export interface Window {
  readonly rows: readonly [number, number];
  readonly slots: readonly [number, number];
}

/** Finds the knots of a window quickly. */
export class KnotFinder {
  readonly #strings: number;
  readonly #slotOf: Int32Array;
  /** First knot of each row, and the number of knots at the end. */
  readonly #rowBegins: Int32Array;
  readonly rowOf: Int32Array;

  constructor({ picture, net }: Problem) {
    const across = knotsAcross(picture);
    this.#strings = picture.strings;
    this.rowOf = net.cells.map((cell) => Math.floor(cell / across));
    this.#slotOf = net.cells.map((cell, knot) => {
      const row = this.rowOf[knot] as number;
      return ((picture.first + row) % 2) + 2 * (cell % across);
    });
    this.#rowBegins = new Int32Array(picture.rows + 1).fill(net.knots);
    for (let knot = net.knots - 1; knot >= 0; knot--) {
      this.#rowBegins[this.rowOf[knot] as number] = knot;
    }
    for (let row = picture.rows - 1; row >= 0; row--) {
      // A row without knots begins where the next one does.
      const next = this.#rowBegins[row + 1] as number;
      if ((this.#rowBegins[row] as number) > next) this.#rowBegins[row] = next;
    }
  }

  /** Slot of the left string of a knot. */
  slotOf(knot: number): number {
    return this.#slotOf[knot] as number;
  }

  /** Knots both of whose strings are in the window. */
  inside({ rows, slots }: Window): number[] {
    const last = this.#rowBegins.length - 1;
    const from = this.#rowBegins[Math.max(0, Math.min(rows[0], last))] as number;
    const to = this.#rowBegins[Math.max(0, Math.min(rows[1], last))] as number;
    const knots: number[] = [];
    for (let knot = from; knot < to; knot++) {
      const slot = this.#slotOf[knot] as number;
      if (slot >= slots[0] && slot + 1 < slots[1]) knots.push(knot);
    }
    return knots;
  }

  /** A window of a size with a knot somewhere in it, within the work as far as it can be. */
  about(knot: number, rows: number, slots: number, chance: () => number): Window {
    const across = (at: number, size: number, all: number): [number, number] => {
      if (size >= all) return [0, all];
      const from = Math.round(at - chance() * (size - 2));
      const begin = Math.max(0, Math.min(from, all - size));
      return [begin, begin + size];
    };
    return {
      rows: across(this.rowOf[knot] as number, rows, this.#rowBegins.length - 1),
      slots: across(this.#slotOf[knot] as number, slots, this.#strings),
    };
  }
}
