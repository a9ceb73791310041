import { KNOT_KINDS, type KnotKind } from '../../model/knot.js';
import { firstSlotOf, knotIndex, knotsInRow, type Lattice, slotOfPlace } from '../lattice.js';
import type { DiagonalPattern } from '../pattern.js';
import { BARE, type DiagonalPicture } from '../picture.js';

/**
 * What is wanted of a piece: a picture, and the pattern that draws it where that is known. The
 * verifier's own statement of where knots belong, written apart from the planner's.
 */
export class Wanted {
  readonly lattice: Lattice;

  constructor(
    private readonly picture: DiagonalPicture,
    readonly pattern: DiagonalPattern | null,
  ) {
    this.lattice = picture;
  }

  /** Whether the picture or the pattern has a knot in a place. */
  knot(row: number, place: number): boolean {
    return this.colour(row, place) !== BARE || this.kind(row, place) !== null;
  }

  /** Whether the picture or the pattern leaves a place without a knot. */
  bare(row: number, place: number): boolean {
    if (this.colour(row, place) === BARE) return true;
    return this.pattern !== null && this.kind(row, place) === null;
  }

  /** The kind of knot that the pattern has in a place; null when it has none or is not known. */
  kind(row: number, place: number): KnotKind | null {
    const cell = knotIndex(this.lattice, row, place);
    return KNOT_KINDS[this.pattern?.knots[cell] ?? KNOT_KINDS.length] ?? null;
  }

  /** Colour wanted in a place: an index, ANY_COLOUR or BARE. */
  colour(row: number, place: number): number {
    return this.picture.cells[knotIndex(this.lattice, row, place)] as number;
  }

  /** The place of a row whose left string hangs in a slot, or -1. */
  placeAt(row: number, slot: number): number {
    const from = slot - firstSlotOf(this.lattice, row);
    if (from < 0 || from % 2 !== 0 || slot + 1 >= this.lattice.strings) return -1;
    return from / 2;
  }

  /** The place of a row that has the string of a slot, on either side; -1 where it idles. */
  placeOf(row: number, slot: number): number {
    const place = Math.floor((slot - slotOfPlace(this.lattice, row, 0)) / 2);
    return place >= 0 && place < knotsInRow(this.lattice, row) ? place : -1;
  }
}
