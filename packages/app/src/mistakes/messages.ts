import type { Chart, KnotKind, Mistake, Undo } from '@halfhitch/core';
import type { KnotChoice } from '../work/messages.js';
import type { NumberedAnswer } from '../work/waiting-answers.js';

/** A place in the piece, from 0. */
export interface MistakePlace {
  readonly row: number;
  readonly column: number;
}

/** A mistake that can be made at a knot. */
export interface MistakeOffer {
  readonly mistake: Mistake;
  /** What the maker would do, in short. */
  readonly label: string;
}

export interface OfferGroup {
  readonly name: string;
  readonly offers: readonly MistakeOffer[];
}

/** A knot as it belongs, and as it is with the mistake. */
export interface KnotPair {
  readonly row: number;
  readonly column: number;
  readonly base: { readonly colour: string };
  readonly drawn: KnotTied;
  /** A knot, or what is there in place of one. */
  readonly made: KnotTied | string;
}

export interface KnotTied {
  readonly kind: KnotKind;
  readonly lead: string;
  readonly colour: string;
  readonly name: string;
}

/** What a piece becomes through mistakes, next to what was drawn: pictures as SVG, and words. */
export interface MistakenView {
  readonly what: readonly string[];
  /** Rows in the pictures, from 1, both included. */
  readonly rows: { readonly first: number; readonly last: number };
  readonly columns: { readonly first: number; readonly last: number };
  readonly drawn: string;
  readonly made: string;
  /** What can be seen that differs, a sentence for each row. */
  readonly seen: readonly string[];
  /** What running the mistaken steps against the drawing showed, the first of them. */
  readonly findings: readonly string[];
  readonly moreFindings: number;
  readonly undo: readonly string[];
  readonly goOn: string;
  /** The first knot that goes wrong, to be watched; null where whole rows do. */
  readonly knot: KnotPair | null;
  /** The first knot that goes wrong, in the rows of the instructions. */
  readonly place: MistakePlace;
}

/** What the maker marked of one row; sights, looks, edges and so on as `Seen` has them. */
export interface SeenRow {
  readonly row: number;
  readonly cells: readonly number[];
  /** From a file; there is no field for them. */
  readonly looks: readonly number[] | null;
  readonly backs: readonly number[] | null;
  readonly edges: readonly [number, number];
  readonly sticks: readonly [number, number];
  readonly knots: number;
  readonly off: 'no' | 'left' | 'right' | 'either';
}

export interface ToldAlternative {
  readonly words: string;
  /** The mistakes of the whole explanation with this alternative in it. */
  readonly mistakes: readonly Mistake[];
  /** Where to undo to when it was this one. */
  readonly undoTo: Undo;
}

export interface ToldExplanation {
  /** Share of all explanations listed, from 0 to 1. */
  readonly likelihood: number;
  /** Every part happened; of its alternatives exactly one. */
  readonly parts: readonly {
    readonly alternatives: readonly ToldAlternative[];
    /** Others that would look the same. */
    readonly more: number;
  }[];
  readonly unexplained: number;
  /** Far enough back for every alternative. */
  readonly undo: readonly string[];
  readonly goOn: string;
}

export interface Told {
  readonly explanations: readonly ToldExplanation[];
  /** Things that differ when no mistake explains any of them; 0 otherwise. */
  readonly baffling: number;
}

export type MistakesRequest =
  | { readonly ask: 'possible'; readonly place: MistakePlace }
  | { readonly ask: 'make'; readonly mistakes: readonly Mistake[]; readonly undo: Undo | null }
  | { readonly ask: 'read'; readonly bytes: Uint8Array; readonly fileName: string }
  | { readonly ask: 'diagnose'; readonly rows: readonly SeenRow[] };

export interface MistakesAnswers {
  possible: readonly OfferGroup[];
  make: MistakenView;
  read: readonly SeenRow[];
  diagnose: Told;
}

export interface MistakesAsk {
  readonly id: number;
  /** The piece, where it is another than that of the request before. */
  readonly piece: { readonly chart: Chart; readonly choice: KnotChoice } | null;
  readonly request: MistakesRequest;
}

export type MistakesAnswer = NumberedAnswer<MistakesAnswers[keyof MistakesAnswers]>;
