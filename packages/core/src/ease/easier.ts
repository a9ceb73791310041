import type { Chart } from '../chart/chart.js';
import { type Effort, effortOf, type KnottingChoice } from './effort.js';
import { nothing } from './moves.js';
import { EASIER_DEFAULTS, EASIER_LIMITS, type EasierOptions } from './options.js';
import { Prover } from './prover.js';
import { compareWorth } from './rank.js';
import { Search } from './search.js';
import type { Suggestion } from './suggestion.js';

export interface EasierReading {
  /** Whether the piece knots out as drawn. Where it does not, nothing is suggested. */
  readonly ok: boolean;
  readonly before: Effort;
  /** The most gained for each knot changed comes first. */
  readonly suggestions: readonly Suggestion[];
  /** Ideas that seemed good but were not tried, since the work would be more than was allowed. */
  readonly untried: number;
}

/** Ideas held while a chart is looked through, for each suggestion asked for. */
const HELD = 6;

/** Of shapes that are meant, no more than this share of the suggestions may take knots away. */
const OF_SHAPES = 1 / 3;

/**
 * What would make a piece easier to knot without drawing it anew: fewer colour changes, shorter
 * floats, no knots alone in their colour at the edges. Each suggestion stands for itself and is
 * proven by planning and verifying the rows it touches before and after; none makes anything
 * worse. Which are given, and in what order, depends on nothing but the chart and the options.
 */
export function easier(
  chart: Chart,
  choice: KnottingChoice,
  options: EasierOptions = {},
): EasierReading {
  const most = Math.min(options.most ?? EASIER_DEFAULTS.most, EASIER_LIMITS.most);
  const whole = effortOf(chart, choice, options);
  if (!whole.ok) return { ok: false, before: whole.effort, suggestions: [], untried: 0 };
  const prover = new Prover(chart, choice, options, whole);
  const suggestions: Suggestion[] = [];
  const start = choice.start === 'left' ? 'right' : 'left';
  const otherSide = prover.prove({
    kind: 'start-side',
    edits: [],
    choice: { ...choice, start },
    ofShape: false,
    gain: nothing(),
  });
  if (otherSide !== null) suggestions.push(otherSide);
  const search = new Search(chart, prover.stints, choice, most * HELD, options);
  const ideas = search.ideas();
  // It would be pushed out just where there are many spots.
  const everySpot = search.everySpot === null ? null : prover.prove(search.everySpot);
  if (everySpot !== null) suggestions.push(everySpot);
  let untried = 0;
  let ofShapes = Math.ceil(most * OF_SHAPES);
  for (const idea of ideas) {
    if (suggestions.length >= most) break;
    if (idea.ofShape && ofShapes === 0) continue;
    if (prover.isSpent) {
      untried++;
      continue;
    }
    const proven = prover.prove(idea);
    if (proven === null) continue;
    suggestions.push(proven);
    if (proven.ofShape) ofShapes--;
  }
  return { ok: true, before: whole.effort, suggestions: suggestions.sort(compareWorth), untried };
}
