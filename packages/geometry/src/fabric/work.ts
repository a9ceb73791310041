import type { Plan } from '@halfhitch/core';
import type { Lying } from './layers.js';
import type { Links } from './links.js';
import type { Passes } from './passes.js';
import type { Routes } from './routes.js';
import type { Seating } from './seating.js';
import type { Spread } from './spread.js';
import type { BackStretches } from './survey.js';

/** What the chunks of a piece are built from, in tying diameters. */
export interface Work {
  readonly plan: Plan;
  readonly seating: Seating;
  readonly links: Links;
  readonly stretches: BackStretches;
  readonly passes: Passes;
  /** Null where no gap opens. */
  readonly spread: Spread | null;
  readonly routes: Routes;
  readonly lying: Lying;
}
