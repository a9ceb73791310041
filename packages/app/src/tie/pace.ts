import type { TimedKnots } from '../store/progress.js';

/** A longer time since the knot before is a pause, s. */
export const PAUSE = 180;

/** Quicker than this after the knot before, s, it was tied along with it and counted late. */
const TOGETHER = 1.2;

/** Fewer knots than these say nothing of a pace. */
export const ENOUGH_KNOTS = 12;

/** Changes that must have been timed before a change has a time of its own. */
const ENOUGH_CHANGES = 3;

/** What a change adds where too few were timed, in knots: one more knot's time. */
const CHANGE_IN_KNOTS = 1;

/** The latest of what was timed: a maker gets quicker, and slower when tired. */
const RECENT = 80;

export interface Pace {
  /** Seconds for a half hitch. */
  readonly halfHitch: number;
  /** Seconds that a colour change adds. */
  readonly change: number;
  /** Knots it is told from. */
  readonly knots: number;
  /** Changes it is told from; 0 where what a change adds is only supposed. */
  readonly changes: number;
}

/** Takes up that some knots were tied in some seconds; a pause is no time for knots. */
export function timed(
  times: readonly TimedKnots[],
  seconds: number,
  knots: number,
  changes: number,
): readonly TimedKnots[] {
  if (!(seconds >= 0 && seconds <= PAUSE * Math.max(1, knots)) || knots < 1) return times;
  const last = times.at(-1);
  if (last !== undefined && seconds < TOGETHER) {
    const together = {
      seconds: last.seconds + seconds,
      knots: last.knots + knots,
      changes: last.changes + changes,
    };
    return [...times.slice(0, -1), together];
  }
  return [...times, { seconds, knots, changes }];
}

/**
 * The maker's pace; null until enough knots were timed. Medians, so that a knot at which the
 * doorbell rang counts no more than any other.
 */
export function paceOf(times: readonly TimedKnots[]): Pace | null {
  const recent = times.slice(-RECENT);
  const knots = sum(recent, (one) => one.knots);
  if (knots < ENOUGH_KNOTS) return null;
  const plain = recent.filter(({ changes }) => changes === 0);
  const enoughPlain = sum(plain, (one) => one.knots) >= ENOUGH_KNOTS / 2;
  const perKnot = enoughPlain
    ? weightedMedian(plain, ({ seconds, knots: of }) => seconds / of)
    : weightedMedian(
        recent,
        ({ seconds, knots: of, changes }) => seconds / (of + CHANGE_IN_KNOTS * changes),
      );
  const changing = recent.filter(({ changes }) => changes > 0);
  const changes = sum(changing, (one) => one.changes);
  const told = enoughPlain && changes >= ENOUGH_CHANGES;
  return {
    halfHitch: perKnot / 2,
    change: told
      ? Math.max(
          0,
          median(changing.map((one) => (one.seconds - one.knots * perKnot) / one.changes)),
        )
      : CHANGE_IN_KNOTS * perKnot,
    knots,
    changes: told ? changes : 0,
  };
}

/** Seconds that half hitches and changes take at a pace. */
export function secondsFor(pace: Pace, halfHitches: number, changes: number): number {
  return pace.halfHitch * halfHitches + pace.change * changes;
}

function sum<T>(list: readonly T[], of: (one: T) => number): number {
  return list.reduce((total, one) => total + of(one), 0);
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? 0) + upper) / 2;
}

/** The value below and above which half of the knots are; of two in the middle their mean. */
function weightedMedian(list: readonly TimedKnots[], each: (one: TimedKnots) => number): number {
  return median(list.flatMap((one) => Array<number>(one.knots).fill(each(one))));
}
