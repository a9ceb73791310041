import { knotsInRow, type Lattice, slotOfPlace } from '../diagonal/lattice.js';
import { hangingStrings } from '../diagonal/plan.js';
import type { DiagonalReading } from '../diagonal/simulate.js';
import { NO_STRING_HERE } from '../diagonal/simulate.js';
import { KNOT_KINDS, type KnotKind } from '../model/knot.js';
import { safeColour } from '../picture/markup.js';

export interface DrawnKnot {
  /** Place in the row from the left, from 0. */
  readonly place: number;
  /** Slot of the left string, from 0. */
  readonly slot: number;
  readonly kind: KnotKind;
  /** The string that ties it. */
  readonly tying: number;
}

/** A knotted piece as a picture needs it, whatever it was knotted from. */
export interface DiagonalDrawn extends Lattice {
  readonly name: string;
  /** String in each slot before each row, and after the last: `(rows + 1) x strings`. */
  readonly order: Uint16Array;
  /** Colour of a string as `#rrggbb`. */
  colourOf(string: number): string;
  /** The knots of a row, from the left. */
  knotsOf(row: number): Iterable<DrawnKnot>;
}

/** What a pattern knots, as a picture needs it. */
export function drawnOf(reading: DiagonalReading): DiagonalDrawn {
  const { pattern, tying, order } = reading;
  const { name, strings, rows, first, knots } = pattern;
  const across = rows === 0 ? 0 : knots.length / rows;
  const colours = hangingStrings(pattern).map(({ colour }) => safeColour(colour));
  return {
    name,
    strings,
    rows,
    first,
    order,
    colourOf: (string) => colours[string] ?? '#808080',
    *knotsOf(row) {
      for (let place = 0; place < knotsInRow(pattern, row); place++) {
        const cell = row * across + place;
        const kind = KNOT_KINDS[knots[cell] as number];
        const ties = tying[cell] as number;
        if (kind === undefined || ties === NO_STRING_HERE) continue;
        yield { place, slot: slotOfPlace(pattern, row, place), kind, tying: ties };
      }
    },
  };
}
