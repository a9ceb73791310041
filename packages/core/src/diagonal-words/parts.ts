/**
 * What a part of a row's instructions is about.
 * - `row`: how many knots the row has and which strings idle; it covers no knots;
 * - `run`: two or more knots of one kind in neighbouring places; `knot`: a single one;
 * - `bare`: places without a knot between those that have one;
 * - `order`: how the strings hang when the row is done; it covers no knots.
 */
export type DiagonalPartKind = 'row' | 'run' | 'knot' | 'bare' | 'order';

/** One thing to do in a row, or one thing to know of it. */
export interface DiagonalInstructionPart {
  readonly kind: DiagonalPartKind;
  /** Whole sentences, complete without looking at anything else. */
  readonly text: string;
  /** Knot by knot, where the text tells several together. */
  readonly substeps: readonly string[];
  /** Places covered, counted in the row from the left, from 0; null when there are none. */
  readonly places: { readonly first: number; readonly last: number } | null;
  /** Steps of the plan covered: from `first` up to before `end`. */
  readonly steps: { readonly first: number; readonly end: number };
}

export interface DiagonalRowInstructions {
  /** From 0. */
  readonly row: number;
  /** "Row 3, slots 1-2 to 9-10" */
  readonly heading: string;
  readonly parts: readonly DiagonalInstructionPart[];
  /** The whole row as plain sentences. */
  readonly sentences: string;
}
