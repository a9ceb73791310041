/** One knot that was tied, for the maker's pace. */
export interface TimedKnot {
  /** Seconds since the knot before it. */
  readonly seconds: number;
  /** Whether a colour change came with it. */
  readonly change: boolean;
}

/** How far a project is knotted. */
export interface Progress {
  /** Of the project. */
  readonly id: string;
  /** Knots tied, in the order of knotting, from the first of the first row. */
  readonly done: number;
  /** Knots in a row of the chart as it was tied. */
  readonly columns: number;
  /** A mark of each row of the chart as it was when last tied, by which later changes are seen. */
  readonly marks: Uint32Array;
  /** The last knots tied, the latest last; at most STORE_LIMITS.times. */
  readonly times: readonly TimedKnot[];
  /** Seconds spent knotting, pauses left out. */
  readonly active: number;
  /** Milliseconds since 1970. */
  readonly changed: number;
  /** Grows by one each time it is kept; 0 of what was never kept. */
  readonly revision: number;
}
