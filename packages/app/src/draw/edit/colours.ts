import type { Chart } from '@halfhitch/core';
import { withCells } from './cells.js';
import { type LegendEdit, withColour, withShade } from './legend.js';

export { colourName, freeKey } from './legend.js';

/** How often each colour is drawn, by its index. */
export function knotsByColour({ colours, cells }: Chart): number[] {
  const many = new Array<number>(colours.length).fill(0);
  for (const cell of cells) many[cell] = (many[cell] as number) + 1;
  return many;
}

/** What a chart is drawn on and in: what most of it has is its ground, and one draws in what comes second. */
export function groundAndInk(chart: Chart): { readonly ground: number; readonly colour: number } {
  const many = knotsByColour(chart);
  const order = many.map((_, place) => place).sort((a, b) => (many[b] ?? 0) - (many[a] ?? 0));
  return { ground: order[0] ?? 0, colour: order[1] ?? 0 };
}

/** The chart with another legend; the very same chart where nothing differs. */
export function relegended(chart: Chart, { colours, places }: LegendEdit): Chart {
  const stay = places.every((place, at) => place === at);
  const cells = stay ? chart.cells : chart.cells.map((cell) => places[cell] as number);
  return colours === chart.colours ? withCells(chart, cells) : { ...chart, colours, cells };
}

/** @throws InputError when the chart has as many as it can, or has this one already */
export function colourAdded(chart: Chart, hex: string, name: string): Chart {
  return relegended(chart, withColour(chart.colours, hex, name));
}

/** @throws InputError when another colour of the chart is just the same */
export function recoloured(chart: Chart, index: number, hex: string): Chart {
  return relegended(chart, withShade(chart.colours, index, hex));
}

/** The first knot in a colour, from 1; null where there is none. */
export function firstDrawn(
  { cells, columns }: Chart,
  index: number,
): { readonly row: number; readonly column: number } | null {
  const at = cells.indexOf(index);
  return at < 0 ? null : { row: Math.floor(at / columns) + 1, column: (at % columns) + 1 };
}
