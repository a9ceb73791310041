import { KNOT_KINDS, type KnotKind } from '../../model/knot.js';
import { knotIndex, knotsAcross, knotsInRow, type Lattice, slotOfPlace } from '../lattice.js';
import { type DiagonalPattern, NO_KNOT } from '../pattern.js';
import type { PieceOptions } from './options.js';

interface Rule {
  readonly name: string;
  readonly lattice: Lattice;
  /** Kind of the knot whose left string hangs in a slot; rows and slots from 0. */
  readonly kind: (row: number, slot: number) => KnotKind;
  /** Colour of the string that hangs in a slot at the start: a place among the colours. */
  readonly colour: (slot: number) => number;
}

/** The pattern that a rule makes. */
export function build(options: PieceOptions, rule: Rule): DiagonalPattern {
  const { lattice } = rule;
  const knots = new Uint8Array(lattice.rows * knotsAcross(lattice)).fill(NO_KNOT);
  for (let row = 0; row < lattice.rows; row++) {
    for (let place = 0; place < knotsInRow(lattice, row); place++) {
      const kind = rule.kind(row, slotOfPlace(lattice, row, place));
      knots[knotIndex(lattice, row, place)] = KNOT_KINDS.indexOf(kind);
    }
  }
  return {
    name: options.name ?? rule.name,
    ...lattice,
    colours: options.colours,
    start: Uint8Array.from({ length: lattice.strings }, (_, slot) => rule.colour(slot)),
    knots,
  };
}

/** The remainder that is never negative. */
export function modulo(value: number, by: number): number {
  return ((value % by) + by) % by;
}

/** Which of some bands, as even as can be, a step from 0 to `steps` falls into. */
export function bandOf(step: number, steps: number, bands: number): number {
  return Math.min(bands - 1, Math.floor((step * bands) / steps));
}
