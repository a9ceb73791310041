/**
 * - `wrong`: the piece will not knot out as drawn: a cell differs, a string is not where a step
 *   needs it, a knot is missing or doubled;
 * - `weak`: it knots out, but a float is long or an edge will not lie as it should;
 * - `note`: worth knowing.
 */
export type Grade = 'wrong' | 'weak' | 'note';

export type FindingCode =
  | 'colour-differs'
  | 'missing-knot'
  | 'doubled-knot'
  | 'half-knot'
  | 'wrong-kind'
  | 'wrong-string'
  | 'wrong-lead'
  | 'lead-not-in-hand'
  | 'lead-out-of-place'
  | 'lead-left-in-front'
  | 'step-cannot-be-done'
  | 'turn-missing'
  | 'turn-too-soon'
  | 'row-too-many'
  | 'long-float'
  | 'lead-caught-at-edge'
  | 'lead-not-caught'
  | 'lead-path'
  | 'edge-string-displaced'
  | 'single-edge-knot'
  | 'repeat-does-not-close'
  | 'more-findings';

/** What the verifier found, and where: rows and columns from 1, null where none applies. */
export interface Finding {
  readonly grade: Grade;
  readonly code: FindingCode;
  readonly row: number | null;
  readonly column: number | null;
  /** What is so, and what follows from it, in whole sentences. */
  readonly message: string;
}
