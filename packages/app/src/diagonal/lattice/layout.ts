import { firstSlotOf, type Lattice } from '@halfhitch/core';
import type { Place } from '../../draw/edit/place.js';
import type { SightLayout } from '../../draw/sheet/sight.js';
import type { Box } from '../../view/box.js';
import { slotOf } from '../edit/places.js';

/** Room above the knots: the numbers of the slots, and the strings as they hang in, px. */
export const HEADER = 48;
/** Of the numbers alone. */
export const NUMBERS = 22;
const BELOW = 30;

const PITCHES = { least: 3, most: 40 } as const;

/** Where a knot may be met by a finger, px from string to string. */
const COMFORTABLE = { least: 13, most: 26 } as const;

export interface LatticeWish {
  readonly lattice: Lattice;
  /** Row to row, by string to string. */
  readonly aspect: number;
  /** String to string, px; null for what suits the room. */
  readonly pitch: number | null;
  /** What is in sight, px. */
  readonly view: { readonly width: number; readonly height: number };
}

/**
 * Where strings and knots are on a sheet that is scrolled about, px from its top left. A knot is a
 * lozenge two slots wide and two rows high, so that those that share a string touch.
 */
export class LatticeLayout implements SightLayout {
  readonly header = HEADER;
  readonly lattice: Lattice;
  /** From string to string, and from row to row. */
  readonly pitch: number;
  readonly rise: number;
  /** Width of the room beside the strings, on each side. */
  readonly gutter: number;
  /** Left side of the first slot, and middle of the first row. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;

  constructor({ lattice, aspect, pitch, view }: LatticeWish) {
    this.lattice = lattice;
    this.gutter = 16 + 7 * String(lattice.rows).length;
    this.pitch = pitch ?? this.suiting(view.width);
    this.rise = this.pitch * aspect;
    const across = lattice.strings * this.pitch + 2 * this.gutter;
    this.width = Math.max(across, view.width);
    this.left = (this.width - across) / 2 + this.gutter;
    this.top = HEADER + this.rise;
    this.height = Math.max(this.top + lattice.rows * this.rise + BELOW, view.height);
  }

  get size(): number {
    return this.pitch;
  }

  get step(): { readonly across: number; readonly down: number } {
    return { across: this.pitch, down: this.rise };
  }

  private suiting(width: number): number {
    const filling = (width - 2 * this.gutter - 2) / this.lattice.strings;
    return Math.max(COMFORTABLE.least, Math.min(COMFORTABLE.most, filling));
  }

  /** Middle of a slot. */
  x(slot: number): number {
    return this.left + (slot + 0.5) * this.pitch;
  }

  /** Middle of a row. */
  y(row: number): number {
    return this.top + row * this.rise;
  }

  /** The place whose lozenge a point is in; may be beside the lattice. */
  placeAt(x: number, y: number): Place {
    const across = (x - this.left) / this.pitch;
    const down = (y - this.top) / this.rise;
    const above = Math.floor(down);
    const found = [above, above + 1].map((row) => {
      const first = firstSlotOf(this.lattice, ((row % 2) + 2) % 2);
      const column = Math.round((across - 1 - first) / 2);
      const away = Math.abs(across - (first + 2 * column + 1)) + Math.abs(down - row);
      return { row, column, away };
    });
    const [one, other] = found as [(typeof found)[0], (typeof found)[0]];
    const { row, column } = one.away <= other.away ? one : other;
    return { row, column };
  }

  /** The box around a knot's lozenge, less the tips. */
  boxOf(place: Place): Box {
    const x = this.left + (slotOf(this.lattice, place) + 1) * this.pitch;
    const [wide, high] = [this.pitch * 0.72, this.rise * 0.72];
    return { x: x - wide, y: this.y(place.row) - high, width: 2 * wide, height: 2 * high };
  }

  /** Rows of which something is in a stretch of the sheet; the end is not included. */
  rowsIn(from: number, end: number): { readonly first: number; readonly end: number } {
    return {
      first: Math.max(0, Math.floor((from - this.top) / this.rise) - 1),
      end: Math.min(this.lattice.rows, Math.ceil((end - this.top) / this.rise) + 2),
    };
  }

  slotsIn(from: number, end: number): { readonly first: number; readonly end: number } {
    return {
      first: Math.max(0, Math.floor((from - this.left) / this.pitch) - 1),
      end: Math.min(this.lattice.strings, Math.ceil((end - this.left) / this.pitch) + 1),
    };
  }
}

export function withinPitches(pitch: number): number {
  return Math.max(PITCHES.least, Math.min(PITCHES.most, pitch));
}
