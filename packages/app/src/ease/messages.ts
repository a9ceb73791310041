import type { BestWay, Chart, Effort, Pace, Suggestion } from '@halfhitch/core';
import type { CutSettings } from '../cut/settings.js';
import type { KnotChoice } from '../work/messages.js';

export interface EaseRequest {
  readonly chart: Chart;
  readonly choice: KnotChoice;
  /** The thread that lengths are told for. */
  readonly cut: CutSettings;
  readonly pace: Pace;
  readonly mayMirror: boolean;
}

/** A suggestion, with the thread that it saves. */
export interface Advice {
  readonly suggestion: Suggestion;
  /** mm; null where working it out would take too long. */
  readonly thread: number | null;
}

export interface EaseAnswer {
  /** Whether the piece knots out as drawn; where it does not, there is no advice. */
  readonly ok: boolean;
  readonly before: Effort;
  readonly advice: readonly Advice[];
  readonly untried: number;
  readonly way: BestWay;
}

/** What went wrong is told as it is. */
export type EaseOutcome = EaseAnswer | { readonly problem: string };
