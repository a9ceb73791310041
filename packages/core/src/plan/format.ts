import { FILE_LIMITS } from '../document/limits.js';
import { MAX_STRINGS } from '../model/strings.js';

export const PLAN_FORMAT = 'halfhitch-plan';
export const PLAN_VERSION = 1;

/** Stated limits of a plan document, besides those of its chart. */
export interface PlanLimits {
  /** Characters of the document. */
  readonly size: number;
  readonly strings: number;
  /** Steps, a knot being two of them. */
  readonly steps: number;
  /** Characters of a string's id. */
  readonly id: number;
}

export const PLAN_LIMITS: PlanLimits = {
  size: FILE_LIMITS.plan,
  strings: MAX_STRINGS,
  steps: 16_000_000,
  id: 32,
};
