import { type KnotKind, mirrorKnot } from '../../model/knot.js';
import type { DiagonalPattern } from '../pattern.js';
import { build } from './build.js';
import { stepOnCircle } from './circle.js';
import { checkOptions, type PieceOptions } from './options.js';

/** Strings that a mirrored piece shows in each half. */
export function stringsInHalf(strings: number): number {
  return Math.floor(strings / 2);
}

/**
 * Rows after which the strings of a mirrored piece hang as at the start: with an even number of
 * strings each of them has gone right across and back, with an odd one through its half and back.
 */
function rowsOfMirrored(strings: number): number {
  return strings % 2 === 0 ? 2 * strings : strings - 1;
}

interface Half {
  /** How many different colours a half can show. */
  readonly shown: number;
  /** Whether the string that runs towards the middle is the one that ties, at a row and a slot. */
  readonly inwards: (row: number, slot: number) => boolean;
  /**
   * Colour of the string on a step of the circle of half the strings, `2 x stringsInHalf` steps
   * round.
   */
  readonly colour: (step: number) => number;
}

/**
 * A piece whose right half is the mirror image of its left half.
 *
 * With an even number of strings they change sides in the middle, with one of their own colour.
 * The brick lattice of an odd number is no mirror image of itself: there the middle string hangs
 * straight down, is tied onto from both sides in turn, and the right half comes a row later.
 */
export function mirroredPiece(options: PieceOptions, name: string, half: Half): DiagonalPattern {
  const { strings } = options;
  const inHalf = stringsInHalf(strings);
  checkOptions(options, half.shown);
  const rows = options.rows ?? rowsOfMirrored(strings);
  const lattice = { strings, rows, first: 0 } as const;
  const round = 2 * inHalf;
  if (strings % 2 === 0) {
    return build(options, {
      name,
      lattice,
      kind: (row, slot) => {
        const onLeft = slot < inHalf;
        const inwards = half.inwards(row, onLeft ? slot : strings - 2 - slot);
        return inwards === onLeft ? 'forward' : 'backward';
      },
      colour: (slot) => half.colour(stepOnCircle(slot, strings, 0, 'left') % round),
    });
  }
  const kindOfHalf = (row: number, slot: number): KnotKind => {
    if (slot === inHalf - 1) return 'forward-backward';
    return half.inwards(row, slot) ? 'forward' : 'backward';
  };
  return build(options, {
    name,
    lattice,
    kind: (row, slot) => {
      if (slot < inHalf) return kindOfHalf(row, slot);
      return mirrorKnot(kindOfHalf(row - 1, strings - 2 - slot));
    },
    colour: (slot) => {
      if (slot === inHalf) return 0;
      if (slot < inHalf) return half.colour(stepOnCircle(slot, inHalf, 0, 'left'));
      return half.colour((stepOnCircle(strings - 1 - slot, inHalf, 1, 'left') + 1) % round);
    },
  });
}
