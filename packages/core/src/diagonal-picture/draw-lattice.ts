import {
  firstSlotOf,
  knotIndex,
  knotsInLattice,
  knotsInRow,
  slotOfPlace,
} from '../diagonal/lattice.js';
import { ANY_COLOUR, BARE, type DiagonalPicture } from '../diagonal/picture.js';
import { slotsInWords } from '../diagonal-words/wording.js';
import { InputError } from '../errors.js';
import { colourInWords, count } from '../instructions/wording.js';
import { isDark } from '../picture/draw-chart.js';
import { escapeMarkup, safeColour, short } from '../picture/markup.js';
import { checkPictureSize } from '../picture/size.js';
import { printable } from '../printable.js';

export interface DrawLatticeOptions {
  /** What is really knotted, where that may differ: the places where it does are marked. */
  readonly knotted?: DiagonalPicture;
  /** First row drawn, and the row after the last, from 0. Default: all rows. */
  readonly from?: number;
  readonly end?: number;
  /** Says what the picture shows. */
  readonly title?: string;
  /** Goes before every id in the picture. Default: `hh-`. */
  readonly idPrefix?: string;
  /** Writes each colour's key into its places, so that colour is not the only sign. Default: yes. */
  readonly keys?: boolean;
}

/** Half the width and half the height of a place, as a diamond: a slot wide, a row high. */
const HALF = 12;
const LABELS = 40;
const TOP = 20;

/**
 * Draws the places of a lattice with their colours, each as a diamond between its neighbours: an
 * SVG document. Places without a knot have a dashed rim, those that may show any colour are
 * hatched. Where `knotted` shows another colour than the picture wants, the place has a double
 * rim and holds both: what is knotted, and in its middle what was wanted; its `title` says so.
 *
 * @throws InputError above 300,000 knots, or when the two are of different lattices
 */
export function drawLattice(wanted: DiagonalPicture, options: DrawLatticeOptions = {}): string {
  const { knotted = wanted } = options;
  check(wanted, knotted);
  const from = Math.max(0, options.from ?? 0);
  const end = Math.min(wanted.rows, options.end ?? wanted.rows);
  const prefix = options.idPrefix ?? 'hh-';
  const keys = options.keys ?? true;
  const width = LABELS + wanted.strings * HALF + 10;
  const height = TOP + (end - from + 1) * HALF + 8;
  const differing = countDifferences(wanted, knotted, from, end);
  const title =
    options.title ?? `${printable(wanted.name) || 'Diagonal pattern'}, rows ${from + 1} to ${end}`;
  const about =
    knotted === wanted
      ? 'The colours of the knots, row by row.'
      : differing === 0
        ? 'The knots show the wanted colours everywhere.'
        : `${count(differing, 'knot')} differ${differing === 1 ? 's' : ''} from what is wanted; each has a double rim and holds both colours.`;
  const pieces = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="${prefix}lattice-title ${prefix}lattice-about" font-family="system-ui, sans-serif" font-size="9">`,
    `<title id="${prefix}lattice-title">${escapeMarkup(printable(title))}</title>`,
    `<desc id="${prefix}lattice-about">${about}</desc>`,
    `<defs><pattern id="${prefix}any" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 2.5H5" stroke="#7a858c" stroke-width="1.2"/></pattern></defs>`,
    slotNumbers(wanted.strings),
  ];
  const draw = new Places(wanted, knotted, prefix, keys);
  for (let row = from; row < end; row++) pieces.push(draw.row(row, TOP + (row - from + 1) * HALF));
  pieces.push('</svg>\n');
  return pieces.join('');
}

function check(wanted: DiagonalPicture, knotted: DiagonalPicture): void {
  checkPictureSize(knotsInLattice(wanted));
  if (
    knotted.strings === wanted.strings &&
    knotted.rows === wanted.rows &&
    knotted.first === wanted.first
  ) {
    return;
  }
  throw new InputError(
    'other-lattice',
    'What is wanted and what is knotted differ in their strings, rows or first slot.',
    {},
    'Give both for the same lattice.',
  );
}

/** Whether a place shows something else than is wanted; colours count by their values. */
export function placeDiffers(
  wanted: DiagonalPicture,
  knotted: DiagonalPicture,
  row: number,
  place: number,
): boolean {
  const cell = knotIndex(wanted, row, place);
  const want = wanted.cells[cell] as number;
  const have = knotted.cells[cell] as number;
  if (want === ANY_COLOUR || have === ANY_COLOUR) return false;
  if (want === BARE || have === BARE) return want !== have;
  return wanted.colours[want]?.hex !== knotted.colours[have]?.hex;
}

function countDifferences(
  wanted: DiagonalPicture,
  knotted: DiagonalPicture,
  from: number,
  end: number,
): number {
  let differing = 0;
  if (knotted === wanted) return differing;
  for (let row = from; row < end; row++) {
    for (let place = 0; place < knotsInRow(wanted, row); place++) {
      if (placeDiffers(wanted, knotted, row, place)) differing++;
    }
  }
  return differing;
}

