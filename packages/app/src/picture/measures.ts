import { CHART_LIMITS } from '@halfhitch/core';
import { PICTURE_LIMITS } from './limits.js';
import { readWhole } from './number-field.js';
import { type Crop, columnsForRows, rowsForColumns, sizeForColumns } from './size.js';

/** What is filled in as a figure: where the crop lies, and the size of the chart. */
export type Figure = 'left' | 'top' | 'width' | 'height' | 'columns' | 'rows' | 'colours';

/** Figures as they were typed. */
export type Typed = Readonly<Record<Figure, string>>;

/** What is wrong, by field. */
export type PictureErrors = Readonly<Partial<Record<Figure | 'threads', string>>>;

export const FIRST_FIGURES: Typed = {
  left: '0',
  top: '0',
  width: '1',
  height: '1',
  columns: '30',
  rows: '1',
  colours: '6',
};

/** Least and most of a figure. @param picture its size, px */
export function limitsOf(
  figure: Figure,
  picture: { readonly width: number; readonly height: number },
): readonly [least: number, most: number] {
  const { minColumns, maxColumns, minRows, maxRows } = CHART_LIMITS;
  const { minColours, maxColours } = PICTURE_LIMITS;
  const limits: Readonly<Record<Figure, readonly [number, number]>> = {
    left: [0, picture.width - 1],
    top: [0, picture.height - 1],
    width: [1, picture.width],
    height: [1, picture.height],
    columns: [minColumns, maxColumns],
    rows: [minRows, maxRows],
    colours: [minColours, maxColours],
  };
  return limits[figure];
}

export function typedCrop({ left, top, width, height }: Crop): Pick<Typed, keyof Crop> {
  return { left: String(left), top: String(top), width: String(width), height: String(height) };
}

/**
 * Where proportions are kept, the size that was not given follows the one that was.
 *
 * @param leading the one that was given
 * @param aspect width of a knot by its height
 * @returns null while what was given is no number
 */
export function followedSize(
  leading: 'columns' | 'rows',
  typed: Typed,
  errors: PictureErrors,
  crop: Crop,
  aspect: number,
): { readonly typed: Typed; readonly errors: PictureErrors } | null {
  const { minColumns, maxColumns, minRows, maxRows } = CHART_LIMITS;
  const { columns: _, rows: __, ...others } = errors;
  if (leading === 'columns') {
    const columns = readWhole(typed.columns, minColumns, maxColumns);
    if (typeof columns === 'string') return null;
    const most = sizeForColumns(crop, columns, aspect).columns;
    return {
      typed: { ...typed, rows: String(rowsForColumns(crop, columns, aspect)) },
      errors:
        most < columns
          ? {
              ...others,
              columns: `So wide, it would take more rows than a chart has: at most ${most}.`,
            }
          : others,
    };
  }
  const rows = readWhole(typed.rows, minRows, maxRows);
  if (typeof rows === 'string') return null;
  const wide = (rows * crop.width) / crop.height / aspect;
  return {
    typed: { ...typed, columns: String(columnsForRows(crop, rows, aspect)) },
    errors:
      wide > maxColumns + 0.5
        ? {
            ...others,
            rows: `So long, it would be wider than a chart can be: at most ${rowsForColumns(crop, maxColumns, aspect)}.`,
          }
        : others,
  };
}
