import { KNOT_KINDS, type KnotKind, type StringId } from '@halfhitch/core';
import type { LatticeWork } from './knots.js';
import { knotUses } from './usage.js';

/**
 * A knot between two strings of one colour that could be tied so that they go on in each other's
 * place: the picture stays as it is, and what the two take is shared out more evenly.
 */
export interface WorthSwapping {
  /** Where the two meet: row and place, from 0. */
  readonly row: number;
  readonly place: number;
  readonly strings: readonly [StringId, StringId];
  /** The kind that is there now, and the one to tie instead. */
  readonly kind: KnotKind;
  readonly instead: KnotKind;
  /** How much shorter the longer of the two becomes, mm. */
  readonly saves: number;
}

/** Kinds that differ only in whether the strings change places. */
const otherOutcome = (code: number): number => code ^ 2;

/**
 * For each colour the knot at which two of its strings are best swapped.
 *
 * @param least saving that is worth it, mm
 */
export function worthSwapping(
  work: LatticeWork,
  diameter: number,
  least: number,
): readonly WorthSwapping[] {
  const whole = new Float64Array(work.strings.length);
  for (const { tying, held, adds } of knotUses(work)) {
    whole[tying]! += adds.tied + adds.wayOfTying;
    whole[held]! += adds.held + adds.wayOfHeld;
  }
  const used = new Float64Array(whole.length);
  const best = new Map<string, WorthSwapping>();
  for (const { row, place, code, tying, held, adds } of knotUses(work)) {
    used[tying]! += adds.tied + adds.wayOfTying;
    used[held]! += adds.held + adds.wayOfHeld;
    const [a, b] = [work.strings[tying]!, work.strings[held]!];
    if (a.colour !== b.colour) continue;
    const rest = [tying, held].map((string) => whole[string]! - used[string]!);
    const now = Math.max(whole[tying]!, whole[held]!);
    const then = Math.max(used[tying]! + rest[1]!, used[held]! + rest[0]!);
    const saves = (now - then) * diameter;
    if (saves < least || saves <= (best.get(a.colour)?.saves ?? 0)) continue;
    best.set(a.colour, {
      row,
      place,
      strings: [a.id, b.id],
      kind: KNOT_KINDS[code]!,
      instead: KNOT_KINDS[otherOutcome(code)]!,
      saves,
    });
  }
  return [...best.values()];
}
