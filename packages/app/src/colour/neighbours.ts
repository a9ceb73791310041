import type { Chart } from '@halfhitch/core';

/** Two colours of a chart that lie side by side, one above the other or one beside the other. */
export interface Neighbours {
  /** Places in the chart's colours, the lower first. */
  readonly one: number;
  readonly other: number;
  /** How many pairs of knots are so. */
  readonly places: number;
  /** The first of them, reading by rows: its upper or left knot, rows and columns from 0. */
  readonly row: number;
  readonly column: number;
}

/** All pairs of colours that lie side by side somewhere, those met first coming first. */
export function neighboursOf({ rows, columns, cells, colours }: Chart): Neighbours[] {
  const kinds = colours.length;
  const places = new Uint32Array(kinds * kinds);
  const first: { readonly pair: number; readonly at: number }[] = [];
  const meet = (at: number, next: number): void => {
    const here = cells[at] as number;
    const there = cells[next] as number;
    if (here === there) return;
    const pair = Math.min(here, there) * kinds + Math.max(here, there);
    if (places[pair] === 0) first.push({ pair, at });
    places[pair] = (places[pair] as number) + 1;
  };
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const at = row * columns + column;
      if (column + 1 < columns) meet(at, at + 1);
      if (row + 1 < rows) meet(at, at + columns);
    }
  }
  return first.map(({ pair, at }) => ({
    one: Math.floor(pair / kinds),
    other: pair % kinds,
    places: places[pair] as number,
    row: Math.floor(at / columns),
    column: at % columns,
  }));
}
