import {
  ANY_COLOUR,
  BARE,
  type ChartColour,
  DIAGONAL_LIMITS,
  type DiagonalPattern,
  type DiagonalPicture,
  type DiagonalReading,
  InputError,
  knotsAcross,
  knotsInRow,
  type Lattice,
  NO_KNOT,
  simulateDiagonal,
} from '@halfhitch/core';
import type { DiagonalChange, DiagonalProject } from '../../project/project.js';
import { figures } from '../../view/figures.js';
import { indexOf, placeAtSlot, placeOf, slotOf } from './places.js';

const readings = new WeakMap<DiagonalPattern, DiagonalReading>();

/** What a pattern knots; worked out once for each. */
export function readingOf(pattern: DiagonalPattern): DiagonalReading {
  const known = readings.get(pattern) ?? simulateDiagonal(pattern);
  readings.set(pattern, known);
  return known;
}

/** The picture that the knots of a pattern show. */
export function shownBy(pattern: DiagonalPattern): DiagonalPicture {
  return readingOf(pattern).picture;
}

/** What is drawn: freely, or else what the knots show. */
export function drawnPicture({ pattern, wanted }: DiagonalProject): DiagonalPicture {
  return wanted ?? shownBy(pattern);
}

/** The knots in which a picture differs from what is wanted, by their place in the arrays. */
export function differing(shown: DiagonalPicture, wanted: DiagonalPicture): number[] {
  const differs: number[] = [];
  for (let at = 0; at < wanted.cells.length; at++) {
    const cell = wanted.cells[at];
    const shows = shown.cells[at];
    if (cell === ANY_COLOUR ? shows === BARE : cell !== shows) differs.push(at);
  }
  // Entries at the end of short rows are no places.
  return differs.filter((at) => {
    const { row, column } = placeOf(wanted, at);
    return column < knotsInRow(wanted, row);
  });
}

/** What changes when the picture is drawn on: what is just what the knots show is wanted no more. */
export function pictureDrawn(project: DiagonalProject, cells: Uint8Array): DiagonalChange {
  const picture = shownBy(project.pattern);
  const wanted = { ...picture, cells };
  const same = cells.every((cell, at) => cell === picture.cells[at]);
  return { wanted: same ? null : wanted };
}

/** Every place without a knot, and any colour wanted in it. */
export function emptyPattern(
  name: string,
  { strings, rows, first }: Lattice,
  colours: readonly ChartColour[],
): { readonly pattern: DiagonalPattern; readonly wanted: DiagonalPicture } {
  const lattice = { strings, rows, first };
  checkLattice(lattice);
  const size = rows * knotsAcross(lattice);
  return {
    pattern: {
      name,
      ...lattice,
      colours,
      start: new Uint8Array(lattice.strings),
      knots: new Uint8Array(size).fill(NO_KNOT),
    },
    wanted: { name, ...lattice, colours, cells: placesFilled(lattice, ANY_COLOUR) },
  };
}

/** Bytes for a lattice with the same in each place, and 255 where there is none. */
export function placesFilled(lattice: Lattice, byte: number): Uint8Array {
  const across = knotsAcross(lattice);
  const bytes = new Uint8Array(lattice.rows * across).fill(255);
  for (let row = 0; row < lattice.rows; row++) {
    bytes.fill(byte, row * across, row * across + knotsInRow(lattice, row));
  }
  return bytes;
}

/** @throws InputError unless a pattern can have such a lattice */
function checkLattice({ strings, rows }: Lattice): void {
  const { minStrings, maxStrings, minRows, maxRows } = DIAGONAL_LIMITS;
  check('strings', strings, minStrings, maxStrings);
  check('rows', rows, minRows, maxRows);
}

function check(what: string, many: number, least: number, most: number): void {
  if (Number.isInteger(many) && many >= least && many <= most) return;
  throw new InputError(
    `${what}-limit`,
    Number.isInteger(many)
      ? `A diagonal pattern cannot have ${figures(many)} ${what}.`
      : `The number of ${what} is not a whole number.`,
    {},
    `Keep to ${least} to ${figures(most)} ${what}.`,
  );
}

/**
 * The project on another lattice. What is drawn and tied stays where rows and slots stay; new
 * places have no knot, and any colour is wanted in them. Another slot for the first knot is another
 * lattice altogether: knots and picture go along by one slot, to the right or to the left.
 */
export function relaid(project: DiagonalProject, lattice: Lattice): DiagonalChange {
  checkLattice(lattice);
  const { pattern } = project;
  const { strings, rows, first } = lattice;
  if (strings === pattern.strings && rows === pattern.rows && first === pattern.first) return {};
  const knots = placesFilled(lattice, NO_KNOT);
  const picture = drawnPicture(project);
  const cells = placesFilled(lattice, ANY_COLOUR);
  const aside = first - pattern.first;
  const across = knotsAcross(pattern);
  for (let at = 0; at < pattern.knots.length; at++) {
    const from = placeOf(pattern, at);
    if (from.column >= knotsInRow(pattern, from.row) || across === 0) continue;
    const to = placeAtSlot(lattice, from.row, slotOf(pattern, from) + aside);
    if (to === null) continue;
    const index = indexOf(lattice, to);
    knots[index] = pattern.knots[at] as number;
    cells[index] = picture.cells[at] as number;
  }
  const start = new Uint8Array(strings);
  for (let slot = 0; slot < strings; slot++) {
    const from = Math.max(0, Math.min(pattern.strings - 1, slot - aside));
    start[slot] = pattern.start[from] as number;
  }
  const next: DiagonalPattern = { ...pattern, ...lattice, start, knots };
  const wanted: DiagonalPicture = { ...picture, ...lattice, cells };
  const shown = shownBy(next).cells;
  return { pattern: next, wanted: cells.every((cell, at) => cell === shown[at]) ? null : wanted };
}

/** The project in other colours: each colour of the legend goes to a place of a new one. */
export function recoloured(
  project: DiagonalProject,
  colours: readonly ChartColour[],
  places: readonly number[],
): DiagonalChange {
  const { pattern, wanted } = project;
  const moved = (bytes: Uint8Array): Uint8Array =>
    places.every((place, at) => place === at) ? bytes : bytes.map((one) => places[one] ?? one);
  return {
    pattern: { ...pattern, colours, start: moved(pattern.start) },
    wanted: wanted === null ? null : { ...wanted, colours, cells: moved(wanted.cells) },
  };
}

/** How many strings and wanted knots have each colour. */
export function usesOf({ pattern, wanted }: DiagonalProject): number[] {
  const uses = pattern.colours.map(() => 0);
  const count = (bytes: Uint8Array): void => {
    for (const one of bytes) if (one < uses.length) uses[one] = (uses[one] as number) + 1;
  };
  count(pattern.start);
  if (wanted !== null) count(wanted.cells);
  return uses;
}
