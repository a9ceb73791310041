/** A knot of the drawing, rows and columns from 0. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

/** How large a drawing is. */
export interface Size {
  readonly rows: number;
  readonly columns: number;
}

export function isInside({ rows, columns }: Size, { row, column }: Place): boolean {
  return row >= 0 && row < rows && column >= 0 && column < columns;
}

/** The nearest place that is in the drawing. */
export function nearest({ rows, columns }: Size, { row, column }: Place): Place {
  return {
    row: Math.max(0, Math.min(rows - 1, row)),
    column: Math.max(0, Math.min(columns - 1, column)),
  };
}

export function samePlace(one: Place | null, other: Place | null): boolean {
  return one === other || (one?.row === other?.row && one?.column === other?.column);
}
