import { type DiagonalPattern, type Lattice, slotOfPlace } from '@halfhitch/core';
import { LEVELS, type Level } from '../fabric/levels.js';
import { chunkRows, factor } from '../fabric/options.js';
import { GeometryError, resolveOptions } from '../knot/options.js';
import type { FinishedSize } from '../thread/finished-size.js';
import { LatticeBuilder } from './builder.js';
import type { DiagonalChunk } from './chunk.js';
import { HangingStrings } from './hanging.js';
import { type LatticeWork, latticeWork } from './knots.js';
import { KnotSequence } from './sequence.js';
import { spacing } from './spacing.js';

export interface DiagonalFabricOptions {
  /** Diameter of the strings, mm. Default 1. */
  readonly diameter?: number;
  /** How much wider and longer than computed a swatch was; 0.5 to 2. Default 1. */
  readonly across?: number;
  readonly along?: number;
  /** Rows in a chunk, 1 to 100. Default 10. */
  readonly rowsPerChunk?: number;
}

/** What hangs of a string below the work: xyz triplets, mm. */
export interface HangingThread {
  readonly string: string;
  /** `#rrggbb` */
  readonly colour: string;
  readonly radius: number;
  readonly points: Float32Array;
}

/** A knot of a lattice: row and place in it, from 0. */
export interface LatticePlace {
  readonly row: number;
  readonly place: number;
}

/**
 * A whole piece of diagonal work as it hangs when it is done, built some rows at a time.
 *
 * Slot s hangs at x = s times `slotPitch`, so that a knot is half a slot to the right of its left
 * string's slot; row r's knots are at y = r times `rowHeight`. x right, y down the page, z to the
 * viewer of the front.
 */
export class DiagonalFabric {
  readonly strings: number;
  readonly rows: number;
  readonly size: FinishedSize;
  /** Distance of neighbouring slots, and of rows, mm. */
  readonly slotPitch: number;
  readonly rowHeight: number;
  /** Number of chunks, and of rows in each but the last. */
  readonly chunks: number;
  readonly rowsPerChunk: number;
  private readonly lattice: Lattice;
  private readonly builder: LatticeBuilder;
  private readonly work: LatticeWork;
  private readonly scale: { readonly x: number; readonly y: number; readonly z: number };
  private strung: HangingStrings | null = null;

  /** @throws GeometryError when an option is outside its limits */
  constructor(pattern: DiagonalPattern, options: DiagonalFabricOptions = {}) {
    const { diameter } = resolveOptions(
      options.diameter === undefined ? {} : { tyingDiameter: options.diameter },
    );
    const across = factor('across', options.across);
    const along = factor('along', options.along);
    this.rowsPerChunk = chunkRows(options.rowsPerChunk ?? 10);
    const { strings, rows, first } = pattern;
    this.lattice = { strings, rows, first };
    this.strings = strings;
    this.rows = rows;
    this.chunks = Math.ceil(rows / this.rowsPerChunk);
    const scale = { x: diameter * across, y: diameter * along, z: diameter };
    this.scale = scale;
    this.work = latticeWork(pattern);
    this.builder = new LatticeBuilder(this.work, this.rowsPerChunk, scale);
    const { slot, row } = spacing();
    this.slotPitch = slot * scale.x;
    this.rowHeight = row * scale.y;
    this.size = latticeSize(this.lattice, scale);
  }

  /**
   * Some rows: `index` from 0, at a level of detail. Where strings go on in the next chunk, the
   * points at the border are the same, whatever the levels of the two. A string's way over rows in
   * which it is not knotted belongs to the chunk of the knot that it leads to.
   *
   * @throws GeometryError when there is no such chunk or level
   */
  chunk(index: number, level: Level = 0): DiagonalChunk {
    if (!Number.isInteger(index) || index < 0 || index >= this.chunks) {
      throw new GeometryError(`There is no chunk ${index}; there are ${this.chunks}, from 0.`);
    }
    if (!LEVELS.includes(level)) {
      throw new GeometryError(`There is no level of detail ${level}; choose from 0 to 3.`);
    }
    return this.builder.build(index, level);
  }

  /**
   * What hangs of every string when so many knots are tied, in the order in which they were hung; a
   * string of a knot that is half tied hangs from where it has come to.
   *
   * @param position knots tied, with fractions
   */
  hanging(position: number): HangingThread[] {
    this.strung ??= new HangingStrings(new KnotSequence(this.work));
    const { x, y, z } = this.scale;
    const scales = [x, y, z];
    return this.strung.at(position).map(({ string, points }) => {
      const { id, colour } = this.work.strings[string]!;
      return {
        string: id,
        colour,
        radius: z / 2,
        points: Float32Array.from(points, (v, i) => v * scales[i % 3]!),
      };
    });
  }

  /** Middle of a knot, mm. */
  placeOf({ row, place }: LatticePlace): readonly [x: number, y: number] {
    const slot = slotOfPlace(this.lattice, row, place);
    return [(slot + 0.5) * this.slotPitch, row * this.rowHeight];
  }

  /** The place for a knot at a point of the front or the back, in mm, or null beside the piece. */
  knotAt(x: number, y: number): LatticePlace | null {
    const across = x / this.slotPitch - 0.5;
    const down = y / this.rowHeight;
    // Places are diamonds; of the two rows that a point lies between, one has it.
    let best: LatticePlace | null = null;
    let least = 1 + 1e-9;
    for (const row of [Math.floor(down), Math.floor(down) + 1]) {
      if (row < 0 || row >= this.rows) continue;
      const first = (this.lattice.first + row) % 2;
      const place = Math.round((across - first) / 2) + 0;
      const slot = first + 2 * place;
      if (place < 0 || slot + 1 >= this.strings) continue;
      const distance = Math.abs(across - slot) + Math.abs(down - row);
      if (distance > least) continue;
      least = distance;
      best = { row, place };
    }
    return best;
  }
}

/** The size of diagonal work, mm. @param scale mm of a diameter, across, along and in depth */
export function latticeSize(
  { strings, rows }: Lattice,
  scale: { readonly x: number; readonly y: number; readonly z: number },
): FinishedSize {
  const { slot, row, halfWidth, halfHeight, front, back } = spacing();
  return {
    width: ((strings - 2) * slot + 2 * halfWidth) * scale.x,
    length: ((rows - 1) * row + 2 * halfHeight) * scale.y,
    thickness: (front - back + 1) * scale.z,
    aspect: (slot * scale.x) / (row * scale.y),
  };
}
