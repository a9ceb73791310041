import type { Chart } from '../chart/chart.js';
import { LONG_FLOAT } from '../verify/verify.js';
import { BestFew } from './best-few.js';
import type { KnottingChoice } from './effort.js';
import type { Idea } from './idea.js';
import { type Move, Moves, nothing } from './moves.js';
import { EASIER_DEFAULTS, EASIER_LIMITS, type EasierOptions } from './options.js';
import { compareWorth, isWorthwhile } from './rank.js';
import { filled, type Spot, spotAt } from './spots.js';
import type { Stints } from './stints.js';
import type { CellEdit } from './suggestion.js';

/** Looks through a chart for ideas that seem worth proving. */
export class Search {
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
