import { knotsInLattice } from '../diagonal/lattice.js';
import type { DiagonalReading } from '../diagonal/simulate.js';
import { count } from '../instructions/wording.js';
import { halvesOf } from '../model/knot.js';
import { escapeMarkup, safeColour, short } from '../picture/markup.js';
import { checkPictureSize } from '../picture/size.js';
import { plyPattern } from '../picture/tails.js';
import { printable } from '../printable.js';
import { type DiagonalDrawn, drawnOf } from './drawn.js';
import { type DiagonalGeometry, diagonalGeometry, ROW, SLOT } from './geometry.js';
import { diagonalShapes } from './knot-shapes.js';
import { stringPaths } from './string-paths.js';

export interface DrawDiagonalOptions {
  /** Says what the picture shows. Default: the pattern's name and size. */
  readonly title?: string;
  /** Goes before every id in the picture, so that several can stand in one page. Default: `hh-`. */
  readonly idPrefix?: string;
  /** Ground behind the work as `#rrggbb`, or null for none. Default: none. */
  readonly ground?: string | null;
}

/**
 * Draws a knotted diagonal piece from its front, as thread: an SVG document. Each knot is a `use`
 * element with `data-row` and `data-place`, counted from 1; the strings show beside the knots, at
 * the edges, where no knot is tied, and above and below the work.
 *
 * @throws InputError above 300,000 knots
 */
export function drawDiagonal(
  knotted: DiagonalReading | DiagonalDrawn,
  options: DrawDiagonalOptions = {},
): string {
  return [...diagonalPieces(knotted, options)].join('');
}

/** The same picture in pieces, a row at a time, for writing it out as it is made. */
export function* diagonalPieces(
  knotted: DiagonalReading | DiagonalDrawn,
  options: DrawDiagonalOptions = {},
): Generator<string, void, undefined> {
  const drawn = 'knotsOf' in knotted ? knotted : drawnOf(knotted);
  const knots = knotsInLattice(drawn);
  checkPictureSize(knots);
  const prefix = options.idPrefix ?? 'hh-';
  const geometry = diagonalGeometry(drawn);
  yield head(drawn, geometry, options, prefix);
  yield stringPaths(drawn, geometry, prefix);
  for (let row = 0; row < drawn.rows; row++) yield drawRow(drawn, geometry, prefix, row);
  yield '</svg>\n';
}

function head(
  drawn: DiagonalDrawn,
  { width, height }: DiagonalGeometry,
  options: DrawDiagonalOptions,
  prefix: string,
): string {
  const named = printable(drawn.name) || 'Knotted band';
  const size = `${count(drawn.rows, 'row')} with ${count(drawn.strings, 'string')}`;
  const title = options.title ?? `${named}, ${size}`;
  const ground = options.ground ?? null;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${short(width)} ${short(height)}" width="${short(width)}" height="${short(height)}" role="img" aria-labelledby="${prefix}title ${prefix}about">`,
    `<title id="${prefix}title">${escapeMarkup(printable(title))}</title>`,
    `<desc id="${prefix}about">The front of the finished work, knotted diagonally. The strings hang out above and below.</desc>`,
    ground === null
      ? ''
      : `<path d="M0 0H${short(width)}V${short(height)}H0Z" fill="${safeColour(ground)}"/>`,
    `<defs>${plyPattern(prefix)}${diagonalShapes(prefix)}</defs>\n`,
  ].join('');
}

function drawRow(
  drawn: DiagonalDrawn,
  geometry: DiagonalGeometry,
  prefix: string,
  row: number,
): string {
  const { y } = geometry.centreOf(row, 0);
  const { x: left } = geometry.centreOf(row, -1);
  const knots: string[] = [];
  let shadow = '';
  for (const { place, slot, kind, half = false, tying } of drawn.knotsOf(row)) {
    const shape = half ? `half-${halvesOf(kind)[0]}` : kind;
    const x = (slot + 1) * SLOT;
    if (!half)
      shadow += `M${x - 8.5} 0l8.5 ${-0.8 * ROW}l8.5 ${short(0.8 * ROW)}l-8.5 ${short(0.8 * ROW)}Z`;
    knots.push(
      `<use href="#${prefix}${shape}" x="${x}" stroke="${drawn.colourOf(tying)}" data-row="${row + 1}" data-place="${place + 1}"/>`,
    );
  }
  if (knots.length === 0) return '';
  return `<g transform="translate(${short(left)} ${short(y)})"><path d="${shadow}" fill-opacity=".5"/>${knots.join('')}</g>\n`;
}
