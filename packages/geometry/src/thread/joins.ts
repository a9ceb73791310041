import { InputError, type Join, type Plan } from '@halfhitch/core';
import { type LeadStretch, type Lengths, leadStretches, leavingLength } from './usage.js';

export interface JoinRules {
  /** Longest piece of thread that is pleasant to work with, mm, tails and margin counted. */
  readonly workable: number;
  /** Tail at each end of a piece, mm. */
  readonly tail: number;
  /** Share added for safety, 0.1 for a tenth. */
  readonly margin: number;
}

/** A join is looked for among the last knots that a piece would reach, so many of its length. */
const LOOK_BACK = 0.25;

/** Knots nearest an edge in which a join would be felt or seen. */
const EDGE_KNOTS = 2;

interface Piece {
  /** Length used since the piece began, mm. */
  used: number;
  /** Its last knots, each with the length used before it. */
  recent: { stretch: LeadStretch; before: number }[];
}

/**
 * Where each lead that is longer than workable is to be joined to a new one: as late as its
 * length allows, best where it comes up from the back anyway, else well inside a row, and at an
 * edge only where nothing else can be had.
 *
 * @throws InputError when the workable length is too short for even a few knots
 */
export function chooseJoins(plan: Plan, lengths: Lengths, rules: JoinRules): Join[] {
  const room = rules.workable / (1 + rules.margin) - 2 * rules.tail - leavingLength(lengths);
  const longest = Math.max(...Object.values(lengths.tying)) + lengths.link + lengths.thickness;
  if (!(room > 4 * longest)) {
    throw new InputError(
      'workable-length',
      `A piece of ${Math.round(rules.workable)} mm has no room for knots beside its tails of ${Math.round(rules.tail)} mm.`,
      {},
      'Allow a longer piece or shorter tails.',
    );
  }
  const joins: Join[] = [];
  const pieces = new Map<string, Piece>();
  for (const stretch of leadStretches(plan, lengths)) {
    const id = stretch.knot.tying.id;
    const piece = pieces.get(id) ?? { used: 0, recent: [] };
    pieces.set(id, piece);
    const length = stretch.knotLength + stretch.travel + stretch.float + leaving(stretch, lengths);
    piece.recent.push({ stretch, before: piece.used });
    piece.used += length;
    if (piece.used <= room) {
      forgetEarly(piece, room);
      continue;
    }
    const best = bestPlace(piece, plan.columns);
    joins.push({ row: best.stretch.knot.row, column: best.stretch.knot.column });
    const from = piece.recent.indexOf(best);
    // The new piece comes up where the old one stops, so it spans no float to get there.
    const spared = best.stretch.travel + best.stretch.float;
    const start = best.before + spared;
    piece.used -= start;
    piece.recent = piece.recent
      .slice(from)
      .map((entry) => ({ ...entry, before: Math.max(0, entry.before - start) }));
  }
  return joins;
}

/** A knot after which another lead takes over costs the old one its way to the back. */
function leaving(stretch: LeadStretch, lengths: Lengths): number {
  return stretch.knot.change === null ? 0 : leavingLength(lengths);
}

function forgetEarly(piece: Piece, room: number): void {
  const keepFrom = piece.used - LOOK_BACK * room;
  let early = 0;
  while (early < piece.recent.length - 1 && (piece.recent[early]?.before ?? 0) < keepFrom) early++;
  if (early > 64) piece.recent = piece.recent.slice(early);
}

function bestPlace(piece: Piece, columns: number): { stretch: LeadStretch; before: number } {
  let best = piece.recent[piece.recent.length - 1] as { stretch: LeadStretch; before: number };
  let bestRank = -1;
  for (const entry of piece.recent) {
    if (entry.before === 0) continue;
    const rank = rankOf(entry.stretch, columns);
    if (rank >= bestRank) {
      best = entry;
      bestRank = rank;
    }
  }
  return best;
}

function rankOf({ knot }: LeadStretch, columns: number): number {
  const fromEdge = Math.min(knot.column, columns - 1 - knot.column);
  if (fromEdge < EDGE_KNOTS) return fromEdge === 0 ? 0 : 1;
  return knot.change === null ? 2 : 3;
}
