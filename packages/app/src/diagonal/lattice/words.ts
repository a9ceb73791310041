import { ANY_COLOUR, BARE, type ChartColour, KNOT_KINDS, type Lattice } from '@halfhitch/core';
import { colourName } from '../../draw/edit/colours.js';
import type { Place } from '../../draw/edit/place.js';
import { indexOf, isPlace, slotOf } from '../edit/places.js';

/** "Row 3, slots 4 and 5" */
export function placeInWords(lattice: Lattice, place: Place): string {
  if (!isPlace(lattice, place)) return `Row ${place.row + 1} has no place for a knot here`;
  const slot = slotOf(lattice, place);
  return `Row ${place.row + 1}, slots ${slot + 1} and ${slot + 2}`;
}

/** "buoy orange", "any colour", "no knot" */
export function cellInWords(colours: readonly ChartColour[], cell: number | undefined): string {
  if (cell === undefined || cell === BARE) return 'no knot';
  if (cell === ANY_COLOUR) return 'any colour';
  const colour = colours[cell];
  return colour === undefined ? 'no colour' : colourName(colour);
}

/** "forward knot" */
export function kindInWords(kind: number | undefined): string {
  const name = KNOT_KINDS[kind ?? 255];
  return name === undefined ? 'no knot' : `${name} knot`;
}

/** "Row 3, slots 4 and 5: buoy orange" */
export function pictureWords(
  lattice: Lattice,
  colours: readonly ChartColour[],
  cells: Uint8Array,
  place: Place,
): string {
  if (!isPlace(lattice, place)) return placeInWords(lattice, place);
  return `${placeInWords(lattice, place)}: ${cellInWords(colours, cells[indexOf(lattice, place)])}`;
}

/** "Row 3, slots 4 and 5: forward knot, buoy orange" */
export function knotWords(
  lattice: Lattice,
  colours: readonly ChartColour[],
  knots: Uint8Array,
  cells: Uint8Array,
  place: Place,
): string {
  if (!isPlace(lattice, place)) return placeInWords(lattice, place);
  const at = indexOf(lattice, place);
  const kind = kindInWords(knots[at]);
  const colour = cells[at] === BARE ? '' : `, ${cellInWords(colours, cells[at])}`;
  return `${placeInWords(lattice, place)}: ${kind}${colour}`;
}
