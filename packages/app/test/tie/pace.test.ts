import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TimedKnots } from '../../src/store/progress.js';
import { BreakClock } from '../../src/tie/break-clock.js';
import { ENOUGH_KNOTS, median, PAUSE, paceOf, secondsFor, timed } from '../../src/tie/pace.js';
import { aboutTime } from '../../src/tie/time-words.js';

const one = (seconds: number, knots = 1, changes = 0): TimedKnots => ({ seconds, knots, changes });
const many = (count: number, timedAs: TimedKnots): TimedKnots[] => Array(count).fill(timedAs);

describe('the pace', () => {
  it('is none until enough knots were timed', () => {
    expect(paceOf([])).toBeNull();
    expect(paceOf(many(ENOUGH_KNOTS - 1, one(10)))).toBeNull();
    expect(paceOf(many(ENOUGH_KNOTS, one(10)))).toMatchObject({ halfHitch: 5, knots: 12 });
  });

  it('supposes that a change takes another knot’s time, until three were timed', () => {
    const few = [...many(12, one(10)), ...many(2, one(50, 1, 1))];
    expect(paceOf(few)).toEqual({ halfHitch: 5, change: 10, knots: 14, changes: 0 });
    const enough = [...many(12, one(10)), ...many(3, one(50, 1, 1))];
    expect(paceOf(enough)).toEqual({ halfHitch: 5, change: 40, knots: 15, changes: 3 });
  });

  it('can be told from whole rows that are counted at once, changes and all', () => {
    const pace = paceOf(many(3, one(120, 10, 2)));
    expect(pace).toMatchObject({ halfHitch: 5, change: 10, changes: 0 });
    expect(secondsFor(pace as NonNullable<typeof pace>, 20, 2)).toBeCloseTo(120);
  });

  it('does not mind a few long knots, nor the order, and grows with its times', () => {
    const seconds = fc.double({ min: 2, max: 60, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(seconds, { minLength: 15, maxLength: 60 }),
        fc.array(fc.double({ min: 60, max: PAUSE, noNaN: true }), { maxLength: 4 }),
        fc.double({ min: 1.1, max: 3, noNaN: true }),
        (usual, long, times) => {
          const all = [...usual, ...long].map((value) => one(value));
          const pace = paceOf(all)?.halfHitch ?? 0;
          expect(2 * pace).toBeLessThanOrEqual(Math.max(...usual));
          expect(2 * pace).toBeGreaterThanOrEqual(Math.min(...usual));
          expect(paceOf([...all].reverse())?.halfHitch).toBeCloseTo(pace);
          const slower = all.map((entry) => one(entry.seconds * times));
          expect(paceOf(slower)?.halfHitch).toBeCloseTo(pace * times);
        },
      ),
    );
  });

  it('follows the latest knots', () => {
    expect(paceOf([...many(100, one(30)), ...many(80, one(6))])?.halfHitch).toBe(3);
  });
});

describe('times', () => {
  it('of a pause, or that run backwards, are left out', () => {
    const before = [one(8)];
    for (const seconds of [PAUSE + 1, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(timed(before, seconds, 1, 0)).toBe(before);
    }
    // A row of ten may take as long as ten knots.
    expect(timed(before, 5 * PAUSE, 10, 0)).toEqual([one(8), one(5 * PAUSE, 10)]);
  });

  it('of knots counted in quick succession are those of knots tied together', () => {
    let times: readonly TimedKnots[] = [];
    for (const seconds of [30, 0.3, 0.4, 12]) times = timed(times, seconds, 1, 0);
    expect(times).toEqual([{ seconds: 30.7, knots: 3, changes: 0 }, one(12)]);
  });
});

describe('a median', () => {
  it.each([
    [[], 0],
    [[4], 4],
    [[9, 1], 5],
    [[7, 1, 100], 7],
  ])('of %j is %d', (values, expected) => {
    expect(median(values)).toBe(expected);
  });
});

describe('a length of time in words', () => {
  it.each([
    [0, 'a minute'],
    [75, 'a minute'],
    [100, '2 minutes'],
    [19.4 * 60, '19 minutes'],
    [33 * 60, '35 minutes'],
    [59 * 60, '1 hour'],
    [60 * 60, '1 hour'],
    [74 * 60, '1 h 10 min'],
    [119 * 60, '2 hours'],
    [7.2 * 3600, '7 hours'],
    [7.4 * 3600, '7 h 30 min'],
    [30 * 3600, '30 hours'],
    [1e7, '2,778 hours'],
  ])('%d s: %s', (seconds, words) => {
    expect(aboutTime(seconds)).toBe(words);
  });
});

describe('the clock of rests', () => {
  const knots = (clock: BreakClock, count: number, seconds = 20): void => {
    for (let i = 0; i < count; i++) clock.tied(seconds, PAUSE);
  };

  it('calls after so many minutes of knotting, pauses left out', () => {
    const clock = new BreakClock(20);
    knots(clock, 59);
    clock.tied(PAUSE + 60, PAUSE);
    expect(clock.due).toBe(false);
    expect(clock.minutes).toBe(19);
    knots(clock, 1);
    expect(clock.due).toBe(true);
    clock.rested();
    expect(clock.due).toBe(false);
  });

  it('takes a long pause for a rest', () => {
    const clock = new BreakClock(20);
    knots(clock, 59);
    clock.tied(BreakClock.REST, PAUSE);
    expect(clock.minutes).toBe(0);
  });

  it('can be put off, and calls never when told so', () => {
    const clock = new BreakClock(20);
    knots(clock, 66);
    clock.later(5);
    expect(clock.due).toBe(false);
    knots(clock, 14);
    expect(clock.due).toBe(false);
    knots(clock, 1);
    expect(clock.due).toBe(true);
    const never = new BreakClock(0);
    knots(never, 1000);
    expect(never.due).toBe(false);
  });
});
