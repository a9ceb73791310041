import { CHART_LIMITS, type Chart, type ChartColour, InputError } from '@halfhitch/core';
import { type Area, clipped } from './area.js';
import { paint, withCells } from './cells.js';
import { freeKey } from './colours.js';
import { checkArea, checkColour } from './limits.js';
import type { Place, Size } from './place.js';
import { resized } from './resize.js';
import { blockPlaces, cellsOf } from './strokes.js';
import { NO_SYMMETRY } from './symmetry.js';

/** A piece of drawing cut from a chart, with the colours it was drawn in. */
export interface Patch extends Size {
  readonly colours: readonly ChartColour[];
  /** Index into `colours` of each cell, row by row. */
  readonly cells: Uint8Array;
}

/** @throws InputError when the area goes over the side */
export function patchOf(chart: Chart, area: Area): Patch {
  checkArea(chart, area);
  const cells = new Uint8Array(area.rows * area.columns);
  for (let down = 0; down < area.rows; down++) {
    const from = (area.row + down) * chart.columns + area.column;
    cells.set(chart.cells.subarray(from, from + area.columns), down * area.columns);
  }
  return { rows: area.rows, columns: area.columns, colours: chart.colours, cells };
}

/**
 * Takes an area out of the drawing.
 *
 * @param ground colour that is left in its place
 */
export function emptied(chart: Chart, area: Area, ground: number): Chart {
  checkArea(chart, area);
  checkColour(chart, ground);
  return paint(chart, cellsOf(blockPlaces(area), chart, NO_SYMMETRY), ground);
}

/**
 * Lays a patch on the drawing, its top left knot in a place; what goes over the side is left out.
 * Colours that the chart has not are added.
 *
 * @throws InputError when the chart has no room for a colour that shows in the patch
 */
export function pasted(chart: Chart, patch: Patch, { row, column }: Place): Chart {
  const area = clipped({ row, column, rows: patch.rows, columns: patch.columns }, chart);
  if (area === null) return chart;
  const { colours, indexes } = coloursFor(chart, patch);
  const cells = chart.cells.slice();
  for (let down = area.row; down < area.row + area.rows; down++) {
    for (let across = area.column; across < area.column + area.columns; across++) {
      const drawn = patch.cells[(down - row) * patch.columns + across - column] as number;
      cells[down * chart.columns + across] = indexes[drawn] as number;
    }
  }
  return withCells(colours === chart.colours ? chart : { ...chart, colours }, cells);
}

/**
 * Lays a patch on the drawing as `pasted` does, but makes the chart larger first where the patch
 * would go over the side.
 *
 * @param ground colour of the new knots
 * @throws InputError when the chart would become too large, or has no room for a colour
 */
export function pastedWithRoom(chart: Chart, patch: Patch, at: Place, ground: number): Chart {
  const size = {
    rows: Math.max(chart.rows, at.row + patch.rows),
    columns: Math.max(chart.columns, at.column + patch.columns),
  };
  return pasted(resized(chart, size, ground), patch, at);
}

/** The chart's colours and those it lacks, and where in them each colour of the patch is. */
function coloursFor(
  chart: Chart,
  patch: Patch,
): { readonly colours: readonly ChartColour[]; readonly indexes: readonly number[] } {
  const colours = [...chart.colours];
  const shown = new Set(patch.cells);
  const indexes = patch.colours.map((colour, index) => {
    if (!shown.has(index)) return -1;
    const known = colours.findIndex(({ hex }) => hex === colour.hex);
    if (known >= 0) return known;
    if (colours.length === CHART_LIMITS.maxColours) {
      throw new InputError(
        'too-many-colours',
        `Pasting would bring colour ${CHART_LIMITS.maxColours + 1}, ${colour.name || colour.hex}.`,
        { path: `colours[${CHART_LIMITS.maxColours}]` },
        `A chart can have at most ${CHART_LIMITS.maxColours} colours: merge two of them first.`,
      );
    }
    const taken = colours.some(({ key }) => key === colour.key);
    colours.push(taken ? { ...colour, key: freeKey(colours) } : colour);
    return colours.length - 1;
  });
  return { colours: colours.length === chart.colours.length ? chart.colours : colours, indexes };
}

/**
 * Moves an area so that its top left knot comes to a place; what goes over the side is lost.
 *
 * @param ground colour that is left where it was
 */
export function moved(chart: Chart, area: Area, to: Place, ground: number): Chart {
  if (to.row === area.row && to.column === area.column) return chart;
  const next = pasted(emptied(chart, area, ground), patchOf(chart, area), to);
  return withCells(chart, next.cells);
}
