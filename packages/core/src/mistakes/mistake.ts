import type { KnotKind } from '../model/knot.js';
import type { StringId } from '../model/strings.js';

/**
 * One slip of a maker. Rows and columns are those of the piece as it is knotted, from 0: after a
 * row too many, row 7 of the piece follows row 6 of the instructions. A turn is named by the row
 * that it ends.
 */
export type Mistake =
  /** Another kind of knot than the place asks for. */
  | {
      readonly kind: 'wrong-kind';
      readonly row: number;
      readonly column: number;
      readonly tied: KnotKind;
    }
  /** A base string is passed over and its knot tied onto the next one: the colours shift. */
  | { readonly kind: 'skipped-string'; readonly row: number; readonly column: number }
  /** A knot is left out, but counted as tied: the colours after it are right. */
  | { readonly kind: 'missing-knot'; readonly row: number; readonly column: number }
  /** The next knot is tied onto the same string again: the colours shift. */
  | { readonly kind: 'doubled-knot'; readonly row: number; readonly column: number }
  /** Only the first half hitch of a knot is tied. */
  | { readonly kind: 'half-knot'; readonly row: number; readonly column: number }
  /** Another lead ties: one knot, or the run of one colour that begins here. */
  | {
      readonly kind: 'wrong-lead';
      readonly row: number;
      readonly column: number;
      readonly lead: StringId;
      readonly span: 'knot' | 'run';
    }
  /** One edge knot at the turn after the row in place of two; the one at that row's end, or the
   * one at the start of the next, is not tied. */
  | {
      readonly kind: 'single-edge-knot';
      readonly row: number;
      readonly lacking: 'end' | 'start';
    }
  /** This row is the row above once more. */
  | { readonly kind: 'extra-row'; readonly row: number }
  /** The row that belongs here is left out; the one after it stands in its place. */
  | { readonly kind: 'missing-row'; readonly row: number }
  /** The new colour comes one knot too soon, at this one; the next change is where it is drawn. */
  | { readonly kind: 'early-change'; readonly row: number; readonly column: number }
  /** The old colour goes on for one knot, this one; the next change is where it is drawn. */
  | { readonly kind: 'late-change'; readonly row: number; readonly column: number }
  /** A run is counted one short, so that from this knot on every colour of the row is early. */
  | { readonly kind: 'short-run'; readonly row: number; readonly column: number }
  /** A run is counted one too many, so that from this knot on every colour of the row is late. */
  | { readonly kind: 'long-run'; readonly row: number; readonly column: number }
  /** At a colour change at an edge the old lead is caught in the knot. */
  | { readonly kind: 'caught-at-edge'; readonly row: number; readonly column: number }
  /** At a colour change within a row the old lead is not caught in the knot. */
  | { readonly kind: 'not-caught'; readonly row: number; readonly column: number }
  /** The turn after the row is made by the other edge technique. */
  | { readonly kind: 'other-edge'; readonly row: number };

export type MistakeKind = Mistake['kind'];

export const MISTAKE_KINDS: readonly MistakeKind[] = [
  'wrong-kind',
  'skipped-string',
  'missing-knot',
  'doubled-knot',
  'half-knot',
  'wrong-lead',
  'single-edge-knot',
  'extra-row',
  'missing-row',
  'early-change',
  'late-change',
  'short-run',
  'long-run',
  'caught-at-edge',
  'not-caught',
  'other-edge',
];

/** Whether a mistake moves every row below it. */
export function movesRows(mistake: Mistake): boolean {
  return mistake.kind === 'extra-row' || mistake.kind === 'missing-row';
}

/** Whether a mistake is of a turn, and so of the row it ends and of the next. */
export function isOfTurn(mistake: Mistake): boolean {
  return mistake.kind === 'single-edge-knot' || mistake.kind === 'other-edge';
}

/** A name that is the same for equal mistakes and differs for others. */
export function mistakeKey(mistake: Mistake): string {
  const { kind, row } = mistake;
  const column = 'column' in mistake ? mistake.column : '';
  const more =
    mistake.kind === 'wrong-kind'
      ? mistake.tied
      : mistake.kind === 'wrong-lead'
        ? `${mistake.lead} ${mistake.span}`
        : mistake.kind === 'single-edge-knot'
          ? mistake.lacking
          : '';
  return `${kind} ${row} ${column} ${more}`;
}
