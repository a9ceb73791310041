import type { ChangePlace } from '../plan/changes.js';
import type { Finding } from './findings.js';

/** Colour changes by place; `start` counts first uses of a colour, which are also in their place. */
export type ChangeCounts = Readonly<Record<ChangePlace | 'start', number>>;

/** What running a plan's steps showed. */
export interface Verification {
  /** Whether it knots out as drawn: no finding is graded wrong. */
  readonly ok: boolean;
  readonly rows: number;
  readonly columns: number;
  /** Whole knots tied. */
  readonly knots: number;
  readonly halfHitches: number;
  readonly changes: ChangeCounts;
  readonly findings: readonly Finding[];
  /** String that tied each cell, as a place in the plan's strings; 0xffff where no knot is. */
  readonly tying: Uint16Array;
  /** Knot in each cell, as an index into KNOT_KINDS; 255 where no knot is. */
  readonly kinds: Uint8Array;
}
