import type { Level } from '@halfhitch/geometry/fabric';
import type { Box, ThreadLine, ThreadPart } from '../thread/thread-line.js';

/** One thread of some rows, with the time at which each of its points is knotted. */
export interface PieceStrand {
  /** Place of the string among those of the work. */
  readonly string: number;
  readonly colour: string;
  readonly radius: number;
  /** x, y, z triplets in mm, y up. */
  readonly points: Float32Array;
  /** Time of each point, counted in knots from the beginning; -1 for what hangs there before. */
  readonly when: Float32Array;
}

/** Chunks from `first` to `last`, at a level of detail. */
export interface ChunkView {
  readonly first: number;
  readonly last: number;
  readonly level: Level;
}

/** A whole piece, some rows at a time, with the order in which it is knotted. */
export interface Chunks {
  /** Whether it is the mirror image, as the left hand knots it. */
  readonly mirror: boolean;
  /** How much thicker than they are threads are drawn; appearance only. */
  readonly fullness: number;
  /** The same in a flat picture, where what lies deeper is told by outlines alone. */
  readonly flatFullness: number;
  /** Width of a knot, mm. */
  readonly pitch: number;
  /** First and last chunk that rows from `from` up to `to` lie in. */
  chunksOf(from: number, to: number): { readonly first: number; readonly last: number };
  /** Room for rows, in mm, y up; it follows rows that are not whole numbers. */
  boxOf(from: number, to: number): Box;
  strands(chunk: number, level: Level): readonly PieceStrand[];
  /** The same of what hangs free. */
  readonly hungFullness: number;
  /** What hangs below the work at a time, where that changes as it grows; of the chunks in view. */
  hanging(time: number, view: ChunkView): PieceStrand[];
}

/**
 * The threads of a chunk that are knotted from one time to another, for the flat picture; what
 * hangs there from the beginning counts as knotted at -1.
 *
 * @param thickness in diameters of the thread
 */
export function linesBetween(
  strands: readonly PieceStrand[],
  [from, to]: readonly [number, number],
  name: string,
  part: ThreadPart,
  thickness: number,
): ThreadLine[] {
  return strands.flatMap(({ colour, radius, points, when }, i) => {
    let first = when.findIndex((time) => time >= from);
    // A stretch begins where the one before has ended.
    if (first > 0) first--;
    let end = when.findIndex((time) => time > to);
    if (end < 0) end = when.length;
    return first < 0 || end - first < 2
      ? []
      : [
          {
            string: `${part}-${name}-${i}`,
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

/** How much of a knot must be tied for what hangs from it to be there. */
export const BEGUN = 0.02;

/** What hangs free is thinner than what is knotted tightly side by side: it is not pressed flat. */
export const HUNG_FULLNESS = 1.2;

/** From the geometry's frame, whose y points down the page, to the picture's, y up. */
export function upright(
  points: Float32Array,
  { first, count }: { readonly first: number; readonly count: number },
  side: 1 | -1,
): Float32Array {
  const turned = points.slice(3 * first, 3 * (first + count));
  for (let i = 0; i < turned.length; i += 3) {
    turned[i] = side * (turned[i] as number);
    turned[i + 1] = -(turned[i + 1] as number);
  }
  return turned;
}

/** First and last chunk that rows from `from` up to `to` lie in. */
export function chunksOfRows(
  { chunks, rowsPerChunk }: { readonly chunks: number; readonly rowsPerChunk: number },
  from: number,
  to: number,
): { readonly first: number; readonly last: number } {
  const within = (row: number): number =>
    Math.max(0, Math.min(chunks - 1, Math.floor(row / rowsPerChunk)));
  return { first: within(from), last: within(to) };
}
