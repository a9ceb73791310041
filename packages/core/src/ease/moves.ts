import { type Count, looks } from './count.js';
import type { Stints } from './stints.js';

/**
 * A change of the drawing along the thread: knots from `first` up to before `end`, in the order of
 * knotting, take the colour of the stint before or after them.
 */
export interface Move {
  readonly kind: 'lone-knot' | 'short-run' | 'edge-knot';
  readonly first: number;
  readonly end: number;
  readonly to: number;
  readonly gain: Count;
}

/**
 * Says what moves would save, from the stints nearby alone: where a lead rests and where it comes
 * back depend on no others.
 */
export class Moves {
  private readonly look: Uint8Array;

  constructor(
    readonly stints: Stints,
    private readonly longFloat: number,
  ) {
    this.look = looks(stints.chart);
  }

  /** A whole stint in the colour of the one before it; null for the first. */
  intoBefore(stint: number): Move | null {
    const { stints } = this;
    if (stint === 0) return null;
    const to = stints.colour[stint - 1] as number;
    const last = stint + 1 === stints.count;
    if (!last && stints.colour[stint + 1] === to) return this.closed(stint, to);
    const gain = nothing();
    this.unfloat(gain, stint);
    this.bridge(gain, stint);
    const takeOver = stints.start[stint + 1] as number;
    this.rerest(gain, stint - 1, takeOver);
    this.change(gain, stint, 1);
    if (!last) {
      this.change(gain, stint + 1, 1);
      this.changeAt(gain, to, stints.colour[stint + 1] as number, takeOver, -1);
    }
    return this.move(stint, to, gain);
  }

  /** A whole stint in the colour of the one after it; null for the last. */
  intoAfter(stint: number): Move | null {
    const { stints } = this;
    if (stint + 1 === stints.count) return null;
    const to = stints.colour[stint + 1] as number;
    const first = stint === 0;
    if (!first && stints.colour[stint - 1] === to) return null; // the same as into the one before
    const gain = nothing();
    const takeOver = stints.start[stint] as number;
    this.unfloat(gain, stint);
    this.bridge(gain, stint);
    this.refloat(gain, stint + 1, takeOver);
    this.change(gain, stint + 1, 1);
    if (!first) {
      this.change(gain, stint, 1);
      this.changeAt(gain, stints.colour[stint - 1] as number, to, takeOver, -1);
    }
    return this.move(stint, to, gain);
  }

  /**
   * The change at the start of a stint one knot later, so that the stint before takes over its
   * first knot, or one earlier. Both stints must be longer than that.
   */
  shifted(stint: number, by: 1 | -1): Move | null {
    const { stints } = this;
    if (stint === 0 || stints.length(by === 1 ? stint : stint - 1) < 2) return null;
    const takeOver = stints.start[stint] as number;
    const gain = nothing();
    this.rerest(gain, stint - 1, takeOver + by);
    this.refloat(gain, stint, takeOver + by);
    this.change(gain, stint, 1);
    const [from, to] = [stints.colour[stint - 1] as number, stints.colour[stint] as number];
    this.changeAt(gain, from, to, takeOver + by, -1);
    const first = by === 1 ? takeOver : takeOver - 1;
    return { kind: 'edge-knot', first, end: first + 1, to: by === 1 ? from : to, gain };
  }

  /** Between two stints of one colour: all three become one. */
  private closed(stint: number, to: number): Move {
    const gain = nothing();
    this.unfloat(gain, stint);
    this.bridge(gain, stint);
    this.unfloat(gain, stint + 1);
    this.change(gain, stint, 1);
    this.change(gain, stint + 1, 1);
    return this.move(stint, to, gain);
  }

  private move(stint: number, to: number, gain: Count): Move {
    const { stints } = this;
    const first = stints.start[stint] as number;
    const end = stints.start[stint + 1] as number;
    const order = first % stints.columns;
    const alone = end - first === 1;
    const edge = alone && (order === 0 || order === stints.columns - 1);
    return { kind: edge ? 'edge-knot' : alone ? 'lone-knot' : 'short-run', first, end, to, gain };
  }

  private change(gain: Count, stint: number, sign: number): void {
    const { stints } = this;
    const [from, to] = [stints.colour[stint - 1] as number, stints.colour[stint] as number];
    this.changeAt(gain, from, to, stints.start[stint] as number, sign);
  }

  private changeAt(gain: Count, from: number, to: number, takeOver: number, sign: number): void {
    if (this.look[from] === this.look[to]) return;
    gain.changes += sign;
    if (this.stints.atEdge(takeOver)) gain.edgeChanges += sign;
  }

  /** The float that ends where a stint begins is no more. */
  private unfloat(gain: Count, stint: number): void {
    const { stints } = this;
    const before = stints.before[stint] as number;
    if (before < 0) return;
    this.count(gain, stints.start[before + 1] as number, stints.start[stint] as number, 1);
  }

  /** The stint's lead floats past it, from its stint before to the one after. */
  private bridge(gain: Count, stint: number): void {
    const { stints } = this;
    const after = stints.after[stint] as number;
    if (after < 0) return;
    this.unfloat(gain, after);
    const before = stints.before[stint] as number;
    if (before < 0) return;
    this.count(gain, stints.start[before + 1] as number, stints.start[after] as number, -1);
  }

  /** The stint's lead rests where another takes over at `takeOver`. */
  private rerest(gain: Count, stint: number, takeOver: number): void {
    const { stints } = this;
    const after = stints.after[stint] as number;
    if (after < 0) return;
    this.unfloat(gain, after);
    this.count(gain, takeOver, stints.start[after] as number, -1);
  }

  /** The stint begins at `knot`. */
  private refloat(gain: Count, stint: number, knot: number): void {
    const { stints } = this;
    const before = stints.before[stint] as number;
    if (before < 0) return;
    this.unfloat(gain, stint);
    this.count(gain, stints.start[before + 1] as number, knot, -1);
  }

  private count(gain: Count, takenOver: number, returns: number, sign: number): void {
    const { stints } = this;
    const float = stints.float(stints.restAt(takenOver), returns);
    gain.floats += sign;
    gain.floatKnots += sign * float;
    if (float > this.longFloat) gain.longFloats += sign;
  }
}

export function nothing(): Count {
  return { changes: 0, edgeChanges: 0, floats: 0, floatKnots: 0, longFloats: 0 };
}
