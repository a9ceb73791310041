import type { Direction } from '../plan/plan.js';

/**
 * - `direction`: which way the row goes and who leads;
 * - `turn`: the same lead going on after the last row;
 * - `edge`: an edge knot of two unlike halves;
 * - `run`: two or more like knots after each other; `knot`: a single one;
 * - `change`: a hand-over from one lead to another, with the first knot of the new one.
 */
export type PartKind = 'direction' | 'turn' | 'edge' | 'run' | 'knot' | 'change';

/** One thing to do in a row, or one thing to know of it. */
export interface InstructionPart {
  readonly kind: PartKind;
  /** Whole sentences, complete without looking at anything else. */
  readonly text: string;
  /** What to do in turn, where the text names something of several steps. */
  readonly substeps: readonly string[];
  /** Names of the colour change cases that meet here; empty when there is no change. */
  readonly cases: readonly string[];
  /** Columns of the knots covered, from 0, in the order of knotting; null when there are none. */
  readonly columns: { readonly first: number; readonly last: number } | null;
  /** Steps of the plan covered: from `first` up to before `end`. */
  readonly steps: { readonly first: number; readonly end: number };
}

export interface RowInstructions {
  /** From 0. */
  readonly row: number;
  readonly direction: Direction;
  /** "Row 3, from left to right" */
  readonly heading: string;
  readonly parts: readonly InstructionPart[];
  /** The whole row as plain sentences. */
  readonly sentences: string;
}
