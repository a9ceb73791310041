import type { DiagonalPattern } from '@halfhitch/core';
import {
  DiagonalFabric,
  type DiagonalStrand,
  LATTICE_FULLNESS,
  PASS_FIELDS,
} from '@halfhitch/geometry/diagonal';
import type { Level } from '@halfhitch/geometry/fabric';
import type { Box } from '../thread/thread-line.js';
import {
  BEGUN,
  type Chunks,
  chunksOfRows,
  HUNG_FULLNESS,
  type PieceStrand,
  upright,
} from './chunks.js';
import type { LatticeOrder } from './lattice-order.js';

/** A whole piece of diagonal work. */
export class LatticeChunks implements Chunks {
  readonly fullness = LATTICE_FULLNESS;
  readonly flatFullness = 1.25;
  readonly hungFullness = HUNG_FULLNESS;
  readonly mirror: boolean;
  private readonly fabric: DiagonalFabric;
  private readonly strings: ReadonlyMap<string, number>;

  constructor(
    private readonly pattern: DiagonalPattern,
    private readonly order: LatticeOrder,
    mirror = false,
  ) {
    this.mirror = mirror;
    this.fabric = new DiagonalFabric(pattern);
    this.strings = new Map(Array.from(pattern.start, (_, slot) => [`S${slot + 1}`, slot]));
  }

  /** A knot lies over two slots, but is no wider than the next row's one beside it leaves room for. */
  get pitch(): number {
    return 1.4 * this.fabric.slotPitch;
  }

  chunksOf(from: number, to: number): { readonly first: number; readonly last: number } {
    return chunksOfRows(this.fabric, from, to);
  }

  boxOf(from: number, to: number): Box {
    const { slotPitch, rowHeight } = this.fabric;
    const [left, right] = [-slotPitch, this.pattern.strings * slotPitch];
    return {
      min: [this.mirror ? -right : left, -to * rowHeight, -2],
      max: [this.mirror ? -left : right, -from * rowHeight, 2],
    };
  }

  strands(chunk: number, level: Level): PieceStrand[] {
    const built = this.fabric.chunk(chunk, level);
    return (
      built.strands
        // What hangs below is drawn as far as the work has come.
        .filter((strand) => strand.part !== 'tail' || this.isAbove(built.points, strand))
        .map((strand) => ({
          string: this.strings.get(strand.string) ?? -1,
          colour: strand.colour,
          radius: strand.radius,
          points: upright(built.points, strand, this.mirror ? -1 : 1),
          when: this.timesOf(strand),
        }))
    );
  }

  hanging(time: number): PieceStrand[] {
    return this.fabric.hanging(time).map(({ string, colour, radius, points }) => ({
      string: this.strings.get(string) ?? -1,
      colour,
      radius,
      points: upright(points, { first: 0, count: points.length / 3 }, this.mirror ? -1 : 1),
      when: new Float32Array(points.length / 3).fill(-1),
    }));
  }

  /** Where a knot lies, in mm, y up. */
  placeOf(row: number, place: number): readonly [number, number, number] {
    const [x, y] = this.fabric.placeOf({ row, place });
    return [this.mirror ? -x : x, -y, 0];
  }

  private isAbove(points: Float32Array, { first, count, passes }: DiagonalStrand): boolean {
    return passes.length === 0 && this.startsAtTop(points, first) && count > 2;
  }

  private startsAtTop(points: Float32Array, first: number): boolean {
    return (points[3 * first + 1] as number) < -this.fabric.rowHeight;
  }

  private timesOf({ string, first, count, passes }: DiagonalStrand): Float32Array {
    const when = new Float32Array(count);
    if (passes.length === 0) {
      const begins = this.order.firstOf(this.strings.get(string) ?? -1);
      return when.fill(begins < 0 ? Number.POSITIVE_INFINITY : begins + BEGUN / 2);
    }
    let reached = 0;
    for (let k = 0; k < passes.length; k += PASS_FIELDS) {
      const [row, place, at, many] = passes.subarray(k, k + PASS_FIELDS) as unknown as number[];
      const order = this.order.before(row as number, place as number);
      const from = (at as number) - first;
      const steps = Math.max(1, (many as number) - 1);
      // The way to a knot is there as soon as the knot is begun.
      for (; reached < from; reached++) when[reached] = order + BEGUN / 2;
      for (; reached <= from + steps && reached < count; reached++) {
        when[reached] = order + Math.max(BEGUN / 2, (reached - from) / steps);
      }
    }
    return when;
  }
}
