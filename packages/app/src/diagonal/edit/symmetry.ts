import type { Lattice } from '@halfhitch/core';
import type { Place } from '../../draw/edit/place.js';
import { type Symmetry, wholeSymmetry } from '../../draw/edit/symmetry.js';
import { placeAtSlot, slotOf } from './places.js';

/**
 * The symmetries that a lattice has. Its rows go on by one slot each, so that mirrored it fits
 * itself only with an even number of strings, upside down only with an odd number of rows, and
 * turned by half only where one of both is odd and the other even.
 */
export function symmetriesOf({ strings, rows }: Lattice): Symmetry {
  return {
    sides: strings % 2 === 0,
    ends: rows % 2 === 1,
    turn: (strings + rows) % 2 === 1,
  };
}

/** What of a wish a lattice can have. */
export function possible(wish: Symmetry, lattice: Lattice): Symmetry {
  const has = symmetriesOf(lattice);
  return {
    sides: wish.sides && has.sides,
    ends: wish.ends && has.ends,
    turn: wish.turn && has.turn,
  };
}

export type Image = 'itself' | keyof Symmetry;

/** A place and those that are drawn alike with it, each with what it is of the first. */
export function alike(
  lattice: Lattice,
  place: Place,
  wish: Symmetry,
): { readonly place: Place; readonly image: Image }[] {
  const has = wholeSymmetry(possible(wish, lattice));
  const slot = slotOf(lattice, place);
  const otherSlot = lattice.strings - 2 - slot;
  const otherRow = lattice.rows - 1 - place.row;
  const images: { place: Place; image: Image }[] = [{ place, image: 'itself' }];
  const add = (image: keyof Symmetry, row: number, at: number): void => {
    const there = has[image] ? placeAtSlot(lattice, row, at) : null;
    if (there !== null) images.push({ place: there, image });
  };
  add('sides', place.row, otherSlot);
  add('ends', otherRow, slot);
  add('turn', otherRow, otherSlot);
  return images;
}
