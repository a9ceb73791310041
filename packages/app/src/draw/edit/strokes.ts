import type { Chart } from '@halfhitch/core';
import type { Area } from './area.js';
import { paint } from './cells.js';
import { fillCells } from './fill.js';
import { checkColour, checkPlace } from './limits.js';
import { isInside, type Place, type Size } from './place.js';
import { imagesOf, NO_SYMMETRY, type Symmetry } from './symmetry.js';

/**
 * The cells of some places and their images; places beside the chart have none.
 *
 * @returns each as it stands in `Chart.cells`
 */
export function cellsOf(places: Iterable<Place>, size: Size, symmetry: Symmetry): Set<number> {
  const cells = new Set<number>();
  for (const place of places) {
    if (!isInside(size, place)) continue;
    for (const { row, column } of imagesOf(place, size, symmetry)) {
      cells.add(row * size.columns + column);
    }
  }
  return cells;
}

/** The knots round a rectangle. */
export function* outlinePlaces({ row, column, rows, columns }: Area): Generator<Place> {
  const last = { row: row + rows - 1, column: column + columns - 1 };
  for (let across = column; across <= last.column; across++) {
    yield { row, column: across };
    yield { row: last.row, column: across };
  }
  for (let down = row + 1; down < last.row; down++) {
    yield { row: down, column };
    yield { row: down, column: last.column };
  }
}

/** The knots of a rectangle, row by row. */
export function* blockPlaces({ row, column, rows, columns }: Area): Generator<Place> {
  for (let down = row; down < row + rows; down++) {
    for (let across = column; across < column + columns; across++) {
      yield { row: down, column: across };
    }
  }
}

/**
 * Fills the patch of one colour that a knot is in, and the patches that its images are in.
 *
 * @throws InputError when the knot is not in the chart
 */
export function fillFrom(
  chart: Chart,
  place: Place,
  colour: number,
  symmetry: Symmetry = NO_SYMMETRY,
): Chart {
  checkColour(chart, colour);
  checkPlace(chart, place);
  // Of the drawing as it was: a patch that is filled first must not join the next to another.
  const patches = imagesOf(place, chart, symmetry).map((image) => fillCells(chart, image));
  return patches.reduce((filled, patch) => paint(filled, patch, colour), chart);
}
