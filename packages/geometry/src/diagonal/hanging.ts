import { slotOfPlace } from '@halfhitch/core';
import { type LatticeWork, NO_KNOT } from './knots.js';
import { latticeKnots, type Strand } from './shapes.js';
import { spacing } from './spacing.js';
import { HANGING, wayOut } from './ways.js';

/** How far strings hang down below the row in work, in diameters. */
const BELOW = 14;

/** How soon a string that is drawn out of a knot hangs straight. */
const STRAIGHT = 2.6;

/** What hangs of a string below the knots it is in so far. Diameters of the thread. */
export interface HangingString {
  /** Slot of the string at the start, which names it. */
  readonly string: number;
  readonly points: Float64Array;
}

/** Which knots each string goes through, in time. */
export class HangingStrings {
  /** Cells of the knots in the order of knotting. */
  private readonly cells: Int32Array;
  /** For each string where its knots are among those, from `from[s]` to before `from[s + 1]`. */
  private readonly from: Int32Array;
  private readonly orders: Int32Array;

  constructor(private readonly work: LatticeWork) {
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

  /**
   * What hangs when so many knots are tied. A string whose knot is half tied hangs from where it has
   * come to in the knot.
   */
  at(position: number): HangingString[] {
    const { rows, across } = this.work;
    const now = Math.max(0, Math.min(this.cells.length, position));
    const inWork = this.cells[Math.max(0, Math.ceil(now) - 1)] ?? 0;
    const row = Math.min(rows - 1, Math.floor(inWork / across));
    const bottom = row * spacing().row + BELOW;
    return this.work.strings.map((_, string) => ({
      string,
      points: Float64Array.from(this.hanging(string, now, bottom)),
    }));
  }

  private hanging(string: number, now: number, bottom: number): number[] {
    const begun = this.begunBefore(string, now);
    const { slot, row } = spacing();
    if (begun < 0) {
      const x = string * slot;
      return [x, -HANGING.above, 0, x, bottom, 0];
    }
    const { kinds, tying, across } = this.work;
    const cell = this.cells[begun]!;
    const code = kinds[cell]!;
    const knot = latticeKnots()[code]!;
    const strand = tying[cell] === string ? knot.tying : knot.held;
    const [cellRow, place] = [Math.floor(cell / across), cell % across];
    const x = (slotOfPlace(this.work, cellRow, place) + 0.5) * slot;
    const y = cellRow * row;
    const part = Math.min(1, now - begun);
    const out =
      part < 1 ? fromWithin(strand, part, slot) : [...wayOut(code, strand.goes).levels[1]!];
    for (let i = 0; i < out.length; i += 3) {
      out[i]! += x;
      out[i + 1]! += y;
    }
    const n = out.length;
    // Further down, or not so far, than a string hangs from its last knot of all.
    if (out[n - 5]! + 1 < bottom) out[n - 2] = bottom;
    return out;
  }

  /** The string's last knot that is begun, in the order of knotting; -1 for none. */
  private begunBefore(string: number, now: number): number {
    let low = this.from[string]!;
    let high = this.from[string + 1]!;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.orders[middle]! < now) low = middle + 1;
      else high = middle;
    }
    return low > this.from[string]! ? this.orders[low - 1]! : -1;
  }
}

/** From a place within a knot down to where the string hangs. */
function fromWithin(strand: Strand, part: number, slot: number): number[] {
  const { points, from, to, goes } = strand;
  const at = from + part * (to - from);
  const i = Math.min(Math.floor(at), to - 1);
  const [x, y, z] = [0, 1, 2].map((c) => {
    const a = points[3 * i + c]!;
    return a + (points[3 * i + 3 + c]! - a) * (at - i);
  }) as [number, number, number];
  const below = (goes * slot) / 2;
  return [
    ...[x, y, z],
    ...[x + (below - x) * 0.4, y + STRAIGHT * 0.35, Math.max(z, 1.6)],
    ...[x + (below - x) * 0.85, y + STRAIGHT * 0.75, 1.2],
    ...[below, y + STRAIGHT * 1.4, 0.5],
    ...[below, y + STRAIGHT * 2.2, 0],
    ...[below, y + BELOW, 0],
  ];
}
