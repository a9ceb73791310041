import { fabricGeometry } from '@halfhitch/core';
import type { Paper } from './paper.js';

/** Height to width of a knot. */
const ASPECT = fabricGeometry(1, 1).cellHeight / fabricGeometry(1, 1).cellWidth;

/** Room around the cells of a chart's page, mm. */
export const ROOM = {
  /** Number of the row and the way it goes. */
  words: 27,
  /** The mark of an edge knot, on both sides. */
  mark: 4.5,
  /** The number of the row once more. */
  number: 8,
  /** Numbers of the columns. */
  top: 5,
  /** Title of the page. */
  title: 10,
  legendLine: 6,
  /** What the marks mean. */
  marks: 12,
  /** So that rounding never pushes a page over its end. */
  spare: 6,
} as const;

/** Width of an entry of the legend, mm. */
const LEGEND_ENTRY = 45;

/** A cell is never wider, nor narrower, mm: what is narrower can't be told apart on paper. */
const WIDEST = 7.5;
const NARROWEST = 2.6;
/** Wide enough for the key of its colour to be read. */
export const KEYED = 3.4;

/** More colours than there are hatches can only be told apart by their keys. */
export const MOST_BY_HATCH = 12;

/** One page of a chart: rows and columns from 0, the ends not included. */
export interface ChartPart {
  readonly firstRow: number;
  readonly endRow: number;
  readonly firstColumn: number;
  readonly endColumn: number;
}

export interface ChartLayout {
  readonly cell: { readonly width: number; readonly height: number };
  /** Whether the keys of the colours stand in the cells. */
  readonly keyed: boolean;
  readonly legendPerLine: number;
  readonly parts: readonly ChartPart[];
}

/**
 * Cuts a chart into pages, never through a row. All rows of the first columns come first.
 *
 * @param rows first row and end of what is printed, from 0
 * @param colours drawn
 */
export function layChart(
  rows: { readonly first: number; readonly end: number },
  columns: number,
  colours: number,
  paper: Paper,
): ChartLayout {
  const wide = paper.width - ROOM.words - 2 * ROOM.mark - ROOM.number;
  const least = colours > MOST_BY_HATCH ? KEYED : NARROWEST;
  const across = Math.ceil(columns / Math.floor(wide / least));
  const inPart = Math.ceil(columns / across);
  const width = Math.min(WIDEST, wide / inPart);
  const height = width * ASPECT;
  const legendPerLine = Math.floor(paper.width / LEGEND_ENTRY);
  const head =
    ROOM.title + Math.ceil(colours / legendPerLine) * ROOM.legendLine + ROOM.marks + ROOM.top;
  const perPage = Math.max(1, Math.floor((paper.height - head - ROOM.spare) / height));
  const parts: ChartPart[] = [];
  for (let firstColumn = 0; firstColumn < columns; firstColumn += inPart) {
    const endColumn = Math.min(columns, firstColumn + inPart);
    for (let firstRow = rows.first; firstRow < rows.end; firstRow += perPage) {
      parts.push({
        firstRow,
        endRow: Math.min(rows.end, firstRow + perPage),
        firstColumn,
        endColumn,
      });
    }
  }
  return { cell: { width, height }, keyed: width >= KEYED, legendPerLine, parts };
}
