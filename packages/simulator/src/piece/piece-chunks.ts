import { directionOf, type Plan } from '@halfhitch/core';
import {
  FABRIC_FULLNESS,
  Fabric,
  type FabricChunk,
  type FabricStrand,
  type Level,
  levelFor,
} from '@halfhitch/geometry/fabric';
import type { Box } from '../thread/thread-line.js';
import {
  BEGUN,
  type Chunks,
  type ChunkView,
  chunksOfRows,
  type PieceStrand,
  upright,
} from './chunks.js';
import { looseEnds, type WorkedStrand } from './loose-ends.js';

/** Rows below the last one to which loose ends hang. */
const HANGS = 3;

/** The level of detail for a view in which a knot is so many CSS pixels wide. */
export function levelOf(pixelsPerKnot: number): Level {
  return levelFor(pixelsPerKnot);
}

/** A whole alpha piece. */
export class PieceChunks implements Chunks {
  readonly fullness = FABRIC_FULLNESS;
  readonly flatFullness = FABRIC_FULLNESS;
  readonly hungFullness = FABRIC_FULLNESS;
  readonly plan: Plan;
  /** Whether it is the mirror image, as the left hand knots it. */
  readonly mirror: boolean;
  private readonly fabric: Fabric;
  private readonly strings: ReadonlyMap<string, number>;
  /** Strands of the view by chunk and level, since what hangs is cut from them at every moment. */
  private readonly inView = new Map<string, readonly WorkedStrand[]>();

  /** @throws GeometryError, InputError as `Fabric` does */
  constructor(plan: Plan, mirror = false) {
    this.plan = plan;
    this.mirror = mirror;
    this.fabric = new Fabric(plan);
    this.strings = new Map(plan.strings.map(({ id }, place) => [id, place]));
  }

  get pitch(): number {
    return this.fabric.pitch;
  }

  get rowHeight(): number {
    return this.fabric.rowHeight;
  }

  /** First and last chunk that rows from `from` up to `to` lie in. */
  chunksOf(from: number, to: number): { readonly first: number; readonly last: number } {
    return chunksOfRows(this.fabric, from, to);
  }

  /** Room for rows, in mm, y up; it follows rows that are not whole numbers. */
  boxOf(from: number, to: number): Box {
    const { columns } = this.plan;
    // As wide as the piece is anywhere, with a knot's width on either side.
    const out = this.pitch + (this.fabric.size.greatestWidth - this.fabric.size.leastWidth) / 2;
    const [left, right] = [-out, (columns - 1) * this.pitch + out];
    return {
      min: [this.mirror ? -right : left, -to * this.rowHeight, -2],
      max: [this.mirror ? -left : right, -from * this.rowHeight, 2],
    };
  }

  strands(chunk: number, level: Level): readonly WorkedStrand[] {
    const key = `${chunk}/${level}`;
    const known = this.inView.get(key);
    if (known !== undefined) return known;
    const built = this.fabric.chunk(chunk, level);
    const strands = built.strands.map((strand) => ({
      part: strand.part,
      parks: strand.part === 'lead' && !strand.toBelow,
      string: this.strings.get(strand.string) ?? -1,
      colour: strand.colour,
      radius: strand.radius,
      points: upright(built.points, strand, this.mirror ? -1 : 1),
      when: this.timesOf(built, strand),
    }));
    for (const strand of strands) if (strand.part === 'tail') hangWithItsKnot(strand, strands);
    this.inView.set(key, strands);
    return strands;
  }

  /** Where a knot lies, in mm, y up. */
  placeOf(row: number, column: number): readonly [number, number, number] {
    const [x, y] = this.fabric.placeOf(row, column);
    return [this.mirror ? -x : x, -y, 0];
  }

  /** Base strings hang as they do from the beginning; leads from where they are knotted to. */
  hanging(time: number, { first, last, level }: ChunkView): PieceStrand[] {
    const view = new Map<string, readonly WorkedStrand[]>();
    for (let chunk = first; chunk <= last; chunk++) {
      view.set(`${chunk}/${level}`, this.strands(chunk, level));
    }
    for (const key of this.inView.keys()) if (!view.has(key)) this.inView.delete(key);
    if (time <= 0) return [];
    const strands = [...view.values()].flat();
    return looseEnds(strands, time, -(this.plan.rows + HANGS) * this.rowHeight);
  }

  /** How many knots are tied before one. */
  orderOf(row: number, column: number): number {
    const { columns, start } = this.plan;
    const along = directionOf(start, row) === 'right' ? column : columns - 1 - column;
    return row * columns + along;
  }

  private timesOf(chunk: FabricChunk, strand: FabricStrand): Float32Array {
    const { first, count, knots } = strand;
    const when = new Float32Array(count);
    if (strand.role === 'base') return when.fill(-1);
    if (knots === undefined || knots.length === 0) {
      const ends = [first, first + count - 1];
      const [begin, end] = ends.map((point) => this.timeAt(chunk.points, point));
      return when.fill(Math.max(begin as number, end as number) + BEGUN);
    }
    let reached = 0;
    // The way to a knot is there as soon as the knot is begun.
    let time = this.orderOf(knots[0] as number, knots[1] as number) + BEGUN;
    for (let k = 0; k < knots.length; k += 4) {
      const order = this.orderOf(knots[k] as number, knots[k + 1] as number);
      const from = (knots[k + 2] as number) - first;
      const many = Math.max(1, (knots[k + 3] as number) - 1);
      for (; reached < from; reached++) when[reached] = time;
      for (; reached <= from + many && reached < count; reached++) {
        when[reached] = order + Math.max(BEGUN, (reached - from) / many);
      }
      time = order + 1 + BEGUN;
    }
    return when.fill(time, reached);
  }

  private timeAt(points: Float32Array, point: number): number {
    const { row, column } = this.fabric.nearestKnot(
      points[3 * point] as number,
      points[3 * point + 1] as number,
    );
    return this.orderOf(row, column);
  }
}

/**
 * The end of a lead is there with what it hangs from: the end at its beginning with its first knot,
 * that of the very last knot once this is tied.
 */
function hangWithItsKnot(tail: WorkedStrand, strands: readonly WorkedStrand[]): void {
  for (const { part, string, points, when } of strands) {
    if (part !== 'lead' || string !== tail.string) continue;
    for (const end of [0, when.length - 1]) {
      if (!touches(tail.points, points, 3 * end)) continue;
      // A little before, so that it is all there at that very time.
      tail.when.fill((when[end] as number) - BEGUN / 2);
      return;
    }
  }
}

/** Whether a line begins or ends at a point of another. */
function touches(line: Float32Array, other: Float32Array, at: number): boolean {
  return [0, line.length - 3].some(
    (end) =>
      Math.hypot(
        (line[end] as number) - (other[at] as number),
        (line[end + 1] as number) - (other[at + 1] as number),
        (line[end + 2] as number) - (other[at + 2] as number),
      ) < 1e-3,
  );
}
