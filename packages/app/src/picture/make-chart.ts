import { type Chart, type ChartColour, GIVEN_KEYS, nameColours } from '@halfhitch/core';
import { oklabOfLinear } from '../colour/spaces.js';
import type { KnotLight } from './average.js';
import { dither } from './dither.js';
import { matchThreads, type OwnThread, type ThreadMatch } from './match-threads.js';
import { Nearest } from './nearest.js';
import { reduceColours } from './palette.js';
import { takeOutStrays } from './strays.js';

export interface PaletteWish {
  /** Most colours, from 2 to 64. */
  readonly colours: number;
  /** Take the nearest of these threads for each colour; empty: the picture's own colours. */
  readonly threads: readonly OwnThread[];
  readonly dither: boolean;
  /** Take out single knots of a colour. */
  readonly tidy: boolean;
}

export interface MadeChart {
  readonly chart: Chart;
  /** What became of each of the picture's colours; empty where its own are used. */
  readonly matches: readonly ThreadMatch[];
  /** Stray knots taken out. */
  readonly strays: number;
}

/** Rows between two chances to give work up. */
const ROWS_AT_A_TIME = 64;

/** A chart of a picture's averaged colours. A generator, so that work can be given up. */
export function* makeChart(
  knots: KnotLight,
  wish: PaletteWish,
  name: string,
): Generator<undefined, MadeChart, undefined> {
  const { rows, columns } = knots;
  const oklab = yield* oklabOfKnots(knots);
  const reduced = yield* reduceColours(oklab, columns, wish.colours);
  const matches = wish.threads.length === 0 ? [] : matchThreads(reduced, wish.threads);
  const palette =
    matches.length === 0
      ? reduced.map((hex): OwnThread => ({ hex, name: '' }))
      : [...new Set(matches.map(({ thread }) => thread))].map(
          (at) => wish.threads[at] as OwnThread,
        );
  let cells: Uint8Array;
  if (wish.dither) {
    cells = yield* dither(
      knots,
      palette.map(({ hex }) => hex),
    );
  } else {
    cells = yield* nearestCells(oklab, reduced, columns);
    if (matches.length > 0) {
      const places = matches.map(({ thread }) =>
        palette.indexOf(wish.threads[thread] as OwnThread),
      );
      cells = cells.map((colour) => places[colour] as number);
    }
  }
  const strays = wish.tidy ? takeOutStrays(cells, knots) : 0;
  return { chart: { name, rows, columns, ...usedColours(palette, cells) }, matches, strays };
}

function* oklabOfKnots({
  light,
  columns,
}: KnotLight): Generator<undefined, Float32Array, undefined> {
  const oklab = new Float32Array(light.length);
  for (let at = 0; at < light.length; at += 3) {
    const { l, a, b } = oklabOfLinear(
      light[at] as number,
      light[at + 1] as number,
      light[at + 2] as number,
    );
    oklab[at] = l;
    oklab[at + 1] = a;
    oklab[at + 2] = b;
    if (at % (3 * columns * ROWS_AT_A_TIME) === 0) yield;
  }
  return oklab;
}

function* nearestCells(
  oklab: Float32Array,
  hexes: readonly string[],
  columns: number,
): Generator<undefined, Uint8Array, undefined> {
  const nearest = new Nearest(hexes);
  const cells = new Uint8Array(oklab.length / 3);
  for (let cell = 0; cell < cells.length; cell++) {
    const at = 3 * cell;
    cells[cell] = nearest.of(oklab[at] as number, oklab[at + 1] as number, oklab[at + 2] as number);
    if (cell % (columns * ROWS_AT_A_TIME) === 0) yield;
  }
  return cells;
}

/** Colours that no knot has are left out, and those without a name are given one. */
function usedColours(
  palette: readonly OwnThread[],
  cells: Uint8Array,
): { colours: ChartColour[]; cells: Uint8Array } {
  const counts = new Uint32Array(palette.length);
  for (const colour of cells) counts[colour] = (counts[colour] as number) + 1;
  const used = [...palette.keys()].filter((colour) => (counts[colour] as number) > 0);
  const given = nameColours(palette.map(({ hex }) => hex));
  const places = palette.map((_, colour) => used.indexOf(colour));
  return {
    colours: used.map((colour, place) => ({
      key: GIVEN_KEYS[place] as string,
      hex: (palette[colour] as OwnThread).hex,
      name: (palette[colour] as OwnThread).name || (given[colour] as string),
    })),
    cells: cells.map((colour) => places[colour] as number),
  };
}
