import type { Lattice } from '@halfhitch/core';
import type { Place } from '../../draw/edit/place.js';
import type { Symmetry } from '../../draw/edit/symmetry.js';
import type { Ink } from './ink.js';
import { indexOf, isPlace, placeAtSlot, placeOf, slotOf, touching } from './places.js';
import { alike } from './symmetry.js';

/**
 * The places that a straight line meets, both ends included. One knot across the line is enough:
 * along a diagonal it goes from touching knot to touching knot, and down a column to every second
 * row.
 */
export function lineBetween(lattice: Lattice, from: Place, to: Place): Place[] {
  const [fromSlot, toSlot] = [slotOf(lattice, from), slotOf(lattice, to)];
  const across = toSlot - fromSlot;
  const down = to.row - from.row;
  const steps = Math.max(1, Math.abs(across), Math.abs(down));
  const places: Place[] = [];
  for (let step = 0; step <= steps; step++) {
    const row = Math.round(from.row + (down * step) / steps);
    const at = fromSlot + (across * step) / steps;
    // Each row has knots at every other slot: the line meets the one it passes within half a knot.
    const parity = (((slotOf(lattice, { row, column: 0 }) % 2) + 2) % 2) as 0 | 1;
    const slot = 2 * Math.round((at - parity) / 2) + parity;
    if (Math.abs(slot - at) > 0.5) continue;
    const place = placeAtSlot(lattice, row, slot);
    const last = places.at(-1);
    if (place === null || (last?.row === place.row && last.column === place.column)) continue;
    places.push(place);
  }
  return places;
}

/** The patch that a knot is in: all that can be gone to from touching knot to touching knot. */
export function patchAt(lattice: Lattice, bytes: Uint8Array, place: Place): Place[] {
  const start = indexOf(lattice, place);
  const kind = bytes[start];
  const reached = new Set([start]);
  for (const index of reached) {
    for (const next of touching(lattice, placeOf(lattice, index))) {
      const at = indexOf(lattice, next);
      if (bytes[at] === kind) reached.add(at);
    }
  }
  return Array.from(reached, (index) => placeOf(lattice, index));
}

/** Draws places with their images. */
export function inked(
  lattice: Lattice,
  bytes: Uint8Array,
  places: readonly Place[],
  ink: Ink,
  symmetry: Symmetry,
): Uint8Array {
  const next = bytes.slice();
  drawInto(lattice, next, places, ink, symmetry);
  return next;
}

function drawInto(
  lattice: Lattice,
  bytes: Uint8Array,
  places: readonly Place[],
  ink: Ink,
  symmetry: Symmetry,
): void {
  for (const one of places) {
    if (!isPlace(lattice, one)) continue;
    // The place itself last: where it is its own image, what was chosen is drawn.
    for (const { place, image } of alike(lattice, one, symmetry).reverse()) {
      bytes[indexOf(lattice, place)] = ink[image];
    }
  }
}

/** A stroke from the moment the pen comes down. */
export class LatticeStroke {
  bytes: Uint8Array;
  private last: Place;

  constructor(
    private readonly lattice: Lattice,
    private readonly before: Uint8Array,
    private readonly tool: 'pencil' | 'line',
    private readonly ink: Ink,
    private readonly symmetry: Symmetry,
    private readonly from: Place,
  ) {
    this.bytes = before.slice();
    this.last = from;
    this.moveTo(from);
  }

  moveTo(place: Place): void {
    const { lattice, ink, symmetry } = this;
    if (this.tool === 'line') this.bytes.set(this.before);
    const start = this.tool === 'line' ? this.from : this.last;
    drawInto(lattice, this.bytes, [...lineBetween(lattice, start, place), place], ink, symmetry);
    this.last = place;
  }
}
