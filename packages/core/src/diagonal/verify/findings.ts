import type { Grade } from '../../verify/findings.js';

export type DiagonalFindingCode =
  | 'colour-differs'
  | 'missing-knot'
  | 'doubled-knot'
  | 'half-knot'
  | 'knot-not-wanted'
  | 'wrong-kind'
  | 'wrong-string'
  | 'wrong-start'
  | 'step-cannot-be-done'
  | 'turn-missing'
  | 'turn-too-soon'
  | 'row-too-many'
  | 'loose-string'
  | 'repeat-does-not-close'
  | 'more-findings';

/**
 * What the verifier found, and where, all counted from 1 and null where none applies. Grades are
 * those of alpha work.
 */
export interface DiagonalFinding {
  readonly grade: Grade;
  readonly code: DiagonalFindingCode;
  readonly row: number | null;
  /** Place for a knot in the row, from the left. */
  readonly place: number | null;
  /** Slot of the left string of that place; of a string alone, its own slot. */
  readonly slot: number | null;
  /** What is so, and what follows from it, in whole sentences. */
  readonly message: string;
}

/** What running the steps of a diagonal plan showed. */
export interface DiagonalVerification {
  /** Whether it knots out as wanted: no finding is graded wrong. */
  readonly ok: boolean;
  readonly rows: number;
  readonly strings: number;
  /** Whole knots tied. */
  readonly knots: number;
  readonly halfHitches: number;
  readonly findings: readonly DiagonalFinding[];
  /** String that tied each knot, as a place in the plan's strings; `rows x knotsAcross`, or 0xffff. */
  readonly tying: Uint16Array;
  /** Kind of each knot, as an index into KNOT_KINDS; `rows x knotsAcross`, 255 where none is. */
  readonly kinds: Uint8Array;
  /** String in each slot before each row, and after the last: `(rows + 1) x strings`. */
  readonly order: Uint16Array;
}
