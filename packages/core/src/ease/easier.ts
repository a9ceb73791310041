import type { Chart } from '../chart/chart.js';
import { LONG_FLOAT } from '../verify/verify.js';
import { BestFew } from './best-few.js';
import { type Count, countOf } from './count.js';
import {
  type Effort,
  type EffortOptions,
  effortOf,
  type KnottingChoice,
  type ProvenEffort,
} from './effort.js';
import { type Move, Moves, nothing } from './moves.js';
import { compareWorth, isWorthwhile } from './rank.js';
import { filled, type Spot, spotAt } from './spots.js';
import { Stints } from './stints.js';
import {
  type CellEdit,
  type Gain,
  rowsOf,
  type Suggestion,
  type SuggestionKind,
  withCells,
} from './suggestion.js';
import { rowsTouched } from './window.js';

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

interface Idea {
  readonly kind: SuggestionKind;
  readonly edits: readonly CellEdit[];
  readonly choice: KnottingChoice;
  readonly ofShape: boolean;
  readonly gain: Count;
}

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

/** Looks through a chart for ideas that seem worth proving. */
class Search {
  /** All spots together, once the ideas have been asked for; null where there are not several. */
  everySpot: Idea | null = null;
  private readonly moves: Moves;
  private readonly few: number;
  private readonly longFloat: number;

  constructor(
    private readonly chart: Chart,
    private readonly stints: Stints,
    private readonly choice: KnottingChoice,
    private readonly held: number,
    options: EasierOptions,
  ) {
    this.longFloat = options.longFloat ?? LONG_FLOAT;
    this.moves = new Moves(stints, this.longFloat);
    this.few = Math.min(options.fewKnots ?? EASIER_DEFAULTS.fewKnots, EASIER_LIMITS.fewKnots);
  }

  /** Best first, as far as can be said before they are proven. */
  ideas(): readonly Idea[] {
    const best = new BestFew<Idea>(this.held, compareWorth);
    for (const idea of this.spotIdeas()) best.add(idea);
    for (let stint = 0; stint < this.stints.count; stint++) {
      for (const move of this.movesOf(stint)) {
        const idea = this.ideaOf(move);
        if (idea !== null) best.add(idea);
      }
    }
    return best.all;
  }

  private *movesOf(stint: number): Generator<Move> {
    const { moves, stints } = this;
    const length = stints.length(stint);
    if (length <= Math.max(this.few, EASIER_LIMITS.longFloatKnots)) {
      const better = betterOf(moves.intoBefore(stint), moves.intoAfter(stint));
      if (better !== null && (length <= this.few || better.gain.longFloats > 0)) yield better;
    }
    const order = (stints.start[stint] as number) % stints.columns;
    const later = order === stints.columns - 1 ? moves.shifted(stint, 1) : null;
    const earlier = order === 1 ? moves.shifted(stint, -1) : null;
    for (const move of [later, earlier]) {
      if (move !== null && isWorthwhile(move.gain)) yield move;
    }
  }

  private ideaOf(move: Move): Idea | null {
    const { chart, stints } = this;
    const edits: CellEdit[] = [];
    for (let knot = move.first; knot < move.end; knot++) {
      const [row, column] = [stints.rowOf(knot), stints.columnOf(knot)];
      edits.push({ row, column, from: chart.cells[stints.cellOf(knot)] as number, to: move.to });
    }
    edits.sort((one, other) => one.row - other.row || one.column - other.column);
    const spot = spotAt(chart, stints.cellOf(move.first), this.few);
    // Part of a spot would leave the rest of it.
    if (spot !== null && spot.cells.length > edits.length) return null;
    const { kind, gain } = move;
    const ofShape = spot === null && kind !== 'edge-knot';
    // What is drawn on purpose is worth more than a part of a change.
    if (ofShape && gain.changes < edits.length && gain.longFloats === 0) return null;
    return { kind, edits, choice: this.choice, ofShape, gain };
  }

  /** Spots of several knots, their gain guessed from the drawing. */
  private *spotIdeas(): Generator<Idea> {
    const { chart, choice } = this;
    const seen = new Uint8Array(chart.cells.length);
    const every: CellEdit[] = [];
    let spots = 0;
    for (const spot of this.spots(seen)) {
      const edits = filled(chart, spot);
      if (edits === null) continue;
      spots++;
      if (every.length + edits.length <= EASIER_LIMITS.spotKnots) every.push(...edits);
      if (edits.length === 1) continue; // found as a lone knot, with its exact gain
      yield {
        kind: 'spot',
        edits,
        choice,
        ofShape: false,
        gain: { ...nothing(), changes: this.parts(spot) * 2 },
      };
    }
    if (spots < 2) return;
    every.sort((one, other) => one.row - other.row || one.column - other.column);
    this.everySpot = { kind: 'every-spot', edits: every, choice, ofShape: false, gain: nothing() };
  }

