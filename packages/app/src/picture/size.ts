import { CHART_LIMITS } from '@halfhitch/core';

/** A part of a picture, px from its left and top. */
export interface Crop {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface KnotSize {
  readonly columns: number;
  readonly rows: number;
}

/**
 * Rows that keep a picture's proportions at so many columns.
 *
 * @param aspect width of a knot by its height
 */
export function rowsForColumns({ width, height }: Crop, columns: number, aspect: number): number {
  return within(((columns * height) / width) * aspect, CHART_LIMITS.minRows, CHART_LIMITS.maxRows);
}

/** Columns that keep a picture's proportions at so many rows. */
export function columnsForRows({ width, height }: Crop, rows: number, aspect: number): number {
  return within((rows * width) / height / aspect, CHART_LIMITS.minColumns, CHART_LIMITS.maxColumns);
}

/** The size nearest to a wanted width that keeps the proportions within a chart's limits. */
export function sizeForColumns(crop: Crop, columns: number, aspect: number): KnotSize {
  const rows = rowsForColumns(crop, columns, aspect);
  if (rows < CHART_LIMITS.maxRows) return { columns, rows };
  return { columns: Math.min(columns, columnsForRows(crop, rows, aspect)), rows };
}

/** How much higher the picture becomes than it is, by its width: 1 when nothing is distorted. */
export function stretch(
  { width, height }: Crop,
  { columns, rows }: KnotSize,
  aspect: number,
): number {
  return (rows * width) / (columns * height * aspect);
}

/** A crop as near as can be to a wanted one: whole pixels, inside the picture. */
export function fitCrop(wanted: Crop, picture: { width: number; height: number }): Crop {
  const left = within(wanted.left, 0, picture.width - 1);
  const top = within(wanted.top, 0, picture.height - 1);
  return {
    left,
    top,
    width: within(wanted.width, 1, picture.width - left),
    height: within(wanted.height, 1, picture.height - top),
  };
}

function within(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(most, Math.round(value)));
}
