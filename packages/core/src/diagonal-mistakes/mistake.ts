import type { KnotKind } from '../model/knot.js';

/**
 * One slip of a maker of a diagonal piece. Rows are those of the piece as it is knotted, and
 * places are counted in the row from the left, both from 0: after a row too many, row 7 of the
 * piece follows row 6 of the pattern. Slots are those of the start, from 0.
 */
export type DiagonalMistake =
  /** Another kind of knot than the place asks for. */
  | {
      readonly kind: 'wrong-kind';
      readonly row: number;
      readonly place: number;
      readonly tied: KnotKind;
    }
  /** A knot is left out: its two strings hang past each other. */
  | { readonly kind: 'missing-knot'; readonly row: number; readonly place: number }
  /** A knot is tied where the pattern has none. */
  | {
      readonly kind: 'extra-knot';
      readonly row: number;
      readonly place: number;
      readonly tied: KnotKind;
    }
  /** Only the first half hitch of a knot is tied; the strings are laid where the knot asks. */
  | { readonly kind: 'half-knot'; readonly row: number; readonly place: number }
  /**
   * Neighbours are picked up one slot to a side: for one knot, or for it and all that follow in
   * the row. A knot for which no two strings are left is not tied.
   */
  | {
      readonly kind: 'one-slot-off';
      readonly row: number;
      readonly place: number;
      readonly towards: 'left' | 'right';
      readonly span: 'knot' | 'rest';
    }
  /** Two strings hang in each other's slots at the start. */
  | { readonly kind: 'swapped-strings'; readonly slot: number; readonly other: number }
  /** A string of another colour hangs in a slot at the start; `colour` is one of the pattern's. */
  | { readonly kind: 'wrong-colour'; readonly slot: number; readonly colour: number }
  /** A row of the pattern is left out before this row of the piece. */
  | { readonly kind: 'missing-row'; readonly row: number }
  /** This row of the piece is the row above it once more. */
  | { readonly kind: 'extra-row'; readonly row: number };

export type DiagonalMistakeKind = DiagonalMistake['kind'];

export const DIAGONAL_MISTAKE_KINDS: readonly DiagonalMistakeKind[] = [
  'wrong-kind',
  'missing-knot',
  'extra-knot',
  'half-knot',
  'one-slot-off',
  'swapped-strings',
  'wrong-colour',
  'missing-row',
  'extra-row',
];

/** A mistake in one place of the lattice. */
export type PlacedMistake = Extract<DiagonalMistake, { readonly place: number }>;

/** A mistake of hanging the strings. */
export type StartMistake = Extract<DiagonalMistake, { readonly slot: number }>;

/** A mistake that moves every row below it. */
export type RowMistake = Exclude<DiagonalMistake, PlacedMistake | StartMistake>;

export function isPlaced(mistake: DiagonalMistake): mistake is PlacedMistake {
  return 'place' in mistake;
}

export function isOfStart(mistake: DiagonalMistake): mistake is StartMistake {
  return 'slot' in mistake;
}

/** A name that is the same for equal mistakes and differs for others. */
export function diagonalMistakeKey(mistake: DiagonalMistake): string {
  switch (mistake.kind) {
    case 'swapped-strings':
    case 'wrong-colour':
      return `${mistake.kind} ${mistake.slot} ${mistake.kind === 'wrong-colour' ? mistake.colour : mistake.other}`;
    case 'missing-row':
    case 'extra-row':
      return `${mistake.kind} ${mistake.row}`;
    default: {
      const more =
        mistake.kind === 'one-slot-off'
          ? `${mistake.towards} ${mistake.span}`
          : 'tied' in mistake
            ? mistake.tied
            : '';
      return `${mistake.kind} ${mistake.row} ${mistake.place} ${more}`;
    }
  }
}
