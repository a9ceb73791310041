import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bandLength,
  type Closing,
  calibrate,
  checkSwatch,
  closingTails,
  FIT_DEFAULTS,
  FIT_LIMITS,
  knottedLength,
  tightMeasures,
  WRIST_LIMITS,
  WRIST_SIZES,
  wristFor,
} from '../../src/index.js';

const within = ({ least, most }: { least: number; most: number }): fc.Arbitrary<number> =>
  fc.double({ min: least, max: most, noNaN: true });

const anyClosing: fc.Arbitrary<Closing> = fc.oneof(
  fc.constant({ how: 'meet' as const }),
  fc.record({
    how: fc.constant('ties' as const),
    gap: within(FIT_LIMITS.gap),
    plait: within(FIT_LIMITS.plait),
  }),
  fc.record({
    how: fc.constant('loop' as const),
    loop: within(FIT_LIMITS.loop),
    plait: within(FIT_LIMITS.plait),
  }),
  fc.record({
    how: fc.constant('buckle' as const),
    buckle: within(FIT_LIMITS.buckle),
    turnOver: within(FIT_LIMITS.turnOver),
    overlap: within(FIT_LIMITS.overlap),
  }),
);

const anyWrist = fc.double({ min: WRIST_LIMITS.min, max: WRIST_LIMITS.max, noNaN: true });
const anyThickness = fc.double({ min: 0.1, max: 20, noNaN: true });

describe('a band for a wrist', () => {
  it('that meets end to end, with a finger of room, is as long as the cut list makes it', () => {
    fc.assert(
      fc.property(anyWrist, anyThickness, (wrist, thickness) => {
        const fit = {
          wrist,
          ease: FIT_DEFAULTS.ease,
          closing: { how: 'meet' },
          thickness,
        } as const;
        expect(knottedLength(fit)).toBeCloseTo(bandLength(wrist, thickness), 9);
      }),
    );
  });

  it('goes round the wrist that it was made for', () => {
    fc.assert(
      fc.property(
        anyWrist,
        anyThickness,
        within(FIT_LIMITS.ease),
        anyClosing,
        (wrist, thickness, ease, closing) => {
          const fit = { wrist, ease, closing, thickness };
          fc.pre(wristFor(1, fit) < wrist);
          expect(wristFor(knottedLength(fit), fit)).toBeCloseTo(wrist, 6);
        },
      ),
    );
  });

  it('is shorter by what ties or a loop fill, longer by what a buckle takes', () => {
    const fit = { wrist: 160, ease: 10, thickness: 2 };
    const meet = knottedLength({ ...fit, closing: { how: 'meet' } });
    expect(meet).toBeCloseTo(160 + 10 + 2 * Math.PI, 9);
    const closed = (closing: Closing): number => knottedLength({ ...fit, closing }) - meet;
    expect(closed({ how: 'ties', gap: 12, plait: 80 })).toBeCloseTo(-12, 9);
    expect(closed({ how: 'loop', loop: 9, plait: 80 })).toBeCloseTo(-9, 9);
    const buckle = { how: 'buckle', buckle: 8, turnOver: 15, overlap: 40 } as const;
    expect(closed(buckle)).toBeCloseTo(47, 9);
  });

  it('has tails enough for its plaits', () => {
    fc.assert(
      fc.property(anyClosing, (closing) => {
        const { first, last } = closingTails(closing);
        if ('plait' in closing) expect(last).toBeGreaterThan(closing.plait);
        if (closing.how === 'ties') expect(first).toBe(last);
        if (closing.how === 'loop') expect(first).toBeGreaterThan(2 * closing.loop);
      }),
    );
  });

  it('is refused for a wrist that cannot be, and when nothing is left to knot', () => {
    const fit = { ease: 0, closing: { how: 'meet' }, thickness: 1 } as const;
    for (const wrist of [0, 79, 301, Number.NaN]) {
      expect(() => knottedLength({ ...fit, wrist })).toThrow(/cannot be right/);
    }
    const all: Closing = { how: 'ties', gap: 100, plait: 0 };
    expect(() => knottedLength({ ...fit, wrist: 80, closing: all })).toThrow(/all the way round/);
  });

  it('comes in sizes that can be knotted, the small children among them marked', () => {
    for (const { wrist, who, smallChild } of WRIST_SIZES) {
      expect(wrist).toBeGreaterThanOrEqual(WRIST_LIMITS.min);
      expect(wrist).toBeLessThanOrEqual(WRIST_LIMITS.max);
      expect(smallChild).toBe(who === 'Child, 3 to 5 years');
    }
    // 5th and 95th percentile of a normal distribution: mean -+ 1.645 standard deviations.
    const adults = [
      ['Woman', 155, 7.6],
      ['Man', 176, 8.9],
    ] as const;
    for (const [who, mean, deviation] of adults) {
      const sizes = WRIST_SIZES.filter((size) => size.who.startsWith(who));
      const percentiles = [-1.645, 0, 1.645].map((z) => Math.round(mean + z * deviation));
      expect(sizes.map(({ wrist }) => wrist)).toEqual(percentiles);
    }
  });
});

describe('a swatch beside what its thread should have given', () => {
  const measures = tightMeasures('straight');

  it('differs by nothing where it is just that', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 4, noNaN: true }),
        fc.integer({ min: 2, max: 60 }),
        fc.integer({ min: 2, max: 60 }),
        fc.double({ min: 0.7, max: 1.4, noNaN: true }),
        (diameter, rows, columns, bigger) => {
          const width = bigger * diameter * (columns * measures.pitch + (measures.edges ?? 0));
          const length = bigger * diameter * rows * measures.rowHeight;
          const swatch = { rows, columns, width, length };
          const check = checkSwatch(swatch, measures, diameter, 0.1);
          expect(check.width.difference).toBeCloseTo(bigger - 1, 9);
          expect(check.length.difference).toBeCloseTo(bigger - 1, 9);
          expect(check.width.predicted * bigger).toBeCloseTo(width, 6);
          if (Math.abs(bigger - 1) < 0.099) expect(check.width.within).toBe(true);
          if (Math.abs(bigger - 1) > 0.101) expect(check.length.within).toBe(false);
          // The calibration says the same: the thread works up so much thicker.
          expect(calibrate(swatch, measures).diameter).toBeCloseTo(bigger * diameter, 6);
        },
      ),
    );
  });
});
