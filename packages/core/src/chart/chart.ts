/** Stated limits of a chart. */
export const CHART_LIMITS = {
  minColumns: 1,
  maxColumns: 300,
  minRows: 1,
  maxRows: 10_000,
  minColours: 1,
  maxColours: 64,
  /** Longest name of a chart or a colour, in characters. */
  maxName: 200,
} as const;

export interface ChartColour {
  /** One character that stands for the colour in text. */
  readonly key: string;
  /** `#rrggbb`, lower case. */
  readonly hex: string;
  /** A plain description such as "lake blue"; may be empty. */
  readonly name: string;
}

/** The edge techniques, the usual one first. */
export const EDGE_TECHNIQUES = ['straight', 'wrapped'] as const;

export type EdgeTechnique = (typeof EDGE_TECHNIQUES)[number];

export const START_SIDES = ['left', 'right'] as const;

/** The side from which the first row is knotted. */
export type StartSide = (typeof START_SIDES)[number];

/** A drawn alpha chart: one colour for each knot. */
export interface Chart {
  /** What the pattern is called; may be empty. */
  readonly name: string;
  readonly rows: number;
  readonly columns: number;
  readonly colours: readonly ChartColour[];
  /** Index into `colours` of each cell, row by row from the top left; rows x columns of them. */
  readonly cells: Uint8Array;
  /** How the maker wants it tied, where the document says so. */
  readonly edge?: EdgeTechnique;
  readonly start?: StartSide;
  /**
   * Knot kinds worked out by hand, as indexes into KNOT_KINDS, row by row like `cells`. When
   * given, the planner ties these instead of working the kinds out.
   */
  readonly knots?: Uint8Array;
}

/** Something the reader of a chart did that the maker should know of. */
export interface ChartNotice {
  readonly code: string;
  readonly message: string;
}

export interface ChartReading {
  readonly chart: Chart;
  readonly notices: readonly ChartNotice[];
}

/** Colour index of a cell, rows and columns from 0. */
export function cellAt(chart: Chart, row: number, column: number): number {
  return chart.cells[row * chart.columns + column] as number;
}

export function colourAt(chart: Chart, row: number, column: number): ChartColour {
  return chart.colours[cellAt(chart, row, column)] as ChartColour;
}

/** How many different colours are drawn; a legend may list more. */
export function coloursUsed(chart: Chart): number {
  return new Set(chart.cells).size;
}
