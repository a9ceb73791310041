import type { ChartColour } from '../chart/chart.js';
import { knotsAcross } from '../diagonal/lattice.js';
import { type DiagonalPattern, NO_KNOT } from '../diagonal/pattern.js';
import { ANY_COLOUR, BARE } from '../diagonal/picture.js';
import { listed } from '../document/quote.js';
import { InputError } from '../errors.js';
import { colourInWords } from '../instructions/wording.js';
import { HALF, type Piece, type PieceRow } from './piece.js';
import { DiagonalLook, type DiagonalSeen } from './seen.js';

/** What was seen, in the colours of a pattern; says how many things a place differs in. */
export class Comparison {
  readonly strings: number;
  readonly across: number;
  /** Rows seen. */
  readonly rows: number;
  /** By colour of the pattern: the first one of the same value, as two that look alike are one. */
  readonly alike: Uint8Array;
  private readonly cells: Uint8Array;
  private readonly looks: Uint8Array | null;
  private readonly hanging: Uint8Array | null;

  /** @throws InputError when what was seen does not fit the pattern */
  constructor(pattern: DiagonalPattern, seen: DiagonalSeen) {
    if (seen.strings !== pattern.strings) {
      throw new InputError(
        'other-width',
        `What was seen has ${seen.strings} strings, but the pattern has ${pattern.strings}.`,
        {},
        'Give the piece with all its strings, and leave open where you did not look.',
      );
    }
    if (seen.first !== pattern.first) {
      throw new InputError(
        'other-first',
        `What was seen begins in slot ${seen.first + 1}, but the pattern begins in slot ${pattern.first + 1}.`,
        {},
        'Give the rows from the first one on, and leave open where you did not look.',
      );
    }
    this.strings = pattern.strings;
    this.across = knotsAcross(pattern);
    this.rows = seen.rows;
    this.alike = Uint8Array.from(pattern.colours, ({ hex }) =>
      pattern.colours.findIndex((other) => other.hex === hex),
    );
    const place = this.translation(pattern, seen);
    const size = this.rows * this.across;
    this.cells = Uint8Array.from({ length: size }, (_, cell) => place(seen.cells[cell]));
    this.looks = seen.looks ?? null;
    const { hanging } = seen;
    this.hanging = hanging === undefined ? null : hanging.map((colour) => place(colour));
  }

  private translation(pattern: DiagonalPattern, seen: DiagonalSeen) {
    const places = seen.colours.map((colour) => placeOf(colour, pattern.colours));
    return (colour: number | undefined): number => {
      if (colour === undefined || colour === ANY_COLOUR) return ANY_COLOUR;
      if (colour === BARE) return BARE;
      const found = places[colour] ?? -1;
      if (found >= 0) return this.alike[found] as number;
      throw new InputError(
        'colour-not-in-pattern',
        `No string of the pattern has the colour ${called(seen.colours[colour])}.`,
        {},
        `Use the pattern's colours: ${listed(pattern.colours.map(called))}.`,
      );
    };
  }

  /** Colours of a piece's strings as they are compared. */
  startOf({ start }: Piece): Uint8Array {
    return start.map((colour) => this.alike[colour] as number);
  }

  /** 1 where the colour of a place was seen and is another. */
  colourDiffers(row: number, place: number, colour: number): 0 | 1 {
    const seen = this.cells[row * this.across + place] as number;
    return seen === ANY_COLOUR || seen === colour ? 0 : 1;
  }

  /** 1 where the look of a knot was seen and is another. */
  lookDiffers(row: number, place: number, knot: number): 0 | 1 {
    if (this.looks === null) return 0;
    const seen = this.looks[row * this.across + place] as number;
    return seen === DiagonalLook.notLooked || seen === lookOf(knot) ? 0 : 1;
  }

  /** 1 where the string in a slot below the work was seen and has another colour. */
  hangingDiffers(slot: number, colour: number): 0 | 1 {
    const seen = this.hanging?.[slot] ?? ANY_COLOUR;
    return seen === ANY_COLOUR || seen === colour ? 0 : 1;
  }

  /** How many things differ in a row, by its knots and who ties them. */
  rowDiffers(row: number, { knots }: PieceRow, tying: Uint16Array, start: Uint8Array): number {
    let differing = 0;
    for (let place = 0; place < this.across; place++) {
      const knot = knots[place] as number;
      const colour = knot === NO_KNOT ? BARE : (start[tying[place] as number] as number);
      differing += this.colourDiffers(row, place, colour) + this.lookDiffers(row, place, knot);
    }
    return differing;
  }

  /** How many things differ in a row that the piece does not have. */
  rowWithoutKnots(row: number): number {
    let differing = 0;
    for (let place = 0; place < this.across; place++) {
      differing += this.colourDiffers(row, place, BARE) + this.lookDiffers(row, place, NO_KNOT);
    }
    return differing;
  }

  colourSeen(row: number, place: number): boolean {
    return this.cells[row * this.across + place] !== ANY_COLOUR;
  }

  lookSeen(row: number, place: number): boolean {
    const look = this.looks?.[row * this.across + place] ?? DiagonalLook.notLooked;
    return look !== DiagonalLook.notLooked;
  }

  hangingSeen(slot: number): boolean {
    return (this.hanging?.[slot] ?? ANY_COLOUR) !== ANY_COLOUR;
  }
}

/** The look of a knot as PieceRow has it. */
export function lookOf(knot: number): number {
  if (knot === NO_KNOT) return DiagonalLook.none;
  return knot >= HALF ? DiagonalLook.half : knot;
}

/** A colour's place among others, by its value or else by its name; -1 when it is none of them. */
function placeOf({ hex, name }: ChartColour, colours: readonly ChartColour[]): number {
  const same = colours.findIndex((colour) => colour.hex.toLowerCase() === hex.toLowerCase());
  if (same >= 0) return same;
  const called = name.trim().toLowerCase();
  return called === ''
    ? -1
    : colours.findIndex((colour) => colour.name.trim().toLowerCase() === called);
}

function called({ hex = '', name = '' }: Partial<ChartColour> = {}): string {
  return colourInWords({ id: '', role: 'base', colour: hex, name });
}
