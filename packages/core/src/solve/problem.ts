import { knotsAcross } from '../diagonal/lattice.js';
import { ANY_COLOUR, BARE, type DiagonalPicture } from '../diagonal/picture.js';
import { checkOptions, checkPicture } from './check-input.js';
import type { KnotPlace, SolveOptions } from './options.js';
import { type Weave, weave } from './weave.js';

/** A picture and what else is asked, with the colours that matter numbered from 0. */
export interface Problem {
  readonly picture: DiagonalPicture;
  readonly net: Weave;
  /** Colours in play, as indexes into the colours of the picture. */
  readonly palette: readonly number[];
  /** Colour that each knot of the net is to show, by its number in the palette, or ANY_COLOUR. */
  readonly asked: Uint8Array;
  /** Colour in which each slot must start, by its number in the palette, or ANY_COLOUR. */
  readonly start: Uint8Array;
  /** Most strings of each colour of the palette; the number of strings where there is no limit. */
  readonly most: readonly number[];
  /** Number in the palette of the colour that as few strings as possible are to have, or null. */
  readonly fewestOf: number | null;
}

/**
 * @param spare whether a colour that no knot is to show is in play too, if there is one
 * @throws InputError for a picture or options that make no sense
 */
export function problemOf(
  picture: DiagonalPicture,
  options: SolveOptions,
  spare = options.fewestOf !== undefined,
): Problem {
  checkPicture(picture);
  checkOptions(picture, options);
  const net = weave(picture, options.repeat === true);
  const palette = paletteOf(picture, net, options, spare);
  const numbers = new Uint8Array(256).fill(ANY_COLOUR);
  for (const [number, colour] of palette.entries()) numbers[colour] = number;
  const { strings } = picture;
  return {
    picture,
    net,
    palette,
    asked: net.wanted.map((colour) => numbers[colour] as number),
    start: Uint8Array.from({ length: strings }, (_, slot) => {
      return numbers[options.start?.[slot] ?? ANY_COLOUR] as number;
    }),
    most: palette.map((colour) => Math.min(options.most?.[colour] ?? strings, strings)),
    fewestOf: options.fewestOf === undefined ? null : palette.indexOf(options.fewestOf),
  };
}

/**
 * The colours in play. A colour that no knot is to show can be exchanged for any other throughout
 * without a knot showing it, so it is left out, unless strings must have it, or may be short of
 * another. For the same reason one spare colour stands for all others.
 */
function paletteOf(
  picture: DiagonalPicture,
  net: Weave,
  options: SolveOptions,
  spare: boolean,
): number[] {
  const { colours } = picture;
  if (options.most !== undefined) return colours.map((_, colour) => colour);
  const used = new Set<number>();
  for (const colour of net.wanted) if (colour !== ANY_COLOUR) used.add(colour);
  for (const colour of Array.from(options.start ?? [])) {
    if (colour !== ANY_COLOUR) used.add(colour);
  }
  if (options.fewestOf !== undefined) used.add(options.fewestOf);
  if (used.size === 0) used.add(0);
  if (spare) {
    const other = colours.findIndex((_, colour) => !used.has(colour));
    if (other >= 0) used.add(other);
  }
  return [...used].sort((a, b) => a - b);
}

/** Row and place of an entry of the lattice's arrays. */
export function placeOfCell(picture: DiagonalPicture, cell: number): KnotPlace {
  const across = knotsAcross(picture);
  return { row: Math.floor(cell / across), place: cell % across, cell };
}

/** The knots in which what is shown is not what is wanted, in reading order. */
export function differingKnots(wanted: DiagonalPicture, shown: Uint8Array): KnotPlace[] {
  const wrong: KnotPlace[] = [];
  for (let cell = 0; cell < wanted.cells.length; cell++) {
    const colour = wanted.cells[cell] as number;
    const got = shown[cell] as number;
    const fits = colour === ANY_COLOUR ? got !== BARE : got === colour;
    if (!fits) wrong.push(placeOfCell(wanted, cell));
  }
  return wrong;
}
