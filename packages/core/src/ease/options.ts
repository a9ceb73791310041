import type { EffortOptions } from './effort.js';

export interface EasierOptions extends EffortOptions {
  /** Suggestions given. Default: 12. */
  readonly most?: number;
  /** Knots that a suggestion may change where they are few. Default: 4. */
  readonly fewKnots?: number;
  /** Knots planned and verified in proving suggestions, before and after. Default: 12 million. */
  readonly work?: number;
}

export const EASIER_DEFAULTS = { most: 12, fewKnots: 4, work: 12_000_000 } as const;

/** Stated limits of looking for what makes a piece easier. */
export const EASIER_LIMITS = {
  most: 100,
  fewKnots: 12,
  /** Knots that may change where a long float goes with them. */
  longFloatKnots: 12,
  /** Knots that may change where every spot goes. */
  spotKnots: 5_000,
} as const;
