import type {
  Chart,
  ChartColour,
  DiagonalPattern,
  DiagonalPicture,
  EdgeTechnique,
  Finding,
  RowInstructions,
  RowReading,
  StartSide,
  ThreadString,
  Verification,
} from '@halfhitch/core';
import type { Tile } from './fabric-tile.js';
import type { NumberedAnswer } from './waiting-answers.js';
import type { NumberedAsk } from './worker-desk.js';

/** How a chart is to be knotted. */
export interface KnotChoice {
  readonly edge: EdgeTechnique;
  readonly start: StartSide;
}

/** A chart, planned and verified: what the page shows of it. */
export interface Piece {
  /** Of the project it was planned for. */
  readonly id: string;
  readonly chart: Chart;
  readonly name: string;
  readonly rows: number;
  readonly columns: number;
  readonly colours: readonly ChartColour[];
  readonly choice: KnotChoice;
  /** What the reader of the file wants known. */
  readonly notices: readonly string[];
  readonly ok: boolean;
  readonly knots: number;
  readonly halfHitches: number;
  readonly changes: Verification['changes'];
  readonly findings: readonly Finding[];
  /** Findings there are; more than are listed where there are very many. */
  readonly findingCount: number;
  readonly strings: readonly ThreadString[];
  /** String that tied each cell, and its kind of knot, as a verification has them. */
  readonly tying: Uint16Array;
  readonly kinds: Uint8Array;
}

/** A row to be read and played. */
export interface RowSheet {
  readonly reading: RowReading;
  readonly previous: RowReading | null;
  readonly instructions: RowInstructions;
}

/** What a file holds. */
export type Opened =
  | { readonly kind: 'alpha'; readonly chart: Chart }
  | {
      readonly kind: 'diagonal';
      readonly pattern: DiagonalPattern;
      /** A picture that is yet to be knotted; null where the file holds the knots. */
      readonly wanted: DiagonalPicture | null;
    };

export type Request =
  | { readonly ask: 'read'; readonly bytes: Uint8Array; readonly fileName: string }
  /** Rows and pictures asked for afterwards are of the piece that is planned here. */
  | {
      readonly ask: 'plan';
      readonly chart: Chart;
      readonly choice: KnotChoice;
      readonly notices: readonly string[];
    }
  | { readonly ask: 'row'; readonly row: number }
  /** Every step of a row in words. */
  | { readonly ask: 'steps'; readonly row: number }
  /** A picture of a part of the fabric. */
  | { readonly ask: 'tile'; readonly tile: Tile };

export interface Answers {
  read: Opened & { readonly notices: readonly string[] };
  plan: Omit<Piece, 'id'>;
  row: RowSheet;
  /** For each knot in the order of knotting, its steps in turn. */
  steps: readonly (readonly string[])[];
  tile: string;
}

export type Ask = NumberedAsk<Request>;
export type Answer = NumberedAnswer<Answers[keyof Answers]>;
