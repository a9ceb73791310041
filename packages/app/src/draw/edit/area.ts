import type { Place, Size } from './place.js';

/** A rectangle of knots; it has at least one. */
export interface Area extends Place, Size {}

/** The rectangle that has two places as opposite corners. */
export function areaBetween(one: Place, other: Place): Area {
  const row = Math.min(one.row, other.row);
  const column = Math.min(one.column, other.column);
  return {
    row,
    column,
    rows: Math.max(one.row, other.row) - row + 1,
    columns: Math.max(one.column, other.column) - column + 1,
  };
}

export function wholeOf({ rows, columns }: Size): Area {
  return { row: 0, column: 0, rows, columns };
}

/** The part of an area that is in a drawing; null when none is. */
export function clipped(area: Area, size: Size): Area | null {
  const row = Math.max(0, area.row);
  const column = Math.max(0, area.column);
  const rows = Math.min(size.rows, area.row + area.rows) - row;
  const columns = Math.min(size.columns, area.column + area.columns) - column;
  return rows > 0 && columns > 0 ? { row, column, rows, columns } : null;
}

export function isIn(area: Area, { row, column }: Place): boolean {
  return (
    row >= area.row &&
    row < area.row + area.rows &&
    column >= area.column &&
    column < area.column + area.columns
  );
}

export function sameArea(one: Area | null, other: Area | null): boolean {
  return (
    one === other ||
    (one?.row === other?.row &&
      one?.column === other?.column &&
      one?.rows === other?.rows &&
      one?.columns === other?.columns)
  );
}

/** "rows 3 to 7, columns 2 to 5" */
export function areaInWords({ row, column, rows, columns }: Area): string {
  const span = (what: string, from: number, many: number): string =>
    many === 1 ? `${what} ${from + 1}` : `${what}s ${from + 1} to ${from + many}`;
  return `${span('row', row, rows)}, ${span('column', column, columns)}`;
}
