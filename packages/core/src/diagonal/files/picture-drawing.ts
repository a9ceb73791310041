import type { ChartColour } from '../../chart/chart.js';
import { collectColours } from '../../chart/png/colours.js';
import { readPng } from '../../chart/png.js';
import { InputError } from '../../errors.js';
import { DIAGONAL_LIMITS, firstSlotOf, knotIndex, knotsAcross, knotsInRow } from '../lattice.js';
import { ANY_COLOUR, BARE, type DiagonalPicture } from '../picture.js';
import type { PictureReading } from './picture-file.js';

/** A drawing on a grid, such as a chart: a colour for each field, row by row. */
export interface Drawing {
  readonly name: string;
  readonly rows: number;
  readonly columns: number;
  readonly colours: readonly ChartColour[];
  /** Index into `colours`, or ANY_COLOUR. */
  readonly cells: Uint8Array;
}

export interface GridOptions {
  /** Strings the picture is for. Default: two for each column. */
  readonly strings?: number;
  /** Slot of the first knot of the first row, from 0. Default: 0. */
  readonly first?: 0 | 1;
}

/**
 * The picture wanted of a diagonal pattern, from a drawing. A row of the drawing is a row of knots.
 *
 * With two strings for each column (or one more), a column is a place for a knot; rows that have one
 * knot less leave the last field out. With any other number the drawing is as wide as the work, and
 * a knot takes the field that is under its middle.
 *
 * @throws InputError where the strings or rows are too few or too many
 */
export function pictureFromDrawing(drawing: Drawing, options: GridOptions = {}): DiagonalPicture {
  const { rows, columns } = drawing;
  const { strings = 2 * columns, first = 0 } = options;
  const { minStrings, maxStrings, minRows, maxRows } = DIAGONAL_LIMITS;
  within('strings', strings, minStrings, maxStrings);
  within('rows', rows, minRows, maxRows);
  const lattice = { strings, rows, first };
  const across = knotsAcross(lattice);
  const cells = new Uint8Array(rows * across).fill(BARE);
  for (let row = 0; row < rows; row++) {
    for (let place = 0; place < knotsInRow(lattice, row); place++) {
      const middle = firstSlotOf(lattice, row) + 2 * place + 1;
      const column = across === columns ? place : Math.floor((middle * columns) / strings);
      cells[knotIndex(lattice, row, place)] = drawing.cells[row * columns + column] as number;
    }
  }
  return { name: drawing.name, ...lattice, ...onlyUsed(drawing.colours, cells) };
}

/**
 * Reads a drawing as a wanted picture from a PNG; see `pictureFromDrawing`. A pixel of which nothing
 * is seen stands for any colour.
 *
 * @param bytes at most 16 MiB of them
 * @throws InputError when it is no such picture, is damaged, or exceeds the limits
 */
export function readDrawnPng(bytes: Uint8Array, options: GridOptions = {}): PictureReading {
  const { width: columns, height: rows, rgb, alpha, notices } = readPng(bytes);
  const { colours, cells } = collectColours(rgb, columns);
  if (alpha !== null) {
    for (let at = 0; at < cells.length; at++) if (alpha[at] === 0) cells[at] = ANY_COLOUR;
  }
  const picture = pictureFromDrawing({ name: '', rows, columns, colours, cells }, options);
  // What is not seen at all is not laid on white here.
  const tinted = alpha?.some((value) => value > 0 && value < 255) ?? false;
  return { picture, notices: tinted ? notices : notices.filter(({ code }) => code !== FLATTENED) };
}

const FLATTENED = 'transparency-flattened';

/** The colours that are left, in their order; the first of them where none is. */
function onlyUsed(
  all: readonly ChartColour[],
  cells: Uint8Array,
): { colours: readonly ChartColour[]; cells: Uint8Array } {
  const used = new Set(cells);
  const kept = all.flatMap((_, colour) => (used.has(colour) ? [colour] : []));
  if (kept.length === 0) kept.push(0);
  const numbers = new Map(kept.map((colour, number) => [colour, number]));
  return {
    colours: kept.flatMap((colour) => all[colour] ?? []),
    cells: cells.map((colour) => numbers.get(colour) ?? colour),
  };
}

function within(what: string, value: number, least: number, most: number): void {
  if (Number.isInteger(value) && value >= least && value <= most) return;
  throw new InputError(
    'out-of-range',
    `The picture is for ${value} ${what}.`,
    {},
    `A diagonal pattern has ${least} to ${most} ${what}.`,
  );
}
