import type { DiagonalPattern } from '../diagonal/pattern.js';

/** Limits and defaults of solving, in the units their names say. */
export const SOLVE_LIMITS = {
  defaultSeconds: 60,
  minSeconds: 0.1,
  maxSeconds: 86_400,
} as const;

/**
 * What is liked best among the patterns that show a picture. `changes`: few neighbours in a row of
 * different kinds; `balance`: no string ties much more than the others; `none`: the first that is
 * found, with few changes where that costs nothing. The first two are searched for within the time
 * there is; they are not proven to be the best.
 */
export type SolvePreference = 'changes' | 'balance' | 'none';

export const SOLVE_PREFERENCES: readonly SolvePreference[] = ['changes', 'balance', 'none'];

/** How far a search has come. */
export interface SolveProgress {
  readonly stage: 'reading' | 'searching' | 'explaining' | 'nearing' | 'tidying';
  /** Share of the stage that is done, from 0 to 1, where it is known. */
  readonly share: number | null;
  /** Knots that differ in the best pattern found so far; null while there is none. */
  readonly wrong: number | null;
  /** No pattern has fewer wrong knots than this, as far as is proven by now. */
  readonly atLeastWrong: number;
}

export interface SolveOptions {
  /** Colours with which the strings must hang at the start, by slot; ANY_COLOUR leaves one open. */
  readonly start?: ArrayLike<number>;
  /** The colours must hang after the last row as they did before the first. */
  readonly repeat?: boolean;
  /** Most strings that may have a colour, by colour; null or nothing for no limit. */
  readonly most?: readonly (number | null)[];
  /** A colour that as few strings as possible are to have. */
  readonly fewestOf?: number;
  /** Default: 'none'. */
  readonly prefer?: SolvePreference;
  /** Knots that may show another colour than the wanted one. Default: none. */
  readonly atMostWrong?: number;
  /** Whether to look for the nearest pattern when there is none. Default: true. */
  readonly nearest?: boolean;
  /** Whether to look for the smallest conflicting part when there is none. Default: true. */
  readonly explain?: boolean;
  /** Time for all of it, in seconds. Default: SOLVE_LIMITS.defaultSeconds. */
  readonly seconds?: number;
  /** Ends the search soon after it is aborted; the answer is then 'stopped'. */
  readonly signal?: { readonly aborted: boolean };
  readonly onProgress?: (progress: SolveProgress) => void;
}

/** A knot's place: row and place in the row from 0, and its index in the arrays of the lattice. */
export interface KnotPlace {
  readonly row: number;
  readonly place: number;
  readonly cell: number;
}

/** Wanted knots that cannot all show their colours, whatever the rest of the picture. */
export interface DiagonalConflict {
  readonly cells: readonly KnotPlace[];
  /** Any of them left out, the others can be knotted. False when time ran out before that. */
  readonly minimal: boolean;
  /** The conflict in a sentence; rows and knots from 1. */
  readonly message: string;
}

/**
 * `solved`: the pattern shows the picture, but for `atMostWrong` knots at most.
 * `impossible`: proven that none does. `stopped`: time ran out, or the search was aborted.
 */
export type SolveStatus = 'solved' | 'impossible' | 'stopped';

export interface DiagonalSolution {
  readonly status: SolveStatus;
  /** The pattern, or the nearest one found where none shows the picture; null where none was. */
  readonly pattern: DiagonalPattern | null;
  /** The knots in which `pattern` differs from the picture. */
  readonly wrong: readonly KnotPlace[];
  /** Proven: every pattern differs from the picture in this many knots or more. */
  readonly atLeastWrong: number;
  /** Why it is impossible, where that was asked for and found in time. */
  readonly conflict: DiagonalConflict | null;
  /** What is counted of `pattern`; null where there is none. */
  readonly tally: SolutionTally | null;
  /** Seconds taken. */
  readonly seconds: number;
}

/** What a pattern asks of its maker. */
export interface SolutionTally {
  /** Strings of each colour. */
  readonly strings: readonly number[];
  /** Neighbours in a row that are knots of different kinds. */
  readonly changes: number;
  /** Knots tied by the string that ties most. */
  readonly mostTied: number;
  /** Proven that no fewer strings have the colour of `fewestOf`; null where not asked. */
  readonly fewestProven: boolean | null;
}
