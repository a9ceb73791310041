import {
  type KnotKind,
  type KnotReading,
  type Plan,
  PlanReader,
  type StringId,
  type TurnWay,
  turnAt,
} from '@halfhitch/core';
import type { KnotMeasures } from './measures.js';

/** What one string goes through in a plan, in mm, tails and margin not counted. */
export interface StringUsage {
  readonly string: StringId;
  /** Knots this string ties, by kind. */
  readonly ties: Readonly<Record<KnotKind, number>>;
  /** Knots tied onto this string. */
  readonly holds: number;
  /** Length in the knots it ties. */
  readonly knots: number;
  /** Length between its knots: links within rows, turns, and the way to where it is parked. */
  readonly travel: number;
  /** Length of its floats behind the work. */
  readonly floats: number;
  /** For a base string: its length through the piece. */
  readonly hanging: number;
  /** First and last row in which it ties, from 0; -1 for a base string. */
  readonly rows: { readonly first: number; readonly last: number };
}

/** Length that a knot adds to its lead, told to whoever follows a plan knot by knot. */
export interface LeadStretch {
  readonly knot: KnotReading;
  /** In the knot, and between it and what the lead did before, mm. */
  readonly knotLength: number;
  readonly travel: number;
  readonly float: number;
}

/** Lengths and sizes in mm: the measures of a knot with the diameter put in. */
export class Lengths {
  readonly tying: Readonly<Record<KnotKind, number>>;
  readonly link: number;
  readonly turn: Readonly<Record<TurnWay, number>>;
  readonly pitch: number;
  /** What the edges add to the width. */
  readonly edges: number;
  readonly rowHeight: number;
  readonly held: number;
  readonly thickness: number;
  readonly laidThrough: number;
  readonly clearing: number;

  /**
   * @param diameter of the thread, mm
   * @param across factor by which a swatch was wider than computed
   * @param along factor by which it was longer
   */
  constructor(measures: KnotMeasures, diameter: number, across = 1, along = 1) {
    const scaled = (kind: KnotKind): number => measures.tying[kind] * diameter;
    this.tying = {
      forward: scaled('forward'),
      backward: scaled('backward'),
      'forward-backward': scaled('forward-backward'),
      'backward-forward': scaled('backward-forward'),
    };
    this.link = measures.link * diameter;
    this.turn = {
      inside: measures.turn.inside * diameter,
      outside: measures.turn.outside * diameter,
    };
    this.pitch = measures.pitch * diameter * across;
    this.edges = (measures.edges ?? 0) * diameter * across;
    this.rowHeight = measures.rowHeight * diameter * along;
    this.held = measures.held * diameter * along;
    this.thickness = measures.thickness * diameter;
    this.laidThrough = (measures.laidThrough ?? 0) * diameter;
    this.clearing = (measures.clearing ?? 0) * diameter;
  }
}

/** Every knot of a plan in order, with the length it adds to its lead. */
export function* leadStretches(plan: Plan, lengths: Lengths): IterableIterator<LeadStretch> {
  for (const row of new PlanReader(plan)) {
    for (const knot of row.knots) yield stretchOf(plan, knot, lengths);
  }
}

function stretchOf(plan: Plan, knot: KnotReading, lengths: Lengths): LeadStretch {
  const { change } = knot;
  let travel = 0;
  let float = 0;
  let knotLength = lengths.tying[knot.kind];
  if (change?.oldLeadRoute === 'through') knotLength += lengths.laidThrough;
  if (change === null) {
    const side = knot.direction === 'right' ? 'left' : 'right';
    travel = knot.order === 0 ? lengths.turn[turnAt(plan.edge, side)] : lengths.link;
  } else if (change.float !== null) {
    float =
      Math.hypot(change.float.rows * lengths.rowHeight, change.float.columns * lengths.pitch) +
      lengths.clearing;
    // From the back to the front beside the held string.
    travel = lengths.thickness;
  }
  return { knot, knotLength, travel, float };
}

/** Length in which an old lead leaves the front: past one knot, and through to the back. */
export function leavingLength(lengths: Lengths): number {
  return lengths.pitch + lengths.thickness;
}

interface Tally {
  ties: Record<KnotKind, number>;
  holds: number;
  knots: number;
  travel: number;
  floats: number;
  first: number;
  last: number;
}

/** What every string of a plan goes through, in the order of the plan's strings. */
export function usageOf(plan: Plan, lengths: Lengths): readonly StringUsage[] {
  const tallies = new Map<StringId, Tally>();
  for (const { id } of plan.strings) {
    tallies.set(id, {
      ties: { forward: 0, backward: 0, 'forward-backward': 0, 'backward-forward': 0 },
      holds: 0,
      knots: 0,
      travel: 0,
      floats: 0,
      first: -1,
      last: -1,
    });
  }
  const tally = (id: StringId): Tally => tallies.get(id) as Tally;
  for (const { knot, knotLength, travel, float } of leadStretches(plan, lengths)) {
    const lead = tally(knot.tying.id);
    lead.ties[knot.kind]++;
    lead.knots += knotLength;
    lead.travel += travel;
    lead.floats += float;
    if (lead.first < 0) lead.first = knot.row;
    lead.last = knot.row;
    tally(knot.held.id).holds++;
    const old = knot.change?.oldLead;
    if (old != null) tally(old.id).travel += leavingLength(lengths);
  }
  return plan.strings.map(({ id }) => {
    const { ties, holds, knots, travel, floats, first, last } = tally(id);
    return {
      string: id,
      ties,
      holds,
      knots,
      travel,
      floats,
      hanging: holds * lengths.held,
      rows: { first, last },
    };
  });
}
