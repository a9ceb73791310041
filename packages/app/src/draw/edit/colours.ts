import {
  CHART_LIMITS,
  type Chart,
  type ChartColour,
  GIVEN_KEYS,
  InputError,
} from '@halfhitch/core';
import { withCells } from './cells.js';
import { checkColour } from './limits.js';
import { checkName } from './names.js';

/** A character that stands for none of the colours yet; there are as many as a chart has colours. */
export function freeKey(colours: readonly ChartColour[]): string {
  const taken = new Set(colours.map(({ key }) => key));
  return [...GIVEN_KEYS].find((key) => !taken.has(key)) ?? '*';
}

/** What a colour is called: its name, or its value when it has none. */
export function colourName({ name, hex }: Pick<ChartColour, 'name' | 'hex'>): string {
  return name === '' ? hex : name;
}

/** How often each colour is drawn, by its index. */
export function knotsByColour({ colours, cells }: Chart): number[] {
  const many = new Array<number>(colours.length).fill(0);
  for (const cell of cells) many[cell] = (many[cell] as number) + 1;
  return many;
}

/** @throws InputError when the chart has as many as it can, or has this one already */
export function colourAdded(chart: Chart, hex: string, name: string): Chart {
  if (chart.colours.length >= CHART_LIMITS.maxColours) {
    throw new InputError(
      'too-many-colours',
      `This would be colour ${chart.colours.length + 1}.`,
      { path: `colours[${chart.colours.length}]` },
      `A chart can have at most ${CHART_LIMITS.maxColours} colours: merge two of them first.`,
    );
  }
  const colour = {
    key: freeKey(chart.colours),
    hex: checkHex(chart, hex, chart.colours.length),
    name: checkName(name, `colours[${chart.colours.length}].name`),
  };
  return { ...chart, colours: [...chart.colours, colour] };
}

export function colourRenamed(chart: Chart, index: number, name: string): Chart {
  return withColour(chart, index, { name: checkName(name, `colours[${index}].name`) });
}

/** @throws InputError when another colour of the chart is just the same */
export function recoloured(chart: Chart, index: number, hex: string): Chart {
  return withColour(chart, index, { hex: checkHex(chart, hex, index) });
}

function withColour(
  chart: Chart,
  index: number,
  change: Partial<Pick<ChartColour, 'hex' | 'name'>>,
): Chart {
  checkColour(chart, index);
  const before = chart.colours[index] as ChartColour;
  const after = { ...before, ...change };
  if (after.hex === before.hex && after.name === before.name) return chart;
  return { ...chart, colours: chart.colours.map((colour, at) => (at === index ? after : colour)) };
}

function checkHex(chart: Chart, hex: string, index: number): string {
  const place = { path: `colours[${index}].hex` };
  const written = hex.trim().toLowerCase();
  if (!/^#[0-9a-f]{6}$/.test(written)) {
    throw new InputError(
      'bad-colour',
      'This is no colour.',
      place,
      'Write # and six digits from 0-9 and a-f, such as #1f6fb2.',
    );
  }
  const twin = chart.colours.findIndex((other, at) => at !== index && other.hex === written);
  if (twin >= 0) {
    throw new InputError(
      'colour-twice',
      `Colour ${twin + 1}, ${colourName(chart.colours[twin] as ChartColour)}, is just the same.`,
      place,
      'Change the shade a little, or merge the two colours.',
    );
  }
  return written;
}

/** The legend in another order; no knot changes its colour. */
export function colourMoved(chart: Chart, from: number, to: number): Chart {
  checkColour(chart, from);
  checkColour(chart, to);
  if (from === to) return chart;
  const order = chart.colours.map((_, index) => index);
  order.splice(to, 0, ...order.splice(from, 1));
  return reordered(chart, order);
}

/** The chart with some of its colours in a new order. All that are drawn must be among them. */
function reordered(chart: Chart, order: readonly number[]): Chart {
  const placeOf = new Uint8Array(chart.colours.length);
  order.forEach((index, place) => {
    placeOf[index] = place;
  });
  return {
    ...chart,
    colours: order.map((index) => chart.colours[index] as ChartColour),
    cells: chart.cells.map((cell) => placeOf[cell] as number),
  };
}

/** Draws all that is in one colour in another; both stay in the legend. */
export function colourReplaced(chart: Chart, from: number, to: number): Chart {
  checkColour(chart, from);
  checkColour(chart, to);
  return withCells(
    chart,
    chart.cells.map((cell) => (cell === from ? to : cell)),
  );
}

/** Draws all that is in one colour in another, and takes the first out of the legend. */
export function colourMerged(chart: Chart, from: number, into: number): Chart {
  const replaced = colourReplaced(chart, from, into);
  if (from === into) return replaced;
  const kept = chart.colours.map((_, index) => index).filter((index) => index !== from);
  return reordered(replaced, kept);
}

/**
 * Takes a colour that is drawn nowhere out of the legend.
 *
 * @throws InputError when it is drawn somewhere, or is the only one
 */
export function colourDeleted(chart: Chart, index: number): Chart {
  checkColour(chart, index);
  const at = chart.cells.indexOf(index);
  if (at >= 0) {
    throw new InputError(
      'colour-in-use',
      `${colourName(chart.colours[index] as ChartColour)} is drawn here.`,
      { row: Math.floor(at / chart.columns) + 1, column: (at % chart.columns) + 1 },
      'Merge it into another colour instead.',
    );
  }
  const other = index === 0 ? 1 : 0;
  return colourMerged(chart, index, other);
}
