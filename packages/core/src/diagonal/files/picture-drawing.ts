import type { ChartColour, ChartNotice } from '../../chart/chart.js';
import { collectColours } from '../../chart/png/colours.js';
import { readPng } from '../../chart/png.js';
import { InputError } from '../../errors.js';
import {
  DIAGONAL_LIMITS,
  knotIndex,
  knotsAcross,
  knotsInRow,
  type Lattice,
  slotOfPlace,
} from '../lattice.js';
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
  /** Strings the picture is for. Default: one more than columns, so that a column is a gap. */
  readonly strings?: number;
  /** Slot of the first knot of the first row, from 0. Default: 0. */
  readonly first?: 0 | 1;
}

/** A pixel that is less solid than this may be any colour. */
const SOLID = 128;

/**
 * The picture wanted of a diagonal pattern, from a drawing that is as wide as the work. A row of the
 * drawing is a row of knots, and a knot takes the field under its middle; between two fields, the
 * right one. As the knots of a row leave every other gap between strings free, a drawing with a
 * column for each gap has every second field looked at, in brick order.
 *
 * @throws InputError where the strings or rows are too few or too many
 */
export function pictureFromDrawing(drawing: Drawing, options: GridOptions = {}): DiagonalPicture {
  const lattice = latticeOf(drawing, options);
  const cells = new Uint8Array(lattice.rows * knotsAcross(lattice)).fill(BARE);
  for (const { cell, field } of fieldsUnderKnots(lattice, drawing.columns)) {
    cells[cell] = drawing.cells[field] as number;
  }
  return { name: drawing.name, ...lattice, ...onlyUsed(drawing.colours, cells) };
}

/**
 * Reads a drawing as a wanted picture from a PNG; see `pictureFromDrawing`. See-through pixels may be
 * any colour. Pixels that no knot takes are not looked at.
 *
 * @param bytes at most 16 MiB of them
 * @throws InputError when it is no such picture, is damaged, or exceeds the limits
 */
export function readDrawnPng(bytes: Uint8Array, options: GridOptions = {}): PictureReading {
  const { width: columns, height: rows, rgb, alpha, notices } = readPng(bytes);
  const lattice = latticeOf({ columns, rows }, options);
  const isSolid = (field: number): boolean => alpha === null || (alpha[field] as number) >= SOLID;
  const looked = new Set<number>();
  for (const { field } of fieldsUnderKnots(lattice, columns)) if (isSolid(field)) looked.add(field);
  const [some] = looked;
  if (some === undefined) {
    throw new InputError(
      'no-colours',
      'Every pixel that stands for a knot is see-through.',
      {},
      'Draw at least one knot.',
    );
  }
  // What is not looked at takes a colour that is, so that it adds none.
  const seen = rgb.map((colour, field) => (looked.has(field) ? colour : (rgb[some] as number)));
  const { colours, cells } = collectColours(seen, columns);
  for (let field = 0; field < cells.length; field++) if (!isSolid(field)) cells[field] = ANY_COLOUR;
  const picture = pictureFromDrawing({ name: '', rows, columns, colours, cells }, options);
  return { picture, notices: notices.map(openPlaces) };
}

function openPlaces(notice: ChartNotice): ChartNotice {
  if (notice.code !== 'transparency-flattened') return notice;
  return {
    code: 'transparency-open',
    message:
      'Pixels of the picture are see-through: knots may have any colour there, or, where they are more than half solid, what they look like on white.',
  };
}

/** The lattice that a drawing is for, within the limits. */
function latticeOf(
  { rows, columns }: Pick<Drawing, 'rows' | 'columns'>,
  { strings = columns + 1, first = 0 }: GridOptions,
): Lattice {
  const { minStrings, maxStrings, minRows, maxRows } = DIAGONAL_LIMITS;
  within('strings', strings, minStrings, maxStrings);
  within('rows', rows, minRows, maxRows);
  return { strings, rows, first };
}

/** For each knot its place in the arrays of the lattice, and the field under its middle. */
function* fieldsUnderKnots(
  lattice: Lattice,
  columns: number,
): Generator<{ readonly cell: number; readonly field: number }> {
  for (let row = 0; row < lattice.rows; row++) {
    for (let place = 0; place < knotsInRow(lattice, row); place++) {
      const middle = slotOfPlace(lattice, row, place) + 1;
      const column = Math.floor((middle * columns) / lattice.strings);
      yield { cell: knotIndex(lattice, row, place), field: row * columns + column };
    }
  }
}

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
    `A diagonal pattern has ${least} to ${most} ${what}; a long band is drawn with its length down the page.`,
  );
}
