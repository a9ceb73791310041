import type { Chart } from '@halfhitch/core';
import type { KnotChoice } from '../work/messages.js';
import type { CutErrors } from './read-settings.js';
import type { CutSettings } from './settings.js';
import type { CutSheet } from './sheet.js';

export interface CutRequest {
  readonly chart: Chart;
  readonly choice: KnotChoice;
  readonly settings: CutSettings;
}

export type CutOutcome = { readonly sheet: CutSheet } | { readonly errors: CutErrors };
