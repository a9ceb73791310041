import {
  type DiagonalPattern,
  KNOT_KINDS,
  type KnotKind,
  type StringId,
  slotOfPlace,
} from '@halfhitch/core';
import { lengthOf } from '../curve/polyline.js';
import { type LatticeWork, latticeWork, NO_KNOT } from './knots.js';
import { latticeKnots, type Strand } from './shapes.js';
import { spacing } from './spacing.js';
import { HANGING, wayBetween, wayIn, wayOut } from './ways.js';

/** What one string goes through in a pattern, mm; tails and margin are not counted. */
export interface DiagonalStringUsage {
  readonly string: StringId;
  /** Slot in which it hangs at the start, from 0. */
  readonly slot: number;
  /** Knots that it ties, by kind. */
  readonly ties: Readonly<Record<KnotKind, number>>;
  /** Knots that are tied onto it. */
  readonly holds: number;
  /** Length in the knots it ties. */
  readonly tied: number;
  /** Length in the knots tied onto it. */
  readonly held: number;
  /** Length between its knots, and past rows in which it is not knotted. */
  readonly ways: number;
}

/** Lengths of one knot in diameters, by kind code: of the string that ties and the one that is held. */
interface KnotLengths {
  readonly tied: readonly number[];
  readonly held: readonly number[];
}

let known: KnotLengths | undefined;

function knotLengths(): KnotLengths {
  const within = ({ points, from, to }: Strand) => lengthOf(points.subarray(3 * from, 3 * to + 3));
  known ??= {
    tied: latticeKnots().map(({ tying }) => within(tying)),
    held: latticeKnots().map(({ held }) => within(held)),
  };
  return known;
}

/** What a row adds to the strings that it knots: told knot by knot, in order. */
export interface KnotUse {
  readonly row: number;
  readonly place: number;
  readonly code: number;
  /** Strings by their slots at the start. */
  readonly tying: number;
  readonly held: number;
  /** Lengths that the knot and the ways to it add to the two strings, in diameters. */
  readonly adds: {
    readonly tied: number;
    readonly held: number;
    readonly wayOfTying: number;
    readonly wayOfHeld: number;
  };
}

/** Every knot of some work, row by row, with what it adds to its strings. */
export function* knotUses(work: LatticeWork): IterableIterator<KnotUse> {
  const { strings, rows, across, kinds, tying, held } = work;
  const { tied: tiedLength, held: heldLength } = knotLengths();
  const last = new Int32Array(strings.length).fill(-1);
  const slotOf = (cell: number) => slotOfPlace(work, Math.floor(cell / across), cell % across);
  const wayTo = (string: number, cell: number): number => {
    const code = kinds[cell]!;
    const knot = latticeKnots()[code]!;
    const own = tying[cell] === string ? knot.tying : knot.held;
    const from = last[string]!;
    last[string] = cell;
    // The first way begins where the row of its knot would begin if all before it were knotted.
    if (from < 0) return firstWay(code, own.comes) + Math.floor(cell / across) * spacing().row;
    const before = latticeKnots()[kinds[from]!]!;
    const side = (tying[from] === string ? before.tying : before.held).goes;
    const down = Math.floor(cell / across) - Math.floor(from / across);
    return wayBetween(kinds[from]!, side, code, slotOf(cell) - slotOf(from), down).length;
  };
  for (let cell = 0; cell < rows * across; cell++) {
    const code = kinds[cell]!;
    if (code === NO_KNOT) continue;
    const [ties, holds] = [tying[cell]!, held[cell]!];
    yield {
      row: Math.floor(cell / across),
      place: cell % across,
      code,
      tying: ties,
      held: holds,
      adds: {
        tied: tiedLength[code]!,
        held: heldLength[code]!,
        wayOfTying: wayTo(ties, cell),
        wayOfHeld: wayTo(holds, cell),
      },
    };
  }
}

/** From half a row above a string's first knot to that knot; what is above is its tail. */
const firstWay = (code: number, side: -1 | 1): number =>
  wayIn(code, side).length - (HANGING.above - spacing().row / 2);

/** From a string's last knot to half a row below it. */
const lastWay = (code: number, side: -1 | 1): number =>
  wayOut(code, side).length - (HANGING.below - spacing().row / 2);

/**
 * What every string of a pattern goes through, in the order in which they hang.
 *
 * @param diameter of the thread, mm
 */
export function diagonalUsage(
  pattern: DiagonalPattern,
  diameter = 1,
): readonly DiagonalStringUsage[] {
  const work = latticeWork(pattern);
  const tallies = work.strings.map(() => ({
    ties: { forward: 0, backward: 0, 'forward-backward': 0, 'backward-forward': 0 },
    holds: 0,
    tied: 0,
    held: 0,
    ways: 0,
    last: -1,
  }));
  for (const { row, place, code, tying, held, adds } of knotUses(work)) {
    const ties = tallies[tying]!;
    const holds = tallies[held]!;
    ties.ties[KNOT_KINDS[code]!]++;
    ties.tied += adds.tied;
    ties.ways += adds.wayOfTying;
    ties.last = row * work.across + place;
    holds.holds++;
    holds.held += adds.held;
    holds.ways += adds.wayOfHeld;
    holds.last = row * work.across + place;
  }
  return tallies.map(({ last, ...tally }, slot) => ({
    string: work.strings[slot]!.id,
    slot,
    ties: tally.ties,
    holds: tally.holds,
    tied: tally.tied * diameter,
    held: tally.held * diameter,
    ways: (tally.ways + wayToTheEnd(work, slot, last)) * diameter,
  }));
}

/** From a string's last knot to below the last row; all of the piece for a string in no knot. */
function wayToTheEnd(work: LatticeWork, string: number, last: number): number {
  const { rows, across, kinds, tying } = work;
  const { row } = spacing();
  if (last < 0) return rows * row;
  const knot = latticeKnots()[kinds[last]!]!;
  const side = (tying[last] === string ? knot.tying : knot.held).goes;
  const idle = rows - 1 - Math.floor(last / across);
  return lastWay(kinds[last]!, side) + idle * row;
}
