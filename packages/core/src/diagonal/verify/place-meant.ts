import { changesPlaces, KNOT_KINDS, type KnotKind } from '../../model/knot.js';
import { knotsAcross } from '../lattice.js';
import * as say from './messages.js';
import type { Standing } from './standing.js';

/**
 * Whether a knot of strings that are no pair of this row is one of the next, to which there was no
 * turn. Any two neighbours are a pair of the one or of the other.
 */
export function belongsToNextRow(at: Standing, i: number, tying: number, held: number): boolean {
  if (at.leftSlot(tying, held) < 0 || at.row + 1 >= at.rows) return false;
  return at.lacks() === 0 || !(at.look.turnComesFirst(i) || nextFits(at, i));
}

/** Whether the next knot of other strings, before any turn, is one that this row still lacks. */
function nextFits(at: Standing, i: number): boolean {
  const { a, b } = at.steps;
  for (let j = at.look.nextHalf(i); j >= 0; j = at.look.nextHalf(j, false, i)) {
    if (a[j] === a[i] && b[j] === b[i]) continue;
    const place = at.pairPlace(a[j] as number, b[j] as number);
    return place >= 0 && !at.isTied(place);
  }
  return false;
}

/**
 * Without a pattern the kind of an earlier knot shows to be wrong only when its strings are needed
 * on each other's sides.
 */
export function blameKnotBefore(at: Standing, string: number, other: number): boolean {
  const { machine, wanted } = at;
  if (wanted.pattern !== null || string >= machine.count || other >= machine.count) return false;
  const cell = at.lastCell[string] as number;
  const row = at.lastRow[string] as number;
  if (cell < 0) return false;
  const kind = KNOT_KINDS[at.kinds[cell] as number] as KnotKind;
  const slot = machine.slotOf[string] as number;
  for (const beside of [slot - 1, slot + 1]) {
    if (beside < 0 || beside >= machine.frontLength) continue;
    const partner = machine.front[beside] as number;
    if (at.lastCell[partner] !== cell) continue;
    const far = machine.slotOf[other] as number;
    if (Math.abs(far - beside) !== 1) continue;
    const place = wanted.placeAt(at.row, Math.min(far, beside));
    if (place < 0 || at.isTied(place)) continue;
    const inRow = row * knotsAcross(at.lattice);
    const exchanges = changesPlaces(kind);
    at.log.atPlace('wrong', 'wrong-kind', row, cell - inRow, () =>
      say.wrongSides(kind, at.id(string), at.id(partner), at.id(other), at.row, exchanges),
    );
    at.exchange(Math.min(slot, beside));
    return true;
  }
  return false;
}

/** The place that a knot with a wrong string was most likely meant for, or -1. */
export function placeMeant(at: Standing, i: number, tying: number, held: number): number {
  const { a, b } = at.steps;
  const next = at.look.nextHalf(i);
  // Where the second half names its strings rightly, the first half alone is wrong.
  if (next >= 0) {
    const [nextTying, nextHeld] = [a[next] as number, b[next] as number];
    const place = at.pairPlace(nextTying, nextHeld);
    if (place >= 0 && !at.isTied(place) && (nextTying === tying || nextHeld === held)) {
      return place;
    }
  }
  const free = [tying, held]
    .map((string) => (string < at.machine.count ? (at.machine.slotOf[string] as number) : -1))
    .map((slot) => (slot < 0 ? -1 : at.wanted.placeOf(at.row, slot)))
    .filter((place) => place >= 0 && !at.isTied(place));
  const due = at.firstLacking();
  return free.includes(due) ? due : (free[0] ?? -1);
}
