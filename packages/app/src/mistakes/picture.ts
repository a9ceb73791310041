import {
  directionOf,
  Edge,
  fabricGeometry,
  Look,
  type Plan,
  type Seen,
  Sight,
  Stick,
  turnAt,
  type Verification,
  type Written,
} from '@halfhitch/core';
import { drawTile, type Tile, tileBox } from '../work/fabric-tile.js';

/** Room for row and column numbers, in the picture's units. */
const LABELS = { left: 34, top: 20 } as const;
const NO_STRING = 0xffff;
const NO_KNOT = 255;
const INK = '#16304b';

/** The cells of one mistake: one, both of a turn, or a whole row. */
export interface Slip {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly firstColumn: number;
  readonly lastColumn: number;
}

/** Where the marks go: boxes of cells, all of the piece's rows and columns from 0. */
export interface Marks {
  /** Cells that look other than drawn. */
  readonly differs: (row: number, column: number) => boolean;
  /** Where the mistakes themselves were made, the ends included. */
  readonly slips: readonly Slip[];
}

/**
 * A part of a piece as it is seen: knots as thread, with numbers of rows and columns beside them,
 * half hitches, leads that stick out, and marks whose shape tells them apart.
 */
export function drawSeen(
  written: Written,
  plan: Plan,
  verification: Verification,
  seen: Seen,
  tile: Tile,
  marks: Marks | null,
): string {
  const shown = asSeen(written, verification, seen);
  const box = tileBox(seen.rows, seen.columns, tile);
  const width = box.width + LABELS.left;
  const height = box.height + LABELS.top;
  const inner = drawTile(plan, shown, tile)
    .replace('<svg ', `<svg x="${LABELS.left}" y="${LABELS.top}" `)
    .replace(/<\/svg>\s*$/, `${overlay(written, plan, seen, tile, marks)}</svg>`);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}">${numbers(seen, tile)}${inner}</svg>\n`;
}

/** What was really tied, arranged into the cells in which it is seen. */
function asSeen(written: Written, verification: Verification, seen: Seen): Verification {
  const size = seen.rows * seen.columns;
  const tying = new Uint16Array(size).fill(NO_STRING);
  const kinds = new Uint8Array(size).fill(NO_KNOT);
  let knots = 0;
  for (let cell = 0; cell < size; cell++) {
    const colour = seen.cells[cell] as number;
    const look = seen.looks[cell] as number;
    if (colour === Sight.bare || look === Look.half || look === Look.none) continue;
    const tied = verification.tying[cell] as number;
    tying[cell] =
      written.colourOf[tied] === colour ? tied : (written.leadOfColour[colour] as number);
    const known = look >= Look.forward && look <= Look.backwardForward;
    kinds[cell] = known ? look - 1 : kindOfTwo(verification, seen, cell);
    knots++;
  }
  return { ...verification, rows: seen.rows, columns: seen.columns, tying, kinds, knots };
}

/** Of two knots on one string the last is drawn. */
function kindOfTwo(verification: Verification, seen: Seen, cell: number): number {
  const kind = verification.kinds[cell] as number;
  if (kind !== NO_KNOT) return kind;
  const above = seen.looks[cell - seen.columns] ?? Look.unknown;
  return above >= Look.forward && above <= Look.backwardForward ? above - 1 : 0;
}

function numbers(seen: Seen, tile: Tile): string {
  const geometry = fabricGeometry(seen.rows, seen.columns);
  const box = tileBox(seen.rows, seen.columns, tile);
  const texts: string[] = [];
  for (let row = tile.firstRow; row < tile.endRow; row++) {
    const { y, height } = geometry.boxOf({ row, column: 0 });
    const at = y - box.y + LABELS.top + height / 2 + 5;
    texts.push(`<text x="${LABELS.left - 4}" y="${at}" text-anchor="end">${row + 1}</text>`);
  }
  for (let column = tile.firstColumn; column < tile.endColumn; column++) {
    if (column > 0 && (column + 1) % 5 !== 0) continue;
    const { x, width } = geometry.boxOf({ row: 0, column });
    const at = x - box.x + LABELS.left + width / 2;
    texts.push(`<text x="${at}" y="15" text-anchor="middle">${column + 1}</text>`);
  }
  return `<g font-family="system-ui, sans-serif" font-size="15" font-weight="600" fill="${INK}" stroke="#ffffff" stroke-width="3.5" stroke-linejoin="round" paint-order="stroke">${texts.join('')}</g>`;
}

