import type { KnotPlace } from '../options.js';
import type { Problem } from '../problem.js';
import type { RowNeed } from './counting-conflict.js';

/** Rows named at most; a conflict of more is said to have more. */
const MOST_ROWS = 12;

/** A conflict in a sentence or two; rows and knots from 1. */
export function conflictInWords(
  problem: Problem,
  cells: readonly KnotPlace[],
  minimal: boolean,
): string {
  const one = cells.length === 1;
  const told = one
    ? 'This knot cannot show its colour'
    : `These ${cells.length} knots cannot all show their colours`;
  const rest = minimal && !one ? ' With any one of them left out, the others can be knotted.' : '';
  return `${told}${conditions(problem)}, whatever the rest of the picture: ${placesInWords(cells)}.${rest}`;
}

/** A conflict of counts in two sentences. */
export function countingInWords(problem: Problem, rows: readonly RowNeed[]): string {
  const { picture, palette, most } = problem;
  const needs = rows.map(({ row, colour, knots }) => {
    const name = colourName(problem, palette[colour] as number);
    const fewer = knots.length === 1 ? '1 string' : `${knots.length} strings`;
    return `row ${row + 1} needs ${fewer} of ${name}`;
  });
  const only = rows.length === 1 ? rows[0] : undefined;
  const limit = only === undefined ? picture.strings : (most[only.colour] as number);
  const sum = rows.reduce((all, { knots }) => all + knots.length, 0);
  const together = rows.length > 1 ? `; together ${sum}` : '';
  const there =
    only !== undefined && limit < picture.strings
      ? `but at most ${limit} may have that colour`
      : `which ${picture.strings} strings${conditions(problem)} do not have`;
  return `A row needs a string of the colour for each of its knots: ${needs.join(', ')}${together}, ${there}.`;
}

function colourName({ picture }: Problem, colour: number): string {
  const { name = '', key = '' } = picture.colours[colour] ?? {};
  return name === '' ? `colour "${key}"` : name;
}

function conditions({ start, most, picture, net }: Problem): string {
  const said: string[] = [];
  if (start.some((colour) => colour < picture.colours.length))
    said.push('the starting colours given');
  if (most.some((limit) => limit < picture.strings)) said.push('so few strings of a colour');
  if (isClosed(net)) said.push('a closed repeat');
  return said.length === 0 ? '' : ` with ${said.join(' and ')}`;
}

function isClosed(net: Problem['net']): boolean {
  return net.start.every((wire, slot) => wire === net.end[slot]);
}

/** Such as `row 1, knots 1-3; row 2, knot 4`. */
export function placesInWords(cells: readonly KnotPlace[]): string {
  const rows = new Map<number, number[]>();
  for (const { row, place } of cells) {
    const places = rows.get(row);
    if (places === undefined) rows.set(row, [place + 1]);
    else places.push(place + 1);
  }
  const told = [...rows].slice(0, MOST_ROWS).map(([row, places]) => {
    return `row ${row + 1}, ${places.length === 1 ? 'knot' : 'knots'} ${rangesInWords(places)}`;
  });
  if (rows.size > MOST_ROWS) told.push(`and in ${rows.size - MOST_ROWS} more rows`);
  return told.join('; ');
}

function rangesInWords(numbers: readonly number[]): string {
  const ranges: [number, number][] = [];
  for (const number of numbers) {
    const last = ranges[ranges.length - 1];
    if (last !== undefined && last[1] === number - 1) last[1] = number;
    else ranges.push([number, number]);
  }
  return ranges.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(', ');
}
