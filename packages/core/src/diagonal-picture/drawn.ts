import { knotIndex, knotsInRow, type Lattice, slotOfPlace } from '../diagonal/lattice.js';
import { type DiagonalPlan, hangingStrings } from '../diagonal/plan.js';
import type { DiagonalReading } from '../diagonal/simulate.js';
import { NO_STRING_HERE } from '../diagonal/simulate.js';
import type { DiagonalVerification } from '../diagonal/verify/index.js';
import { KNOT_KINDS, type KnotKind } from '../model/knot.js';
import type { ThreadString } from '../model/strings.js';
import { safeColour } from '../picture/markup.js';

export interface DrawnKnot {
  /** Place in the row from the left, from 0. */
  readonly place: number;
  /** Slot of the left string, from 0. */
  readonly slot: number;
  readonly kind: KnotKind;
  /** Whether only its first half hitch is tied. Default: no. */
  readonly half?: boolean;
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
export function drawnOf({ pattern, tying, order }: DiagonalReading): DiagonalDrawn {
  const { name, knots } = pattern;
  const strings = hangingStrings(pattern);
  return { name, ...latticeOf(pattern), order, ...knotsDrawn(pattern, strings, tying, knots) };
}

/** What the steps of a plan knotted, as the verifier found it. */
export function verifiedDrawing(
  plan: DiagonalPlan,
  { tying, kinds, order }: Pick<DiagonalVerification, 'tying' | 'kinds' | 'order'>,
): DiagonalDrawn {
  const { name, lattice, strings } = plan;
  return { name, ...latticeOf(lattice), order, ...knotsDrawn(lattice, strings, tying, kinds) };
}

function latticeOf({ strings, rows, first }: Lattice): Lattice {
  return { strings, rows, first };
}

function knotsDrawn(
  lattice: Lattice,
  strings: readonly ThreadString[],
  tying: Uint16Array,
  kinds: Uint8Array,
): Pick<DiagonalDrawn, 'colourOf' | 'knotsOf'> {
  const colours = strings.map(({ colour }) => safeColour(colour));
  return {
    colourOf: (string) => colours[string] ?? '#808080',
    *knotsOf(row) {
      for (let place = 0; place < knotsInRow(lattice, row); place++) {
        const cell = knotIndex(lattice, row, place);
        const kind = KNOT_KINDS[kinds[cell] as number];
        const ties = tying[cell] as number;
        if (kind === undefined || ties === NO_STRING_HERE) continue;
        yield { place, slot: slotOfPlace(lattice, row, place), kind, tying: ties };
      }
    },
  };
}
