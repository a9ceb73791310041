import { changesPlaces, KNOT_KINDS, type KnotKind } from '../model/knot.js';
import { directionOf, type Plan } from '../plan/plan.js';
import { printable } from '../printable.js';
import type { Verification } from '../verify/verification.js';
import { CELL, type FabricGeometry, fabricGeometry } from './fabric-geometry.js';
import { shapeDefinitions, type TurnShape } from './knot-shapes.js';
import { escapeMarkup, safeColour } from './markup.js';
import { checkPictureSize } from './size.js';
import { hangingThread, plyPattern } from './tails.js';

export interface FabricOptions {
  readonly plan: Plan;
  /** What running the plan showed: only this decides what is drawn, never the chart. */
  readonly verification: Verification;
  /** Says what the picture shows. Default: the plan's name and size. */
  readonly title?: string;
  /** Goes before every id in the picture, so that several can stand in one page. Default: `hh-`. */
  readonly idPrefix?: string;
  /** Ground behind the work as `#rrggbb`, or null for none. Default: none. */
  readonly ground?: string | null;
}

const NO_STRING = 0xffff;
const NO_KNOT = 255;

/**
 * Draws the knotted result from its front, as thread: an SVG document. Each knot is a `use`
 * element with `data-row` and `data-column`, counted from 1; where a knot is missing, the base
 * string shows.
 *
 * @throws InputError above 300,000 knots
 */
export function drawFabric(options: FabricOptions): string {
  return [...fabricPieces(options)].join('');
}

/** The same picture in pieces, a row at a time, for writing it out as it is made. */
export function* fabricPieces(options: FabricOptions): Generator<string, void, undefined> {
  const { plan, verification } = options;
  const { rows, columns } = verification;
  checkPictureSize(rows * columns);
  const prefix = options.idPrefix ?? 'hh-';
  const geometry = fabricGeometry(rows, columns);
  yield head(options, geometry, prefix);
  yield baseStrings(plan, geometry, prefix);
  yield lastLead(plan, verification, geometry, prefix);
  for (let row = 0; row < rows; row++) yield drawRow(plan, verification, geometry, prefix, row);
  yield '</svg>\n';
}

