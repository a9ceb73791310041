import type { KnotSequence } from './sequence.js';
import type { Strand } from './shapes.js';
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

/** Strings below the work as it grows. */
export class HangingStrings {
  constructor(private readonly knots: KnotSequence) {}

  /**
   * What hangs when so many knots are tied. A string whose knot is half tied hangs from where it has
   * come to in the knot.
   */
  at(position: number): HangingString[] {
    const { cells, work } = this.knots;
    const now = Math.max(0, Math.min(cells.length, position));
    const inWork = cells[Math.max(0, Math.ceil(now) - 1)] ?? 0;
    const bottom = this.knots.rowOf(inWork) * spacing().row + BELOW;
    return work.strings.map((_, string) => ({
      string,
      points: Float64Array.from(this.hanging(string, now, bottom)),
    }));
  }

  private hanging(string: number, now: number, bottom: number): number[] {
    const begun = this.knots.lastBegun(string, now);
    const { slot } = spacing();
    if (begun < 0) {
      const x = string * slot;
      return [x, -HANGING.above, 0, x, bottom, 0];
    }
    const cell = this.knots.cells[begun]!;
    const code = this.knots.kindOf(cell);
    const strand = this.knots.strandOf(string, cell);
    const [x, y] = this.knots.placeOf(cell);
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
