import type { KnotKind, TurnWay } from '@halfhitch/core';

/**
 * What a knot takes and how big it is, in diameters of its thread, both strings of one thickness.
 * Everything else about lengths and sizes follows from these and the diameter.
 */
export interface KnotMeasures {
  /** Length of the tying string from where it meets the knot to where it leaves it. */
  readonly tying: Readonly<Record<KnotKind, number>>;
  /** Length of the tying string on its way from a knot to the next one beside it. */
  readonly link: number;
  /** Length of the tying string round a turn, beyond the edge knots themselves. */
  readonly turn: Readonly<Record<TurnWay, number>>;
  /** From the middle of a knot to that of the one beside it. */
  readonly pitch: number;
  /** What the edges add to the width beyond a pitch for each column. Default 0. */
  readonly edges?: number;
  /** From a knot to the one below it on the same string. */
  readonly rowHeight: number;
  /** From the front of the piece to its back. */
  readonly thickness: number;
  /** What a knot takes more where an old lead is laid through its middle. Default 0. */
  readonly laidThrough?: number;
  /** What a float takes more than the straight way, to get clear of the knots and back. Default 0. */
  readonly clearing?: number;
  /** Length of the held string in a row, which is the row's height and what it bends beside it. */
  readonly held: number;
}
