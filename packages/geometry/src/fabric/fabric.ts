import type { Cell, Plan } from '@halfhitch/core';
import { GeometryError, resolveOptions } from '../knot/options.js';
import type { FinishedSize } from '../thread/finished-size.js';
import { ChunkBuilder } from './builder.js';
import type { FabricChunk } from './chunk.js';
import { edgeReach } from './edge-reach.js';
import { laid } from './layers.js';
import { LEVELS, type Level } from './levels.js';
import { Links } from './links.js';
import { chunkRows, factor } from './options.js';
import { BESIDE, Routes } from './routes.js';
import { pairsOf, seatingOf } from './seating.js';
import { Spread } from './spread.js';
import { survey } from './survey.js';
import type { Work } from './work.js';

export interface FabricOptions {
  /** Diameter of the leads, mm. Default 1. */
  readonly diameter?: number;
  /** Diameter of the base strings, mm; 0.5 to 2 times that of the leads. Default: the same. */
  readonly heldDiameter?: number;
  /** How much wider and longer than computed a swatch was; 0.5 to 2. Default 1. */
  readonly across?: number;
  readonly along?: number;
  /** Rows in a chunk, 1 to 100. Default 10. */
  readonly rowsPerChunk?: number;
}

/**
 * Sizes in mm. Where leads pass to the back, base strings are further apart: the width, and the width
 * of a knot that the aspect goes by, are means over all rows.
 */
export interface FabricSize extends FinishedSize {
  /** Where it is widest, and where no gap is open. */
  readonly greatestWidth: number;
  readonly leastWidth: number;
  /** From the front of the knots to the back of the outermost float. */
  readonly thicknessWithFloats: number;
}

/**
 * A whole piece as it hangs when it is done, built some rows at a time. Nothing of it is kept but
 * where stretches of lead lie behind the work, some tens of bytes for each colour change, and where
 * base strings run, some bytes for each knot.
 *
 * Column c's base string is at x = c times the width of a knot or, where gaps open for what passes to
 * the back, further out from the middle of the piece; row r's knots are at y = r times the height of
 * a row. x right, y down the page, z to the viewer of the front.
 */
export class Fabric {
  readonly rows: number;
  readonly columns: number;
  readonly size: FabricSize;
  /** Distance of neighbouring base strings where nothing passes between them, and of rows, mm. */
  readonly pitch: number;
  readonly rowHeight: number;
  /** Layers in which floats and tails lie behind the work. */
  readonly layers: number;
  /** Number of chunks, and of rows in each but the last. */
  readonly chunks: number;
  readonly rowsPerChunk: number;
  private readonly builder: ChunkBuilder;
  private readonly spread: Spread | null;
  private readonly scaleX: number;
  /** Stretches behind chunk k: `behind` from `behindFrom[k]` to before `behindFrom[k + 1]`. */
  private readonly behindFrom: Int32Array;
  private readonly behind: Int32Array;

  /**
   * @throws GeometryError when an option is outside its limits, or a knot is tied onto something
   * else than a base string
   * @throws InputError when a step of the plan cannot be done
   */
  constructor(plan: Plan, options: FabricOptions = {}) {
    const { diameter, ratio } = resolveOptions({
      ...(options.diameter === undefined ? {} : { tyingDiameter: options.diameter }),
      ...(options.heldDiameter === undefined ? {} : { heldDiameter: options.heldDiameter }),
    });
    const across = factor('across', options.across);
    const along = factor('along', options.along);
    this.rowsPerChunk = chunkRows(options.rowsPerChunk ?? 10);
    this.rows = plan.rows;
    this.columns = plan.columns;
    this.chunks = Math.ceil(plan.rows / this.rowsPerChunk);
    const { pairs, stretches, passes } = survey(plan);
    // In a single row nothing sits on anything; it is as high as it would be in a longer piece.
    const seating = seatingOf(plan.rows > 1 ? pairs : pairsOf(plan.edge), ratio);
    const links = Links.of(seating);
    const routes = new Routes(stretches, seating, passes, plan.start);
    const lying = laid(stretches, routes, seating);
    const spread = Spread.of(passes, seating);
    const work: Work = { plan, seating, links, stretches, passes, spread, routes, lying };
    const scale = { x: diameter * across, y: diameter * along, z: diameter };
    this.builder = new ChunkBuilder(work, scale);
    this.spread = spread;
    this.scaleX = scale.x;
    this.pitch = seating.pitch * scale.x;
    this.rowHeight = seating.rowHeight * scale.y;
    this.layers = lying.layers;
    const thickness = seating.front - seating.back + 1;
    const reach = edgeReach(plan.edge, plan.start, plan.rows, plan.columns, seating, links);
    const closed = (plan.columns - 1) * seating.pitch + reach;
    const { mean, most } = spread ?? { mean: 0, most: 0 };
    this.size = {
      width: (closed + mean) * scale.x,
      greatestWidth: (closed + most) * scale.x,
      leastWidth: closed * scale.x,
      length: plan.rows * this.rowHeight,
      thickness: thickness * scale.z,
      aspect: (this.pitch + (mean * scale.x) / plan.columns) / this.rowHeight,
      thicknessWithFloats: (thickness + lying.layers * BESIDE) * scale.z,
    };
    const index = indexBehind(work, this.chunks, this.rowsPerChunk);
    this.behindFrom = index.from;
    this.behind = index.ids;
  }

