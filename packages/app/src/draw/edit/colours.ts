import type { Chart } from '@halfhitch/core';
import { withCells } from './cells.js';
import {
  type LegendEdit,
  withColour,
  withDeleted,
  withMerged,
  withMoved,
  withName,
  withReplaced,
  withShade,
} from './legend.js';

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

export function colourRenamed(chart: Chart, index: number, name: string): Chart {
  return relegended(chart, withName(chart.colours, index, name));
}

/** @throws InputError when another colour of the chart is just the same */
export function recoloured(chart: Chart, index: number, hex: string): Chart {
  return relegended(chart, withShade(chart.colours, index, hex));
}

/** The legend in another order; no knot changes its colour. */
export function colourMoved(chart: Chart, from: number, to: number): Chart {
  return relegended(chart, withMoved(chart.colours, from, to));
}

/** Draws all that is in one colour in another; both stay in the legend. */
export function colourReplaced(chart: Chart, from: number, to: number): Chart {
  return relegended(chart, withReplaced(chart.colours, from, to));
}

/** Draws all that is in one colour in another, and takes the first out of the legend. */
export function colourMerged(chart: Chart, from: number, into: number): Chart {
  return relegended(chart, withMerged(chart.colours, from, into));
}

/**
 * Takes a colour that is drawn nowhere out of the legend.
 *
 * @throws InputError when it is drawn somewhere, or is the only one
 */
export function colourDeleted(chart: Chart, index: number): Chart {
  return relegended(chart, withDeleted(chart.colours, index, firstDrawn(chart, index)));
}

/** The first knot in a colour, from 1; null where there is none. */
export function firstDrawn(
  { cells, columns }: Chart,
  index: number,
): { readonly row: number; readonly column: number } | null {
  const at = cells.indexOf(index);
  return at < 0 ? null : { row: Math.floor(at / columns) + 1, column: (at % columns) + 1 };
}