function head(options: FabricOptions, geometry: FabricGeometry, prefix: string): string {
  const { plan, verification } = options;
  const { width, height, rows, columns } = geometry;
  const named = printable(plan.name) || 'Knotted band';
  const title = options.title ?? `${named}, ${rows} rows of ${columns} knots`;
  const missing = rows * columns - verification.knots;
  const lacks =
    missing > 0 ? ` Where a knot is missing, the base string shows (${missing} of them).` : '';
  const ground = options.ground ?? null;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="${prefix}title ${prefix}about">`,
    `<title id="${prefix}title">${escapeMarkup(printable(title))}</title>`,
    `<desc id="${prefix}about">The front of the finished work, with ${plan.edge} edges. Base strings hang out above and below.${lacks}</desc>`,
    ground === null ? '' : `<path d="M0 0H${width}V${height}H0Z" fill="${safeColour(ground)}"/>`,
    `<defs>${plyPattern(prefix)}${shapeDefinitions(prefix)}</defs>\n`,
  ].join('');
}

function baseStrings(plan: Plan, geometry: FabricGeometry, prefix: string): string {
  const colourOf = new Map(plan.strings.map((string) => [string.id, string.colour]));
  const { left, height, cellWidth } = geometry;
  const drawn = plan.hung.map((id, column) =>
    hangingThread(
      left + (column + 0.5) * cellWidth,
      6,
      height - 6,
      safeColour(colourOf.get(id) ?? ''),
      prefix,
    ),
  );
  return `<g>${drawn.join('')}</g>\n`;
}

/** The lead that tied last hangs beside its last knot. */
function lastLead(
  plan: Plan,
  verification: Verification,
  geometry: FabricGeometry,
  prefix: string,
): string {
  const row = geometry.rows - 1;
  const right = directionOf(plan.start, row) === 'right';
  const column = right ? geometry.columns - 1 : 0;
  const knot = knotAt(plan, verification, row, column);
  if (knot === null) return '';
  const ends = knot.kind === 'forward' || knot.kind === 'backward-forward' ? 'right' : 'left';
  const { x, y } = geometry.boxOf({ row, column });
  const at = ends === 'right' ? x + CELL.width : x;
  return hangingThread(at, y + CELL.height / 2, geometry.height - 14, knot.colour, prefix);
}

interface DrawnKnot {
  readonly string: number;
  readonly kind: KnotKind;
  readonly colour: string;
}

function knotAt(
  plan: Plan,
  { tying, kinds, columns }: Verification,
  row: number,
  column: number,
): DrawnKnot | null {
  const cell = row * columns + column;
  const string = tying[cell] ?? NO_STRING;
  const kind = KNOT_KINDS[kinds[cell] ?? NO_KNOT];
  const colour = plan.strings[string]?.colour;
  if (kind === undefined || colour === undefined) return null;
  return { string, kind, colour: safeColour(colour) };
}

function drawRow(
  plan: Plan,
  verification: Verification,
  geometry: FabricGeometry,
  prefix: string,
  row: number,
): string {
  const { columns, left, top, cellWidth, cellHeight } = geometry;
  const right = directionOf(plan.start, row) === 'right';
  const end = right ? columns - 1 : 0;
  const turn = turnAfter(plan, verification, row, end);
  const turnPiece =
    turn === null
      ? ''
      : `<use href="#${prefix}${turn.shape}" x="${end * cellWidth}" stroke="${turn.colour}"/>`;
  const pieces = [
    `<g transform="translate(${left} ${top + row * cellHeight})">`,
    shadow(verification, row),
  ];
  if (turn?.shape.startsWith('inside')) pieces.push(turnPiece);
  for (let order = 0; order < columns; order++) {
    const column = right ? order : columns - 1 - order;
    const knot = knotAt(plan, verification, row, column);
    if (knot === null) continue;
    // Tied in turn towards one side, the knots of a row lie a little to that side.
    const lie = changesPlaces(knot.kind) ? (right ? 0.8 : -0.8) : 0;
    pieces.push(
      `<use href="#${prefix}${knot.kind}" x="${column * cellWidth + lie}" stroke="${knot.colour}" data-row="${row + 1}" data-column="${column + 1}"/>`,
    );
  }
  if (turn?.shape.startsWith('outside')) pieces.push(turnPiece);
  pieces.push('</g>\n');
  return pieces.join('');
}

/** The dark that shows between the knots of a row, drawn under them; none where a knot is missing. */
function shadow({ kinds, rows, columns }: Verification, row: number): string {
  const inset = 5;
  const top = row === 0 ? inset : 0;
  const height = CELL.height - top - (row === rows - 1 ? inset : 0);
  let path = '';
  for (let column = 0; column < columns; ) {
    let end = column;
    while (end < columns && kinds[row * columns + end] !== NO_KNOT) end++;
    if (end > column) {
      const width = (end - column) * CELL.width - 2 * inset;
      path += `M${column * CELL.width + inset} ${top}h${width}v${height}h${-width}Z`;
    }
    column = end + 1;
  }
  return path === '' ? '' : `<path d="${path}" fill-opacity=".6"/>`;
}

/** How a lead that goes on after a row gets to the next one; null where another lead goes on. */
function turnAfter(
  plan: Plan,
  verification: Verification,
  row: number,
  column: number,
): { shape: TurnShape; colour: string } | null {
  if (row + 1 >= verification.rows) return null;
  const above = knotAt(plan, verification, row, column);
  const below = knotAt(plan, verification, row + 1, column);
  if (above === null || below === null || above.string !== below.string) return null;
  const side = directionOf(plan.start, row);
  const round = changesPlaces(above.kind) && changesPlaces(below.kind);
  if (!round && (changesPlaces(above.kind) || changesPlaces(below.kind))) return null;
  // A single base string has no side of the edge; there the lead hangs where its knots leave it.
  const shape = round ? 'outside' : 'inside';
  const hangs = round ? side : above.kind === 'forward-backward' ? 'right' : 'left';
  return { shape: `${shape}-${hangs}`, colour: above.colour };
}
