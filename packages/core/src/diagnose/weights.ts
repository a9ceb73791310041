import type { Mistake, MistakeKind } from '../mistakes/mistake.js';
import { startSide } from '../model/knot.js';

/**
 * How often a mistake of a kind is made, relative to the others. Common practice, no source:
 * miscounting is what makers speak of most, then the turn, then the way a knot is made.
 */
export const MISTAKE_WEIGHTS: Readonly<Record<MistakeKind, number>> = {
  'long-run': 10,
  'short-run': 10,
  'late-change': 8,
  'early-change': 8,
  'single-edge-knot': 9,
  'skipped-string': 6,
  'wrong-lead': 5,
  'wrong-kind': 5,
  'caught-at-edge': 5,
  'not-caught': 5,
  'half-knot': 4,
  'missing-row': 4,
  'doubled-knot': 3,
  'missing-knot': 3,
  'extra-row': 3,
  'other-edge': 3,
};

/**
 * What a weight is divided by to stand for a likelihood, and what each thing left unexplained
 * takes away: rough measures, so that one mistake more is never likelier.
 */
export const WEIGHT_OF_ALL = 1_000;
export const UNEXPLAINED = 0.01;

/** Share of a kind's weight that is left where the mistake asks for more than a slip. */
const RARER = 0.25;

/** The weight of one mistake, finer than that of its kind. */
export function weightOf(mistake: Mistake, asked: 'left' | 'right' | null): number {
  const weight = MISTAKE_WEIGHTS[mistake.kind];
  // A knot begun from the other side needs the lead to be carried across first.
  if (mistake.kind === 'wrong-kind' && asked !== null) {
    return startSide(mistake.tied) === asked ? weight : weight * RARER;
  }
  // A lead taken wrongly at a change stays in hand for the run; two changes for one knot are rare.
  if (mistake.kind === 'wrong-lead' && mistake.span === 'knot') return weight * RARER;
  return weight;
}
