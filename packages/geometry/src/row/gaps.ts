import { changesPlaces, halvesOf } from '@halfhitch/core';
import type { RowKnot, RowScene } from './scene.js';

/**
 * Gaps between base strings are counted from 0, outside the first one, and from 1 between the first and
 * the second: gap `g` is left of column `g`.
 */
const gapBefore = (knot: RowKnot): number => knot.column + (beginsAtRight(knot) ? 1 : 0);

/** The gap on whose side a knot's lead leaves it. */
const gapAfter = (knot: RowKnot): number =>
  knot.column + (beginsAtRight(knot) === changesPlaces(knot.kind) ? 0 : 1);

/** Threads that a gap has room for in one row without being widened. */
const ROOMY = 2;

export interface TightGaps {
  /**
   * Gaps through which more threads go in one row than ordinary room between knots allows: to the front, to
   * the back, beneath another, or turning back in front of the work.
   */
  readonly crowded: ReadonlySet<number>;
  /** Gaps in which a lead goes from the lower end of a knot that it came back from to the upper of another. */
  readonly steep: ReadonlySet<number>;
}

/**
 * Gaps that are wider than others.
 *
 * @param catches whether a knot has the old lead between its halves
 * @param unequal whether leads are thicker or thinner than base strings
 */
export function tightGaps(
  scene: RowScene,
  catches: (knot: RowKnot) => boolean,
  unequal: boolean,
): TightGaps {
  const counts = new Map<string, number>();
  const crowded = new Set<number>();
  const steep = new Set<number>();
  const room = unequal ? ROOMY - 1 : ROOMY;
  const pass = (gap: number, knot: RowKnot): void => {
    const key = `${gap} ${knot.row ?? 0}`;
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    if (count > room && gap > 0 && gap < scene.base.length) crowded.add(gap);
  };
  const last = new Map<string, RowKnot>();
  let before: RowKnot | undefined;
  for (const knot of scene.knots) {
    if (before && knot.tying !== before.tying) pass(gapBefore(knot), knot);
    else if (before && gapAfter(before) === gapBefore(knot)) {
      if (before.column === knot.column) pass(gapBefore(knot), knot);
      else if (comesBack(before) && comesBack(knot)) steep.add(gapBefore(knot));
    }
    const old = knot.change && last.get(knot.change.oldLead);
    if (old && catches(knot)) {
      // Beneath the new lead on one side of the knot, and to the back on the other.
      pass(gapBefore(knot), knot);
      pass(gapAfter(knot), knot);
      // There the knot's own lead leaves it further out than others do.
      if (unequal) pass(gapAfter(knot), knot);
    } else if (old) {
      pass(gapAfter(old), knot);
    }
    last.set(knot.tying, knot);
    before = knot;
  }
  return { crowded, steep };
}

const comesBack = (knot: RowKnot): boolean => !changesPlaces(knot.kind);

const beginsAtRight = (knot: RowKnot): boolean => halvesOf(knot.kind)[0] === 'backward';
