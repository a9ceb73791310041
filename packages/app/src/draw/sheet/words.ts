import { type Chart, directionOf, type StartSide } from '@halfhitch/core';
import { counted } from '../../view/figures.js';
import { type Area, areaInWords } from '../edit/area.js';
import { colourName } from '../edit/colours.js';
import { isInside, type Place, type Size } from '../edit/place.js';

/** "Row 3, column 5: buoy orange" */
export function cellInWords(chart: Chart, { row, column }: Place): string {
  const colour = chart.colours[chart.cells[row * chart.columns + column] as number];
  const name = colour === undefined ? 'no colour' : colourName(colour);
  return `Row ${row + 1}, column ${column + 1}: ${name}`;
}

/** "Row 3 is knotted from left to right." */
export function rowInWords(start: StartSide, row: number): string {
  const way = directionOf(start, row) === 'right' ? 'left to right' : 'right to left';
  return `Row ${row + 1} is knotted from ${way}.`;
}

/** What is said of where the cursor is, and of what is selected. */
export function hereInWords(
  chart: Chart,
  start: StartSide,
  { here, selected }: { readonly here: Place; readonly selected: Area | null },
): string {
  const words = isInside(chart, here)
    ? `${cellInWords(chart, here)}. ${rowInWords(start, here.row)}`
    : '';
  return selected === null ? words : `${words} Selected: ${areaInWords(selected)}.`;
}

/** "1,200 knots" */
export function knotsInWords({ rows, columns }: Size): string {
  const many = rows * columns;
  return counted(many, 'knot');
}
