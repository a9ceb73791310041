import { drawFabric, fabricGeometry, type Plan, type Verification } from '@halfhitch/core';

/** A part of the fabric: rows and columns from 0, the ends not included. */
export interface Tile {
  readonly firstRow: number;
  readonly endRow: number;
  readonly firstColumn: number;
  readonly endColumn: number;
}

/**
 * A part of the fabric's picture, cut so that tiles laid beside each other make the whole. One
 * row and column more on each side are drawn and cut away, since the lead goes from one to the
 * next.
 */
export function drawTile(plan: Plan, verification: Verification, tile: Tile): string {
  const { rows, columns } = verification;
  const firstRow = Math.max(0, tile.firstRow - 1);
  const endRow = Math.min(rows, tile.endRow + 1);
  const firstColumn = Math.max(0, tile.firstColumn - 1);
  const endColumn = Math.min(columns, tile.endColumn + 1);
  const high = endRow - firstRow;
  const wide = endColumn - firstColumn;
  const tying = new Uint16Array(high * wide);
  const kinds = new Uint8Array(high * wide);
  let knots = 0;
  for (let row = 0; row < high; row++) {
    const from = (firstRow + row) * columns + firstColumn;
    tying.set(verification.tying.subarray(from, from + wide), row * wide);
    kinds.set(verification.kinds.subarray(from, from + wide), row * wide);
  }
  for (const kind of kinds) if (kind !== 255) knots++;
  const turned = firstRow % 2 === 1;
  const picture = drawFabric({
    plan: {
      ...plan,
      rows: high,
      columns: wide,
      hung: plan.hung.slice(firstColumn, endColumn),
      start: turned === (plan.start === 'left') ? 'right' : 'left',
    },
    verification: { ...verification, rows: high, columns: wide, knots, tying, kinds },
  });
  const whole = fabricGeometry(rows, columns);
  const { x, y, width, height } = tileBox(rows, columns, tile);
  const left = x - firstColumn * whole.cellWidth;
  const top = y - firstRow * whole.cellHeight;
  return picture.replace(
    /viewBox="[^"]*" width="[^"]*" height="[^"]*"/,
    `viewBox="${left} ${top} ${width} ${height}" width="${width}" height="${height}"`,
  );
}

/** Where a tile lies in the whole picture, in its units; the outer ones hold the loose ends. */
export function tileBox(
  rows: number,
  columns: number,
  { firstRow, endRow, firstColumn, endColumn }: Tile,
): { readonly x: number; readonly y: number; readonly width: number; readonly height: number } {
  const { left, top, width, height, cellWidth, cellHeight } = fabricGeometry(rows, columns);
  const x = firstColumn === 0 ? 0 : left + firstColumn * cellWidth;
  const y = firstRow === 0 ? 0 : top + firstRow * cellHeight;
  const right = endColumn >= columns ? width : left + endColumn * cellWidth;
  const below = endRow >= rows ? height : top + endRow * cellHeight;
  return { x, y, width: right - x, height: below - y };
}