  /**
   * Some rows: `index` from 0, at a level of detail. Where strands go on in the next chunk, the points
   * at the border are the same, whatever the levels of the two.
   *
   * @throws GeometryError when there is no such chunk or level
   */
  chunk(index: number, level: Level = 0): FabricChunk {
    if (!Number.isInteger(index) || index < 0 || index >= this.chunks) {
      throw new GeometryError(`There is no chunk ${index}; there are ${this.chunks}, from 0.`);
    }
    if (!LEVELS.includes(level)) {
      throw new GeometryError(`There is no level of detail ${level}; choose from 0 to 3.`);
    }
    const firstRow = index * this.rowsPerChunk;
    return this.builder.build(
      {
        firstRow,
        endRow: Math.min(firstRow + this.rowsPerChunk, this.rows),
        behind: this.behind.subarray(this.behindFrom[index], this.behindFrom[index + 1]),
      },
      level,
    );
  }

  /** Where the middle of a knot lies: x and y, mm. */
  placeOf(row: number, column: number): readonly [number, number] {
    return [this.spreadX(column * this.pitch, row * this.rowHeight), row * this.rowHeight];
  }

  /** The knot at a point of the front or the back, in mm, or null beside the piece. */
  knotAt(x: number, y: number): Cell | null {
    const row = Math.round(y / this.rowHeight);
    const column = this.columnAt(x, y);
    const inside = row >= 0 && row < this.rows && column >= 0 && column < this.columns;
    // Never minus nought.
    return inside ? { row: row + 0, column: column + 0 } : null;
  }

  /** The knot nearest to a point, in mm. */
  nearestKnot(x: number, y: number): Cell {
    const within = (place: number, count: number) => Math.min(Math.max(place, 0), count - 1);
    return {
      row: within(Math.round(y / this.rowHeight), this.rows),
      column: within(this.columnAt(x, y), this.columns),
    };
  }

  private columnAt(x: number, y: number): number {
    if (this.spread === null) return Math.round(x / this.pitch);
    return this.spread.columnAt(x / this.scaleX, this.inRows(y));
  }

  private spreadX(x: number, y: number): number {
    return this.spread === null ? x : this.spread.x(x / this.scaleX, this.inRows(y)) * this.scaleX;
  }

  private inRows(y: number): number {
    return y / this.rowHeight;
  }
}

/** Which stretches reach into which chunk. */
function indexBehind({ stretches, routes, lying, seating }: Work, chunks: number, rows: number) {
  const chunkAt = (y: number): number => {
    const chunk = Math.floor((y / seating.rowHeight + 0.5) / rows);
    return Math.min(Math.max(chunk, 0), chunks - 1);
  };
  const reach = new Int32Array(stretches.count * 2);
  const from = new Int32Array(chunks + 1);
  for (let id = 0; id < stretches.count; id++) {
    const flat = routes.flat(id, lying.choice[id]!);
    let low = Infinity;
    let high = -Infinity;
    for (let i = 1; i < flat.length; i += 2) {
      low = Math.min(low, flat[i]!);
      high = Math.max(high, flat[i]!);
    }
    reach[id * 2] = chunkAt(low);
    reach[id * 2 + 1] = chunkAt(high);
    for (let k = reach[id * 2]!; k <= reach[id * 2 + 1]!; k++) from[k + 1] = from[k + 1]! + 1;
  }
  for (let k = 0; k < chunks; k++) from[k + 1] = from[k + 1]! + from[k]!;
  const ids = new Int32Array(from[chunks]!);
  const next = from.slice();
  for (let id = 0; id < stretches.count; id++) {
    for (let k = reach[id * 2]!; k <= reach[id * 2 + 1]!; k++) {
      ids[next[k]!] = id;
      next[k] = next[k]! + 1;
    }
  }
  return { from, ids };
}
