import type { ChartColour } from '../chart/chart.js';
import { KNOT_KINDS, type KnotKind, mirrorKnot } from '../model/knot.js';
import { firstSlotOf, knotsAcross, knotsInRow, type Lattice } from './lattice.js';
import { type DiagonalPattern, NO_KNOT } from './pattern.js';
import { ANY_COLOUR, BARE, type DiagonalPicture } from './picture.js';
import { simulateDiagonal } from './simulate.js';

/** A knot seen in a mirror that stands beside it: the left string takes the part of the right one. */
const BESIDE = tableOf(mirrorKnot);

/**
 * A knot undone and tied the other way up. What went to the right goes to the left, as its string
 * comes from where it went to; a string that stays on its side does so both ways.
 */
const UPSIDE_DOWN = tableOf((kind) => {
  const exchanges = kind === 'forward' || kind === 'backward';
  return exchanges ? mirrorKnot(kind) : kind;
});

function tableOf(change: (kind: KnotKind) => KnotKind): readonly number[] {
  return KNOT_KINDS.map((kind) => KNOT_KINDS.indexOf(change(kind)));
}

/**
 * The pattern as a mirror beside it shows it, left and right exchanged; so does the picture it
 * knots. With an odd number of strings the rows then begin at the other slot.
 */
export function mirrorDiagonal(pattern: DiagonalPattern): DiagonalPattern {
  return {
    ...pattern,
    first: mirroredFirst(pattern),
    start: pattern.start.slice().reverse(),
    knots: mirroredEntries(pattern, pattern.knots).map((kind) => BESIDE[kind] ?? NO_KNOT),
  };
}

/** The picture with left and right exchanged. */
export function mirrorPicture(picture: DiagonalPicture): DiagonalPicture {
  return {
    ...picture,
    first: mirroredFirst(picture),
    cells: mirroredEntries(picture, picture.cells),
  };
}

/**
 * The pattern that knots the picture upside down: its last row first. The strings begin as the
 * pattern's strings end.
 */
export function reverseDiagonal(pattern: DiagonalPattern): DiagonalPattern {
  const { strings, rows, start } = pattern;
  const { order } = simulateDiagonal(pattern);
  return {
    ...pattern,
    first: firstSlotOf(pattern, rows - 1),
    start: Uint8Array.from(
      order.subarray(rows * strings, (rows + 1) * strings),
      (string) => start[string] as number,
    ),
    knots: reversedEntries(pattern, pattern.knots).map((kind) => UPSIDE_DOWN[kind] ?? NO_KNOT),
  };
}

/** The picture with its rows from the last to the first. */
export function reversePicture(picture: DiagonalPicture): DiagonalPicture {
  return {
    ...picture,
    first: firstSlotOf(picture, picture.rows - 1),
    cells: reversedEntries(picture, picture.cells),
  };
}

/** The pattern that knots the picture turned by half a turn, 180 degrees. */
export function turnDiagonal(pattern: DiagonalPattern): DiagonalPattern {
  return mirrorDiagonal(reverseDiagonal(pattern));
}

/** The picture turned by half a turn, 180 degrees. */
export function turnPicture(picture: DiagonalPicture): DiagonalPicture {
  return mirrorPicture(reversePicture(picture));
}

/**
 * The pattern with each of its colours taken for another one; the knots stay as they are.
 *
 * @param to for each colour of the pattern, the one it becomes: an index into `colours`; two may
 *   become the same
 * @param colours the colours from now on. Default: those of the pattern
 * @throws RangeError when a colour that a string has becomes none of `colours`
 */
export function recolourDiagonal(
  pattern: DiagonalPattern,
  to: readonly number[],
  colours: readonly ChartColour[] = pattern.colours,
): DiagonalPattern {
  return { ...pattern, colours, start: pattern.start.map((colour) => taken(colour, to, colours)) };
}

/**
 * The picture with each of its colours taken for another one; places of any colour and bare ones
 * stay. Parameters and errors are those of `recolourDiagonal`.
 */
export function recolourPicture(
  picture: DiagonalPicture,
  to: readonly number[],
  colours: readonly ChartColour[] = picture.colours,
): DiagonalPicture {
  const cells = picture.cells.map((cell) =>
    cell === BARE || cell === ANY_COLOUR ? cell : taken(cell, to, colours),
  );
  return { ...picture, colours, cells };
}

function taken(colour: number, to: readonly number[], colours: readonly ChartColour[]): number {
  const place = to[colour];
  if (place === undefined || colours[place] === undefined) {
    throw new RangeError(`Colour ${colour} is to become ${place}, but there is no such colour.`);
  }
  return place;
}

function mirroredFirst({ strings, first }: Lattice): 0 | 1 {
  return ((strings + first) % 2) as 0 | 1;
}

function mirroredEntries(lattice: Lattice, entries: Uint8Array): Uint8Array {
  const across = knotsAcross(lattice);
  const mirrored = new Uint8Array(entries.length).fill(NO_KNOT);
  for (let row = 0; row < lattice.rows; row++) {
    const from = row * across;
    const count = knotsInRow(lattice, row);
    for (let place = 0; place < count; place++) {
      mirrored[from + count - 1 - place] = entries[from + place] as number;
    }
  }
  return mirrored;
}

function reversedEntries(lattice: Lattice, entries: Uint8Array): Uint8Array {
  const across = knotsAcross(lattice);
  const reversed = new Uint8Array(entries.length).fill(NO_KNOT);
  for (let row = 0; row < lattice.rows; row++) {
    const from = row * across;
    reversed.set(entries.subarray(from, from + across), (lattice.rows - 1 - row) * across);
  }
  return reversed;
}