function overlay(
  written: Written,
  plan: Plan,
  seen: Seen,
  tile: Tile,
  marks: Marks | null,
): string {
  const geometry = fabricGeometry(seen.rows, seen.columns);
  // Where drawTile lays its first row and column.
  const dx = Math.max(0, tile.firstColumn - 1) * geometry.cellWidth;
  const dy = Math.max(0, tile.firstRow - 1) * geometry.cellHeight;
  const boxOf = (row: number, column: number) => {
    const { x, y, width, height } = geometry.boxOf({ row, column });
    return { x: x - dx, y: y - dy, width, height };
  };
  const threads: string[] = [];
  const outlines: string[] = [];
  for (let row = tile.firstRow; row < tile.endRow; row++) {
    for (let column = tile.firstColumn; column < tile.endColumn; column++) {
      const cell = row * seen.columns + column;
      const box = boxOf(row, column);
      if (seen.looks[cell] === Look.half) {
        threads.push(halfHitch(box, written.colours[seen.cells[cell] as number] ?? '#888888'));
      }
      if (marks?.differs(row, column) && !boxed(marks, row, column)) outlines.push(dashed(box));
    }
    for (const side of [0, 1] as const) {
      const column = side === 0 ? 0 : seen.columns - 1;
      if (column < tile.firstColumn || column >= tile.endColumn) continue;
      const box = boxOf(row, column);
      const at = side === 0 ? box.x : box.x + box.width;
      const out = side === 0 ? -1 : 1;
      if (seen.sticks[2 * row + side] === Stick.yes) {
        threads.push(
          looseLead(at, box.y + box.height / 2, out, oldLead(written, plan, seen, row, side)),
        );
      }
      const edge = seen.edges[2 * row + side];
      // At a wrapped edge stepping out is how it should be.
      const outside = turnAt(plan.edge, side === 0 ? 'left' : 'right') === 'outside';
      if (marks === null || (outside && edge === Edge.out)) continue;
      if (edge === Edge.out) outlines.push(bow(at + 9 * out, box, out));
      else if (edge === Edge.in) outlines.push(bow(at + 12 * out, box, -out));
    }
  }
  for (const slip of marks?.slips ?? []) {
    const firstRow = Math.max(tile.firstRow, slip.firstRow);
    const lastRow = Math.min(tile.endRow - 1, slip.lastRow);
    const firstColumn = Math.max(tile.firstColumn, slip.firstColumn);
    const lastColumn = Math.min(tile.endColumn - 1, slip.lastColumn);
    if (firstRow > lastRow || firstColumn > lastColumn) continue;
    const { x, y, width, height } = boxOf(firstRow, firstColumn);
    outlines.push(
      heavy({
        x,
        y,
        width: width * (lastColumn - firstColumn + 1),
        height: height * (lastRow - firstRow + 1),
      }),
    );
  }
  return `<g fill="none" stroke-linecap="round">${threads.join('')}${outlines.join('')}</g>`;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function onWhite(path: string, width: number, more = ''): string {
  return `<path d="${path}" stroke="#ffffff" stroke-width="${width + 2.2}"/><path d="${path}" stroke="${INK}" stroke-width="${width}" ${more}/>`;
}

function rectangle({ x, y, width, height }: Box, inset: number): string {
  return `M${x + inset} ${y + inset}h${width - 2 * inset}v${height - 2 * inset}h${2 * inset - width}Z`;
}

function dashed(box: Box): string {
  return onWhite(rectangle(box, 0.6), 1.6, 'stroke-dasharray="3.6 3.6" class="differs"');
}

/** The mistake itself: one whole line about all its cells, clear of their thread. */
function heavy(box: Box): string {
  return `<g class="slip">${onWhite(rectangle(box, -2.5), 3)}</g>`;
}

/** Whether a cell is marked well enough by the heavy line about it. */
function boxed({ slips }: Marks, row: number, column: number): boolean {
  return slips.some(
    (slip) =>
      slip.firstColumn === slip.lastColumn &&
      slip.firstColumn === column &&
      slip.firstRow <= row &&
      row <= slip.lastRow,
  );
}

/** Bulging out where an edge steps out, and in where it pulls in. */
function bow(x: number, { y, height }: Box, out: number): string {
  return onWhite(
    `M${x} ${y + 2}q${9 * out} ${height / 2 - 2} 0 ${height - 4}`,
    2.4,
    'class="edge"',
  );
}

/** One bar across the string and no second: it holds nothing. */
function halfHitch({ x, y }: Box, colour: string): string {
  const path = `M${x + 5} ${y + 14}L${x + 19} ${y + 8}`;
  return `<path d="${path}" stroke="#10181f" stroke-opacity=".75" stroke-width="9.6"/><path d="${path}" stroke="${colour}" stroke-width="7.6"/>`;
}

function looseLead(x: number, y: number, out: number, colour: string): string {
  const path = `M${x - 3 * out} ${y - 4}c${20 * out} -7 ${20 * out} 15 0 8`;
  return `<path d="${path}" stroke="#10181f" stroke-opacity=".75" stroke-width="7.6"/><path d="${path}" stroke="${colour}" stroke-width="5.6"/>`;
}

/** Colour of the lead that tied before the change at an edge. */
function oldLead(written: Written, plan: Plan, seen: Seen, row: number, side: 0 | 1): string {
  const { columns } = seen;
  const end = directionOf(plan.start, row) === 'right' ? 1 : 0;
  const edge = side === 0 ? 0 : columns - 1;
  const inner = side === 0 ? Math.min(1, columns - 1) : Math.max(0, columns - 2);
  const cell = side === end ? row * columns + inner : Math.max(0, row - 1) * columns + edge;
  return written.colours[seen.cells[cell] as number] ?? '#888888';
}
