import { directionOf, type Plan } from '@halfhitch/core';
import {
  Fabric,
  type FabricChunk,
  type FabricStrand,
  type Level,
  levelFor,
} from '@halfhitch/geometry/fabric';
import type { Box, ThreadLine, ThreadPart } from '../thread/thread-line.js';

/** One thread of some rows, with the time at which each of its points is knotted. */
export interface PieceStrand {
  readonly colour: string;
  readonly radius: number;
  /** x, y, z triplets in mm, y up. */
  readonly points: Float32Array;
  /** Time of each point, counted in knots from the beginning; -1 for what hangs there before. */
  readonly when: Float32Array;
}

/** How much of a knot must be tied for what hangs from it to be there. */
const BEGUN = 0.02;

/** The level of detail for a view in which a knot is so many CSS pixels wide. */
export function levelOf(pixelsPerKnot: number): Level {
  return levelFor(pixelsPerKnot);
}

/** The whole piece, some rows at a time, with the order in which it is knotted. */
export class PieceChunks {
  readonly plan: Plan;
  /** Whether it is the mirror image, as the left hand knots it. */
  readonly mirror: boolean;
  private readonly fabric: Fabric;

  /** @throws GeometryError, InputError as `Fabric` does */
  constructor(plan: Plan, mirror = false) {
    this.plan = plan;
    this.mirror = mirror;
    this.fabric = new Fabric(plan);
  }

  get pitch(): number {
    return this.fabric.pitch;
  }

  get rowHeight(): number {
    return this.fabric.rowHeight;
  }

  get rowsPerChunk(): number {
    return this.fabric.rowsPerChunk;
  }

  /** First and last chunk that rows from `from` up to `to` lie in. */
  chunksOf(from: number, to: number): { readonly first: number; readonly last: number } {
    const { chunks, rowsPerChunk } = this.fabric;
    const within = (row: number): number =>
      Math.max(0, Math.min(chunks - 1, Math.floor(row / rowsPerChunk)));
    return { first: within(from), last: within(to) };
  }

  /** Room for rows, in mm, y up; it follows rows that are not whole numbers. */
  boxOf(from: number, to: number): Box {
    const { columns } = this.plan;
    const [left, right] = [-this.pitch, columns * this.pitch];
    return {
      min: [this.mirror ? -right : left, -to * this.rowHeight, -2],
      max: [this.mirror ? -left : right, -from * this.rowHeight, 2],
    };
  }

  strands(chunk: number, level: Level): PieceStrand[] {
    const built = this.fabric.chunk(chunk, level);
    return built.strands.map((strand) => ({
      colour: strand.colour,
      radius: strand.radius,
      points: upright(built, strand, this.mirror ? -1 : 1),
      when: this.timesOf(built, strand),
    }));
  }

  /** Where a knot lies, in mm, y up. */
  placeOf(row: number, column: number): readonly [number, number, number] {
    return [(this.mirror ? -1 : 1) * column * this.pitch, -row * this.rowHeight, 0];
  }

  /**
   * The threads of a chunk that are knotted from one time to another, for the flat picture; what
   * hangs there from the beginning counts as knotted at -1.
   *
   * @param thickness in diameters of the thread
   */
  linesBetween(
    chunk: number,
    level: Level,
    [from, to]: readonly [number, number],
    part: ThreadPart,
    thickness: number,
  ): ThreadLine[] {
    return this.strands(chunk, level).flatMap(({ colour, radius, points, when }, i) => {
      let first = when.findIndex((time) => time >= from);
      // A stretch begins where the one before has ended.
      if (first > 0) first--;
      let end = when.findIndex((time) => time > to);
      if (end < 0) end = when.length;
      return first < 0 || end - first < 2
        ? []
        : [
            {
              string: `${part}-${chunk}-${i}`,
              part,
              colour,
              points: points.subarray(3 * first, 3 * end),
              diameter: 2 * radius * thickness,
              label: null,
              labelAt: 'top' as const,
            },
          ];
    });
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
    const { rows, columns } = this.plan;
    const place = (at: number, size: number, most: number): number =>
      Math.max(0, Math.min(most - 1, Math.round(at / size)));
    const column = place(points[3 * point] as number, this.pitch, columns);
    const row = place(points[3 * point + 1] as number, this.rowHeight, rows);
    return this.orderOf(row, column);
  }
}

/** From the geometry's frame, whose y points down the page, to the picture's, y up. */
function upright(
  { points }: FabricChunk,
  { first, count }: FabricStrand,
  side: 1 | -1,
): Float32Array {
  const turned = points.slice(3 * first, 3 * (first + count));
  for (let i = 0; i < turned.length; i += 3) {
    turned[i] = side * (turned[i] as number);
    turned[i + 1] = -(turned[i + 1] as number);
  }
  return turned;
}