  private *spots(seen: Uint8Array): Generator<Spot> {
    const { chart, stints, few } = this;
    for (let stint = 0; stint < stints.count; stint++) {
      if (stints.length(stint) > few) continue;
      for (let knot = stints.start[stint]!; knot < stints.start[stint + 1]!; knot++) {
        const cell = stints.cellOf(knot);
        if (seen[cell] === 1) continue;
        const spot = spotAt(chart, cell, few);
        if (spot === null) break;
        for (const member of spot.cells) seen[member] = 1;
        yield spot;
      }
    }
  }

  /** Stretches of neighbouring knots in a row that a spot is made of. */
  private parts({ cells }: Spot): number {
    return cells.filter((cell, i) => cell % this.chart.columns === 0 || cells[i - 1] !== cell - 1)
      .length;
  }
}

/** Of two ways to be rid of a stint, the one that saves more; null when neither is any good. */
function betterOf(one: Move | null, other: Move | null): Move | null {
  const good = [one, other].filter((move) => move !== null && isWorthwhile(move.gain)) as Move[];
  const worth = ({ gain }: Move): number =>
    gain.changes * 1e6 + gain.longFloats * 1e4 + gain.floatKnots;
  return good.reduce<Move | null>(
    (best, move) => (best === null || worth(move) > worth(best) ? move : best),
    null,
  );
}

/** Proves ideas, as many as the work allows. */
class Prover {
  readonly stints: Stints;
  private left: number;
  private readonly used: Uint32Array;

  constructor(
    private readonly chart: Chart,
    private readonly choice: KnottingChoice,
    private readonly options: EasierOptions,
    private readonly whole: ProvenEffort,
  ) {
    this.stints = new Stints(chart, choice.start);
    this.left = options.work ?? EASIER_DEFAULTS.work;
    this.used = new Uint32Array(chart.colours.length);
    for (const colour of chart.cells) this.used[colour] = (this.used[colour] as number) + 1;
  }

  get isSpent(): boolean {
    return this.left <= 0;
  }

  /** The suggestion with what it is found to gain; null when it is not worth it, or harms. */
  prove({ kind, edits, choice, ofShape }: Idea): Suggestion | null {
    const { chart, options } = this;
    const rows =
      edits.length === 0 ? { first: 0, end: chart.rows } : rowsTouched(chart, this.stints, edits);
    const isWhole = rows.end - rows.first === chart.rows;
    const part = isWhole ? chart : rowsOf(chart, rows.first, rows.end);
    const changed = withCells(
      part,
      edits.map((edit) => ({ ...edit, row: edit.row - rows.first })),
    );
    if (!this.seemsWorthwhile(part, changed, choice)) return null;
    const before = isWhole ? this.whole : effortOf(part, this.choice, options);
    const after = effortOf(changed, choice, options);
    this.left -= part.cells.length * (isWhole ? 1 : 2);
    if (!before.ok || !after.ok || after.weak > before.weak) return null;
    const gain = { ...difference(before.effort, after.effort), leads: this.leadsSaved(edits) };
    return isWorthwhile(gain) ? { kind, cells: edits, choice, ofShape, gain, rows } : null;
  }

  /** Counting is quick, and spares planning what is no good. */
  private seemsWorthwhile(part: Chart, changed: Chart, choice: KnottingChoice): boolean {
    const longFloat = this.options.longFloat ?? LONG_FLOAT;
    const before = countOf(part, this.choice.start, longFloat);
    const after = countOf(changed, choice.start, longFloat);
    return isWorthwhile({
      changes: before.changes - after.changes,
      edgeChanges: before.edgeChanges - after.edgeChanges,
      floatKnots: before.floatKnots - after.floatKnots,
      longFloats: before.longFloats - after.longFloats,
    });
  }

  /** Colours that are used nowhere any more, less those that were not. */
  private leadsSaved(edits: readonly CellEdit[]): number {
    const used = this.used.slice();
    for (const { from, to } of edits) {
      used[from] = (used[from] as number) - 1;
      used[to] = (used[to] as number) + 1;
    }
    const leads = (counts: Uint32Array): number => counts.filter((count) => count > 0).length;
    return leads(this.used) - leads(used);
  }
}

function difference(before: Effort, after: Effort): Gain {
  return {
    changes: before.changes - after.changes,
    edgeChanges: before.edgeChanges - after.edgeChanges,
    leads: before.leads - after.leads,
    floats: before.floats - after.floats,
    // Sums of roots differ in their last digits by what was summed.
    floatKnots: Math.round((before.floatKnots - after.floatKnots) * 1e6) / 1e6,
    longFloats: before.longFloats - after.longFloats,
    seconds: before.seconds - after.seconds,
  };
}
