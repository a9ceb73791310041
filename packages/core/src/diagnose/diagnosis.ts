import type { Mistake } from '../mistakes/mistake.js';

/** Where a mistake is put right: what is tied from there on has to be undone. */
export interface Undo {
  /** The first knot to undo, or the place from which one is missing; from 0. */
  readonly row: number;
  readonly column: number;
  /** Whole knots tied there and since. */
  readonly knots: number;
}

/** One way in which a part of what was seen can have come about. */
export interface Alternative {
  /** One mistake, or several in one place that cannot be told apart singly. */
  readonly mistakes: readonly Mistake[];
  /** Share of all alternatives of the part, from 0 to 1. */
  readonly likelihood: number;
  readonly undo: Undo;
}

/** One thing that went wrong: exactly one of the alternatives, all of which look the same. */
export interface DiagnosisPart {
  /** Most likely first. */
  readonly alternatives: readonly Alternative[];
}

/** One explanation of what was seen: every part of it happened. */
export interface Diagnosis {
  /** In the order of knotting. */
  readonly parts: readonly DiagnosisPart[];
  /** How many mistakes it takes. */
  readonly mistakes: number;
  /** Things seen that it leaves unexplained; 0 when it explains everything. */
  readonly unexplained: number;
  /** Share of all explanations listed, from 0 to 1. */
  readonly likelihood: number;
  /** The place to undo to so that every alternative is undone; null when there is no part. */
  readonly undo: Undo | null;
}
