import { knotsAcross, knotsInRow } from '../diagonal/lattice.js';
import { BARE, type DiagonalPicture } from '../diagonal/picture.js';

/**
 * A picture as a net. A wire is a piece of string between one knot and the next; a place without a
 * knot is no interruption. Only the colours of wires matter to a picture: the two strings of a knot
 * leave it in either order, so the two wires below a knot have the colours of the two above it, in
 * either order, and the knot can show either of them.
 */
export interface Net {
  readonly wires: number;
  readonly knots: number;
  /** Wires above and below each knot, left and right. */
  readonly aboveLeft: Int32Array;
  readonly aboveRight: Int32Array;
  readonly belowLeft: Int32Array;
  readonly belowRight: Int32Array;
}

/** The net of a whole picture. */
export interface Weave extends Net {
  /** Where each knot stands in the arrays of the lattice; knots are in reading order. */
  readonly cells: Int32Array;
  /** Colour that each knot is to show, or ANY_COLOUR. */
  readonly wanted: Uint8Array;
  /** Wire in each slot before the first row. */
  readonly start: Int32Array;
  /** Wire in each slot after the last row; the same as `start` where the work is a closed repeat. */
  readonly end: Int32Array;
}

/** The net of a picture; closed to a ring where its end must hang as its start does. */
export function weave(picture: DiagonalPicture, closed: boolean): Weave {
  const { strings, rows, cells } = picture;
  const across = knotsAcross(picture);
  const hanging = Int32Array.from({ length: strings }, (_, slot) => slot);
  const start = hanging.slice();
  const columns: number[][] = [[], [], [], [], []];
  const [aboveLeft, aboveRight, belowLeft, belowRight, at] = columns as [
    number[],
    number[],
    number[],
    number[],
    number[],
  ];
  let wires = strings;
  for (let row = 0; row < rows; row++) {
    const first = (picture.first + row) % 2;
    for (let place = 0; place < knotsInRow(picture, row); place++) {
      const cell = row * across + place;
      if (cells[cell] === BARE) continue;
      const slot = first + 2 * place;
      aboveLeft.push(hanging[slot] as number);
      aboveRight.push(hanging[slot + 1] as number);
      belowLeft.push(wires);
      belowRight.push(wires + 1);
      at.push(cell);
      hanging[slot] = wires;
      hanging[slot + 1] = wires + 1;
      wires += 2;
    }
  }
  const wanted = Uint8Array.from(at, (cell) => cells[cell] as number);
  const names = closed ? closedNames(wires, start, hanging) : null;
  const named = (list: ArrayLike<number>) =>
    Int32Array.from(list, (wire) => (names === null ? wire : (names[wire] as number)));
  return {
    wires,
    knots: at.length,
    aboveLeft: named(aboveLeft),
    aboveRight: named(aboveRight),
    belowLeft: named(belowLeft),
    belowRight: named(belowRight),
    cells: Int32Array.from(at),
    wanted,
    start: named(start),
    end: named(hanging),
  };
}

/** The last wire in each slot goes by the name of the first one there. */
function closedNames(wires: number, start: Int32Array, end: Int32Array): Int32Array {
  const names = Int32Array.from({ length: wires }, (_, wire) => wire);
  for (let slot = 0; slot < start.length; slot++) {
    names[end[slot] as number] = start[slot] as number;
  }
  return names;
}
