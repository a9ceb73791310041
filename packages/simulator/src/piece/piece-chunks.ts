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
import { BEGUN, type Chunks, chunksOfRows, type PieceStrand, upright } from './chunks.js';

/** The level of detail for a view in which a knot is so many CSS pixels wide. */
export function levelOf(pixelsPerKnot: number): Level {
  return levelFor(pixelsPerKnot);
}

/** A whole alpha piece. */
export class PieceChunks implements Chunks {
  readonly fullness = FABRIC_FULLNESS;
  readonly flatFullness = FABRIC_FULLNESS;
  readonly plan: Plan;
  /** Whether it is the mirror image, as the left hand knots it. */
  readonly mirror: boolean;
  private readonly fabric: Fabric;
  private readonly strings: ReadonlyMap<string, number>;

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

  strands(chunk: number, level: Level): PieceStrand[] {
    const built = this.fabric.chunk(chunk, level);
    return built.strands.map((strand) => ({
      string: this.strings.get(strand.string) ?? -1,
      colour: strand.colour,
      radius: strand.radius,
      points: upright(built.points, strand, this.mirror ? -1 : 1),
      when: this.timesOf(built, strand),
    }));
  }

  /** Where a knot lies, in mm, y up. */
  placeOf(row: number, column: number): readonly [number, number, number] {
    const [x, y] = this.fabric.placeOf(row, column);
    return [this.mirror ? -x : x, -y, 0];
  }

  /** Base strings hang as they do from the beginning, and leads end with their knots. */
  hanging(): PieceStrand[] {
    return [];
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
      // A float is there when the lead comes up again, a tail with the knot it hangs from.
      const begin = this.timeAt(chunk.points, first);
      const end = strand.part === 'tail' ? begin : this.timeAt(chunk.points, first + count - 1);
      return when.fill(Math.max(begin, end) + BEGUN);
    }
    let reached = 0;
    let time = this.orderOf(knots[0] as number, knots[1] as number) + BEGUN;
    for (let k = 0; k < knots.length; k += 4) {
      const order = this.orderOf(knots[k] as number, knots[k + 1] as number);
      const from = (knots[k + 2] as number) - first;
      const many = Math.max(1, (knots[k + 3] as number) - 1);
      for (; reached < from; reached++) when[reached] = time;
      for (; reached <= from + many && reached < count; reached++) {
        when[reached] = order + Math.max(BEGUN, (reached - from) / many);
      }
      time = order + 1;
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
