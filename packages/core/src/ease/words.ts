import type { Chart } from '../chart/chart.js';
import { count, list } from '../instructions/wording.js';
import { printable } from '../printable.js';
import type { Effort } from './effort.js';
import type { Mirroring } from './mirror.js';
import type { Gain, Suggestion } from './suggestion.js';

/** What to change: "Row 12, column 5: tie the lone knot in buoy orange in lake blue." */
export function suggestionInWords(chart: Chart, suggestion: Suggestion): string {
  const { kind, cells, choice } = suggestion;
  const [first] = cells;
  if (first === undefined) return `Knot the first row from the ${choice.start}.`;
  if (kind === 'every-spot') {
    return `Tie all ${count(cells.length, 'stray knot')} in the colours round them.`;
  }
  const from = colour(chart, first.from);
  const to = colour(chart, first.to);
  const where = whereInWords(suggestion);
  switch (kind) {
    case 'edge-knot':
      return `${where}: tie the edge knot in ${to}, in place of ${from}.`;
    case 'lone-knot':
      return `${where}: tie the lone knot of ${from} in ${to}.`;
    case 'spot':
      return `${where}: tie the spot of ${cells.length} knots of ${from} in ${to}.`;
    default:
      return `${where}: tie the ${cells.length} knots of ${from} in ${to}.`;
  }
}

/** "Row 12, column 5" or "Rows 3 to 4, columns 2 to 5"; empty where no knot changes. */
export function whereInWords({ cells }: Pick<Suggestion, 'cells'>): string {
  const rows = cells.map(({ row }) => row + 1);
  const columns = cells.map(({ column }) => column + 1);
  if (rows.length === 0) return '';
  return `${span('Row', rows)}, ${span('column', columns)}`;
}

function span(word: string, places: readonly number[]): string {
  const [least, most] = places.reduce<[number, number]>(
    ([low, high], place) => [Math.min(low, place), Math.max(high, place)],
    [Number.POSITIVE_INFINITY, 0],
  );
  return least === most ? `${word} ${least}` : `${word}s ${least} to ${most}`;
}

/**
 * What it saves, in a sentence or two: "Saves 2 colour changes, 12 knots of float, about 6 cm of
 * thread and about 40 seconds." Time and thread are estimates and called so.
 *
 * @param thread mm saved; null where it was not worked out
 */
export function gainInWords(gain: Gain, thread: number | null = null): string {
  const saved: string[] = [];
  if (gain.changes > 0) saved.push(count(gain.changes, 'colour change'));
  if (gain.leads > 0) saved.push(count(gain.leads, 'lead'));
  if (gain.longFloats > 0) saved.push(count(gain.longFloats, 'long float'));
  const knots = Math.round(gain.floatKnots);
  if (knots > 0) saved.push(`${count(knots, 'knot')} of float`);
  const millimetres = thread ?? 0;
  if (millimetres >= 5) saved.push(`about ${lengthInWords(millimetres)} of thread`);
  if (gain.seconds > 0) saved.push(`about ${timeInWords(gain.seconds)}`);
  const told: string[] = [];
  if (saved.length > 0) told.push(`Saves ${list(saved)}.`);
  if (gain.edgeChanges === 1) told.push('One edge knot fewer stands alone in its colour.');
  else if (gain.edgeChanges > 1) {
    told.push(`${gain.edgeChanges} edge knots fewer stand alone in their colours.`);
  }
  if (knots < 0) told.push(`Floats get ${count(-knots, 'knot')} longer in all.`);
  if (millimetres <= -5) told.push(`It takes about ${lengthInWords(-millimetres)} more thread.`);
  return told.join(' ');
}

/** "540 colour changes, 120 floats of 900 knots together, 4 of them long". */
export function effortInWords(effort: Effort): string {
  const changes =
    effort.changes === 0 ? 'no colour changes' : count(effort.changes, 'colour change');
  if (effort.floats === 0) return `${changes}, no floats`;
  const long = effort.longFloats === 0 ? '' : `, ${effort.longFloats} of them long`;
  const knots = count(Math.round(effort.floatKnots), 'knot');
  return `${changes}, ${count(effort.floats, 'float')} of ${knots} together${long}`;
}

/** How a drawing is mirrored, to follow "the drawing". */
export const MIRRORING_IN_WORDS: Readonly<Record<Mirroring, string>> = {
  'as-drawn': 'as drawn',
  'left-right': 'mirrored left to right',
  'upside-down': 'mirrored top to bottom',
  'half-turn': 'turned upside down',
};

/** What letters and numbers in the drawing come to; empty where they stay as they are. */
export const LETTERS_IN_WORDS: Readonly<Record<Mirroring, string>> = {
  'as-drawn': '',
  'half-turn':
    'Letters and numbers stand on their heads, and read aright worn the other way round.',
  'left-right': 'Letters and numbers read the wrong way round.',
  'upside-down': 'Letters and numbers read the wrong way round.',
};

/** "6 cm", "1.2 m", in steps that do not pretend to more than is known. */
export function lengthInWords(millimetres: number): string {
  if (millimetres < 995) return `${Math.max(1, Math.round(millimetres / 10))} cm`;
  return `${(millimetres / 1_000).toFixed(1)} m`;
}

/** "40 seconds", "3 minutes", "2 hours and 10 minutes". */
export function timeInWords(seconds: number): string {
  if (seconds < 90) return count(Math.max(1, Math.round(seconds)), 'second');
  const minutes = Math.round(seconds / 60);
  if (minutes < 60) return count(minutes, 'minute');
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  return rest === 0 || hours >= 24
    ? count(hours, 'hour')
    : `${count(hours, 'hour')} and ${count(rest, 'minute')}`;
}

function colour(chart: Chart, place: number): string {
  const { name = '', hex = '' } = chart.colours[place] ?? {};
  const named = printable(name);
  return named === '' ? hex : named;
}
