import type { StringRole } from '@halfhitch/core';
import type { Spread } from './spread.js';

/** What a strand of a chunk is. */
export type StrandPart =
  /** A base string in its knots. */
  | 'base'
  /** A lead in its knots, between them, and through to the back. */
  | 'lead'
  /** A lead behind the work, from where it was parked to where it comes up. */
  | 'float'
  /** A loose end: of base strings above and below, of leads at the back and at the very end. */
  | 'tail';

/** A piece of a string: points `first` to `first + count - 1` of its chunk. */
export interface FabricStrand {
  readonly string: string;
  readonly role: StringRole;
  /** `#rrggbb` */
  readonly colour: string;
  readonly part: StrandPart;
  /** mm */
  readonly radius: number;
  readonly first: number;
  readonly count: number;
  /** Whether one of its ends is an end of a strand in the chunk above: the same point. */
  readonly fromAbove: boolean;
  /** Whether one of its ends is an end of a strand in the chunk below. */
  readonly toBelow: boolean;
  /** Knots of a lead, four numbers each: row, column, first point, number of points. */
  readonly knots?: Int32Array;
}

/** Some rows of a piece. */
export interface FabricChunk {
  readonly firstRow: number;
  readonly rowCount: number;
  /** xyz triplets, mm. */
  readonly points: Float32Array;
  readonly strands: readonly FabricStrand[];
}

export interface StrandHead {
  readonly string: string;
  readonly role: StringRole;
  readonly colour: string;
  readonly part: StrandPart;
  readonly radius: number;
  readonly fromAbove?: boolean;
}

/** Collects the points and strands of a chunk. Reused from chunk to chunk; what it hands out is a copy. */
export class ChunkWriter {
  private points = new Float32Array(3 * 4096);
  private length = 0;
  private strands: FabricStrand[] = [];
  private open: { head: StrandHead; first: number; knots: number[] } | null = null;

  constructor(
    private readonly scaleX: number,
    private readonly scaleY: number,
    private readonly scaleZ: number,
    private readonly spread: Spread | null,
    private readonly rowHeight: number,
  ) {}

  begin(head: StrandHead): void {
    this.end();
    this.open = { head, first: this.length / 3, knots: [] };
  }

  get isOpen(): boolean {
    return this.open !== null;
  }

  /** A point of the closed piece, in tying diameters. */
  add(x: number, y: number, z: number): void {
    if (this.length + 3 > this.points.length) {
      const more = new Float32Array(this.points.length * 2);
      more.set(this.points);
      this.points = more;
    }
    this.points[this.length++] =
      (this.spread === null ? x : this.spread.x(x, y / this.rowHeight)) * this.scaleX;
    this.points[this.length++] = y * this.scaleY;
    this.points[this.length++] = z * this.scaleZ;
  }

  /** Points of a polyline; where the piece spreads, with more between, a row apart at most. */
  addStraight(points: readonly number[]): void {
    for (let i = 0; i < points.length; i += 3) {
      if (i > 0 && this.spread !== null) {
        const dx = points[i]! - points[i - 3]!;
        const dy = points[i + 1]! - points[i - 2]!;
        const dz = points[i + 2]! - points[i - 1]!;
        const parts = Math.ceil(Math.hypot(dx, dy) / this.rowHeight);
        for (let k = 1; k < parts; k++) {
          const f = k / parts - 1;
          this.add(points[i]! + dx * f, points[i + 1]! + dy * f, points[i + 2]! + dz * f);
        }
      }
      this.add(points[i]!, points[i + 1]!, points[i + 2]!);
    }
  }

  /**
   * Points of a curve at its place; `side` -1 for its mirror image. The first one is left out where
   * the strand is already there.
   */
  follow(curve: Float64Array, x: number, y: number, side = 1): void {
    const begun = this.length / 3 > this.open!.first;
    for (let i = begun ? 3 : 0; i < curve.length; i += 3) {
      this.add(curve[i]! * side + x, curve[i + 1]! + y, curve[i + 2]!);
    }
  }

  knot(row: number, column: number, curve: Float64Array, x: number, y: number): void {
    const open = this.open!;
    const first = Math.max(this.length / 3 - 1, open.first);
    this.follow(curve, x, y);
    open.knots.push(row, column, first, this.length / 3 - first);
  }

  end(toBelow = false): void {
    const { open } = this;
    if (open === null) return;
    this.open = null;
    const count = this.length / 3 - open.first;
    if (count < 2) {
      this.length = open.first * 3;
      return;
    }
    const { fromAbove = false, ...head } = open.head;
    this.strands.push({
      ...head,
      first: open.first,
      count,
      fromAbove,
      toBelow,
      ...(open.knots.length > 0 ? { knots: Int32Array.from(open.knots) } : {}),
    });
  }

  finish(firstRow: number, rowCount: number): FabricChunk {
    this.end();
    const chunk = {
      firstRow,
      rowCount,
      points: this.points.slice(0, this.length),
      strands: this.strands,
    };
    this.length = 0;
    this.strands = [];
    return chunk;
  }
}
