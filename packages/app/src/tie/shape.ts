import { directionOf, type StartSide } from '@halfhitch/core';
import type { Piece } from '../work/messages.js';
import type { KnotPlace } from './course.js';

/** What a count of knots is turned into a place by. */
export interface Shape {
  readonly rows: number;
  readonly columns: number;
  readonly start: StartSide;
}

export function shapeOf({ rows, columns, choice }: Piece): Shape {
  return { rows, columns, start: choice.start };
}

export function knotsIn({ rows, columns }: Shape): number {
  return rows * columns;
}

/** The knot that comes after some are tied; null when there is none left. */
export function placeAfter(done: number, shape: Shape): KnotPlace | null {
  if (done < 0 || done >= knotsIn(shape)) return null;
  const { columns } = shape;
  const row = Math.floor(done / columns);
  const order = done % columns;
  return { row, order, column: columnOf(row, order, shape) };
}

/** Knots tied before a knot, in the order of knotting. */
export function doneBefore(row: number, column: number, shape: Shape): number {
  return row * shape.columns + columnOf(row, column, shape);
}

/** The column of a place in the order of knotting, and the other way round. */
function columnOf(row: number, order: number, { columns, start }: Shape): number {
  return directionOf(start, row) === 'right' ? order : columns - 1 - order;
}
