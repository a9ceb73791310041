/** Knots that were tied, for the maker's pace: one, or several that were counted at once. */
export interface TimedKnots {
  readonly seconds: number;
  readonly knots: number;
  /** Colour changes that came with them. */
  readonly changes: number;
}

/** How far a project is knotted. */
export interface Progress {
  /** Of the project. */
  readonly id: string;
  /** Knots tied, in the order of knotting, from the first of the first row. */
  readonly done: number;
  /** Knots in a row of the chart, or strings of the pattern, as it was tied. */
  readonly columns: number;
  /** A mark of each row with knots tied, as it was drawn then: later changes are seen by it. */
  readonly marks: Uint32Array;
  /** The last that were timed, the latest last; at most STORE_LIMITS.times. */
  readonly times: readonly TimedKnots[];
  /** Seconds spent knotting, pauses left out. */
  readonly active: number;
  /** Milliseconds since 1970. */
  readonly changed: number;
  /** Grows by one each time it is kept; 0 of what was never kept. */
  readonly revision: number;
}
