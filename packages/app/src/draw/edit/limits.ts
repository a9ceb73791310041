import { CHART_LIMITS, type Chart, InputError } from '@halfhitch/core';
import { figures } from '../../view/figures.js';
import { type Area, clipped } from './area.js';
import { isInside, type Place, type Size } from './place.js';

const { minRows, maxRows, minColumns, maxColumns } = CHART_LIMITS;

/** @throws InputError unless a chart can be so large */
export function checkSize({ rows, columns }: Size): void {
  check('rows', rows, minRows, maxRows);
  check('columns', columns, minColumns, maxColumns);
}

function check(what: 'rows' | 'columns', many: number, least: number, most: number): void {
  if (Number.isInteger(many) && many >= least && many <= most) return;
  const place = many > most ? { [what === 'rows' ? 'row' : 'column']: most + 1 } : {};
  throw new InputError(
    `${what}-limit`,
    Number.isInteger(many)
      ? `A chart cannot have ${figures(many)} ${what}.`
      : `The number of ${what} is not a whole number.`,
    place,
    `Keep to ${least} to ${figures(most)} ${what}.`,
  );
}

/** @throws InputError unless the place is in the drawing */
export function checkPlace(size: Size, place: Place): void {
  const { row, column } = place;
  if (Number.isInteger(row) && Number.isInteger(column) && isInside(size, place)) return;
  throw new InputError(
    'outside-chart',
    'There is no knot in this place.',
    { row: row + 1, column: column + 1 },
    `Choose one in rows 1 to ${size.rows} and columns 1 to ${size.columns}.`,
  );
}

/** @throws InputError unless the whole area is in the drawing and holds a knot */
export function checkArea(size: Size, area: Area): void {
  checkPlace(size, area);
  const within = clipped(area, size);
  if (within?.rows === area.rows && within.columns === area.columns) return;
  throw new InputError(
    'outside-chart',
    'The selection goes over the side of the chart.',
    { row: area.row + 1, column: area.column + 1 },
    `Select within rows 1 to ${size.rows} and columns 1 to ${size.columns}.`,
  );
}

/** @throws InputError unless the chart has such a colour */
export function checkColour(chart: Pick<Chart, 'colours'>, colour: number): void {
  if (chart.colours[colour] !== undefined) return;
  throw new InputError(
    'no-such-colour',
    `There is no colour ${colour + 1}.`,
    { path: `colours[${colour}]` },
    `Choose one of colours 1 to ${chart.colours.length}.`,
  );
}
