import { firstSlotOf, knotsAcross, knotsInRow, type Lattice } from '@halfhitch/core';
import type { Place } from '../../draw/edit/place.js';

// The column of a place counts the places of its row from the left, from 0.

/** Whether a lattice has a place for a knot there. */
export function isPlace(lattice: Lattice, { row, column }: Place): boolean {
  if (row < 0 || row >= lattice.rows || column < 0) return false;
  return column < knotsInRow(lattice, row);
}

/** Slot of the left string of a place; also of places beside the lattice. */
export function slotOf(lattice: Lattice, { row, column }: Place): number {
  return firstSlotOf(lattice, mod2(row)) + 2 * column;
}

/** The place whose left string hangs in a slot, or null where the row has none. */
export function placeAtSlot(lattice: Lattice, row: number, slot: number): Place | null {
  const column = (slot - firstSlotOf(lattice, mod2(row))) / 2;
  const place = { row, column };
  return Number.isInteger(column) && isPlace(lattice, place) ? place : null;
}

/** The place of the lattice that is nearest to one beside it; a lattice of one row may have none. */
export function nearestPlace(lattice: Lattice, { row, column }: Place): Place {
  const inside = Math.max(0, Math.min(lattice.rows - 1, row));
  const most = Math.max(0, knotsInRow(lattice, inside) - 1);
  return { row: inside, column: Math.max(0, Math.min(most, column)) };
}

export function indexOf(lattice: Lattice, { row, column }: Place): number {
  return row * knotsAcross(lattice) + column;
}

export function placeOf(lattice: Lattice, index: number): Place {
  const across = knotsAcross(lattice);
  return { row: Math.floor(index / across), column: index % across };
}

/** Knots that touch one: those it shares a string with in the rows above and below. */
export function touching(lattice: Lattice, place: Place): Place[] {
  const slot = slotOf(lattice, place);
  return [-1, 1].flatMap((down) =>
    [-1, 1].flatMap((side) => placeAtSlot(lattice, place.row + down, slot + side) ?? []),
  );
}

function mod2(row: number): number {
  return ((row % 2) + 2) % 2;
}
