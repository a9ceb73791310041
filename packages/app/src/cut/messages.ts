import type { Chart, DiagonalPattern } from '@halfhitch/core';
import type { SwatchCheck } from '@halfhitch/geometry/thread';
import type { KnotChoice } from '../work/messages.js';
import type { BandFit, SizeRow } from './fit.js';
import type { CutErrors } from './read-settings.js';
import type { CutSettings } from './settings.js';
import type { CutSheet } from './sheet.js';

export interface AlphaCutRequest {
  readonly chart: Chart;
  readonly choice: KnotChoice;
  readonly settings: CutSettings;
}

export interface DiagonalCutRequest {
  readonly pattern: DiagonalPattern;
  readonly settings: CutSettings;
}

export type CutRequest = AlphaCutRequest | DiagonalCutRequest;

/** All that the page shows of a piece's thread and fit. */
export interface CutAnswer {
  readonly sheet: CutSheet;
  readonly fit: BandFit;
  readonly sizes: readonly SizeRow[];
  /** Null without a swatch. */
  readonly swatch: SwatchCheck | null;
}

export type CutOutcome = CutAnswer | { readonly errors: CutErrors };
