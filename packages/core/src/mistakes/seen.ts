/** What was seen of a cell's colour, where it is none of the colours. */
export const Sight = { bare: -1, unknown: -2 } as const;

/** What the knot of a cell looks like from the front; `unknown`: not looked at. */
export const Look = {
  unknown: 0,
  forward: 1,
  backward: 2,
  forwardBackward: 3,
  backwardForward: 4,
  /** A single half hitch. */
  half: 5,
  /** Two knots or more on one string. */
  two: 6,
  /** No knot: the bare string. */
  none: 7,
} as const;

/** What is behind the knot of a cell. */
export const Back = {
  unknown: 0,
  flat: 1,
  /** A loop: the old lead was not caught and its last knot works loose. */
  loop: 2,
} as const;

export const Edge = {
  unknown: 0,
  straight: 1,
  /** It steps out: a lead runs round the outside, or knots bulge. */
  out: 2,
  /** It pulls in. */
  in: 3,
} as const;

export const Stick = { unknown: 0, no: 1, yes: 2 } as const;

export const UNCOUNTED = -1;

/** "The colours are one column off from here": seen without writing the rows down. */
export interface ColoursOff {
  /** From 0. */
  readonly row: number;
  /** Where the colours have moved to; null when it was not noted. */
  readonly towards: 'left' | 'right' | null;
}

/**
 * What a maker sees of a piece, as far as they looked. Rows count from the top, from 0, and are
 * those knotted so far; two values a row are those of its left and its right edge.
 */
export interface Seen {
  readonly rows: number;
  readonly columns: number;
  /** `#rrggbb` each. */
  readonly colours: readonly string[];
  /** Index into `colours`, or a Sight; rows x columns. */
  readonly cells: Int16Array;
  /** Look of each cell. */
  readonly looks: Uint8Array;
  /** Back of each cell. */
  readonly backs: Uint8Array;
  /** Whole knots in each row, or UNCOUNTED. */
  readonly knots: Int16Array;
  /** Edge, two a row; that of a row's end and of the next row's start are one and the same turn. */
  readonly edges: Uint8Array;
  /** Whether a lead sticks out at the side, two a row. */
  readonly sticks: Uint8Array;
  readonly off: readonly ColoursOff[];
}

/** Nothing looked at yet. */
export function nothingSeen(rows: number, columns: number, colours: readonly string[]): Seen {
  return {
    rows,
    columns,
    colours,
    cells: new Int16Array(rows * columns).fill(Sight.unknown),
    looks: new Uint8Array(rows * columns),
    backs: new Uint8Array(rows * columns),
    knots: new Int16Array(rows).fill(UNCOUNTED),
    edges: new Uint8Array(2 * rows),
    sticks: new Uint8Array(2 * rows),
    off: [],
  };
}
