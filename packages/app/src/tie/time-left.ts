import type { Progress } from '../store/progress.js';
import { ENOUGH_KNOTS, type Pace, paceOf, secondsFor } from './pace.js';
import { aboutTime } from './time-words.js';

/** What is still to be tied. */
export interface Left {
  readonly knots: number;
  readonly changes: number;
}

export interface TimeLeft {
  /** "About 2 h 10 min"; null where nothing can be said yet. */
  readonly about: string | null;
  /** What it is told from, or what it waits for. */
  readonly from: string;
}

/** How long the rest takes at the maker's own pace. */
export function timeLeft(times: Progress['times'], left: Left): TimeLeft {
  const pace = paceOf(times);
  if (pace === null) {
    const knots = times.reduce((total, one) => total + one.knots, 0);
    return {
      about: null,
      from: `The time left is told from your own pace, once ${ENOUGH_KNOTS} knots have been timed: ${knots} so far.`,
    };
  }
  const seconds = secondsFor(pace, 2 * left.knots, left.changes);
  return { about: `About ${aboutTime(seconds)}`, from: paceInWords(pace) };
}

function paceInWords({ halfHitch, change, knots, changes }: Pace): string {
  const half = `${tenths(halfHitch)} seconds for a half hitch`;
  const from = `your last ${knots} knots, pauses left out`;
  return changes > 0
    ? `From ${from}: ${half}, and ${Math.round(change)} more for a colour change.`
    : `From ${from}: ${half}. A colour change is counted as one knot more until some have been timed.`;
}

function tenths(seconds: number): string {
  return seconds < 10 ? (Math.round(seconds * 10) / 10).toString() : Math.round(seconds).toString();
}