function slotNumbers(strings: number): string {
  const numbers: string[] = [];
  for (let slot = 1; slot <= strings; slot++) {
    if (slot !== 1 && slot % 5 !== 0 && slot !== strings) continue;
    if (slot === strings && slot % 5 !== 0 && slot % 5 < 2 && slot > 1) continue;
    numbers.push(`<text x="${LABELS + (slot - 0.5) * HALF}" y="${TOP - 8}">${slot}</text>`);
  }
  return `<g fill="#1d2429" text-anchor="middle">${numbers.join('')}</g>`;
}

/** Draws the places of a row. */
class Places {
  private readonly wantedFill: readonly string[];
  private readonly knottedFill: readonly string[];

  constructor(
    private readonly wanted: DiagonalPicture,
    private readonly knotted: DiagonalPicture,
    private readonly prefix: string,
    private readonly keys: boolean,
  ) {
    this.wantedFill = wanted.colours.map(({ hex }) => safeColour(hex));
    this.knottedFill = knotted.colours.map(({ hex }) => safeColour(hex));
  }

  row(row: number, y: number): string {
    const { wanted, knotted } = this;
    const pieces = [
      `<g data-row="${row + 1}"><text x="${LABELS - 8}" y="${y + 3}" text-anchor="end" fill="#1d2429">${row + 1}</text>`,
    ];
    const marked: string[] = [];
    for (let place = 0; place < knotsInRow(wanted, row); place++) {
      const x = LABELS + (slotOfPlace(wanted, row, place) + 1) * HALF;
      const cell = knotIndex(wanted, row, place);
      const differs = knotted !== wanted && placeDiffers(wanted, knotted, row, place);
      const shown = knotted.cells[cell] as number;
      const plain = this.place(x, y, shown, this.knottedFill, differs ? '' : this.keyOf(shown));
      if (differs) marked.push(this.marked(row, place, x, y, plain));
      else pieces.push(plain);
    }
    // What is marked lies above its neighbours, so that its rim is whole.
    return `${pieces.join('')}${marked.join('')}</g>\n`;
  }

  private keyOf(colour: number): string {
    return this.keys ? (this.knotted.colours[colour]?.key ?? '').trim() : '';
  }

  private place(
    x: number,
    y: number,
    colour: number,
    fills: readonly string[],
    key: string,
  ): string {
    const shape = diamond(x, y, HALF - 0.5);
    if (colour === BARE) {
      return `<path d="${shape}" fill="none" stroke="#7a858c" stroke-width=".8" stroke-dasharray="2 2"/>`;
    }
    const fill = colour === ANY_COLOUR ? `url(#${this.prefix}any)` : (fills[colour] ?? '#808080');
    const text =
      key === ''
        ? ''
        : `<text x="${short(x)}" y="${y + 3}" text-anchor="middle" fill="${isDark(fill) ? '#fff' : '#000'}">${escapeMarkup(key)}</text>`;
    return `<path d="${shape}" fill="${fill}" stroke="#000" stroke-opacity=".3" stroke-width=".6"/>${text}`;
  }

  private marked(row: number, place: number, x: number, y: number, plain: string): string {
    const { wanted, knotted } = this;
    const cell = knotIndex(wanted, row, place);
    const [want, have] = [wanted.cells[cell] as number, knotted.cells[cell] as number];
    const slot = firstSlotOf(wanted, row) + 2 * place;
    const title = `Row ${row + 1}, ${slotsInWords(slot)}: wanted ${nameOf(wanted, want)}, knotted ${nameOf(knotted, have)}`;
    const rim = diamond(x, y, HALF - 1);
    const core = this.place(x, y, want, this.wantedFill, '').replace(
      diamond(x, y, HALF - 0.5),
      diamond(x, y, 3.8),
    );
    return (
      `<g data-differs="${place + 1}"><title>${escapeMarkup(title)}</title>${plain}` +
      `<path d="${rim}" fill="none" stroke="#fff" stroke-width="2.6"/><path d="${rim}" fill="none" stroke="#000" stroke-width="1.3"/>` +
      `<path d="${diamond(x, y, 4.8)}" fill="#fff" stroke="#000" stroke-width=".7"/>${core}</g>`
    );
  }
}

function diamond(x: number, y: number, half: number): string {
  return `M${short(x - half)} ${short(y)}L${short(x)} ${short(y - half)}L${short(x + half)} ${short(y)}L${short(x)} ${short(y + half)}Z`;
}

function nameOf(picture: DiagonalPicture, colour: number): string {
  if (colour === BARE) return 'no knot';
  const found = picture.colours[colour];
  if (found === undefined) return 'any colour';
  return colourInWords({ id: '', role: 'base', colour: found.hex, name: found.name });
}
