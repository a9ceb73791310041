import type { Chart } from '../chart/chart.js';
import { InputError } from '../errors.js';
import type { Effort, KnottingChoice } from './effort.js';

/**
 * - `start-side`: the first row from the other side; no knot changes;
 * - `lone-knot`, `short-run`: one knot, or a few in a row, between others;
 * - `edge-knot`: the knot at an edge, so that the change falls at the turn or away;
 * - `spot`: a few knots of a colour that touch each other and no others of it;
 * - `every-spot`: all of those.
 */
export type SuggestionKind =
  | 'start-side'
  | 'lone-knot'
  | 'short-run'
  | 'edge-knot'
  | 'spot'
  | 'every-spot';

/** A knot in another colour; row and column from 0, colours as places in the chart's legend. */
export interface CellEdit {
  readonly row: number;
  readonly column: number;
  readonly from: number;
  readonly to: number;
}

/** What is saved; below 0 it costs more. Lengths of floats are in knots. */
export type Gain = Readonly<Omit<Effort, 'knots'>>;

/** One thing that would make a piece easier to knot. */
export interface Suggestion {
  readonly kind: SuggestionKind;
  /** In the order of rows and columns; empty where another way to knot it is all. */
  readonly cells: readonly CellEdit[];
  /** How it is to be knotted then. */
  readonly choice: KnottingChoice;
  /** Whether the knots belong to a larger shape, which loses them. */
  readonly ofShape: boolean;
  /** As planning and verifying before and after showed it. */
  readonly gain: Gain;
  /** The rows that are knotted otherwise for it; the others stay as they are. */
  readonly rows: { readonly first: number; readonly end: number };
}

/**
 * The chart with the colours that a suggestion asks for.
 *
 * @throws InputError when the chart is not the one that the suggestion was made for
 */
export function withCells(chart: Chart, edits: readonly CellEdit[]): Chart {
  if (edits.length === 0) return chart;
  const cells = chart.cells.slice();
  for (const { row, column, from, to } of edits) {
    const at = row * chart.columns + column;
    const inside = row >= 0 && row < chart.rows && column >= 0 && column < chart.columns;
    if (!inside || cells[at] !== from || chart.colours[to] === undefined) {
      throw new InputError(
        'other-chart',
        'The suggestion was made for another drawing.',
        { row: row + 1, column: column + 1 },
        'Have suggestions made anew for this one.',
      );
    }
    cells[at] = to;
  }
  return { ...chart, cells };
}

/** Rows of a chart, as a chart of their own; `first` must be even, so that rows run as they did. */
export function rowsOf(chart: Chart, first: number, end: number): Chart {
  const { columns } = chart;
  const part = (all: Uint8Array): Uint8Array => all.slice(first * columns, end * columns);
  return {
    ...chart,
    rows: end - first,
    cells: part(chart.cells),
    ...(chart.knots === undefined ? {} : { knots: part(chart.knots) }),
  };
}
