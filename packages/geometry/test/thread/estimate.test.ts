import { KNOT_KINDS } from '@halfhitch/core';
import { describe, expect, it } from 'vitest';
import { finishedKnot } from '../../src/index.js';
import { estimatedTyingLength } from '../../src/thread/estimate.js';
import { tightMeasures } from '../../src/thread/tight-measures.js';

/** Share by which the plain estimate and the tightened path may differ. */
const BAND = 0.08;

describe('length of thread in a knot', () => {
  const ratios = [0.5, 0.7, 1, 1.4, 2];

  it.each(KNOT_KINDS.flatMap((kind) => ratios.map((ratio) => [kind, ratio] as const)))(
    'agrees between wraps counted and curves tightened: %s at %d',
    (kind, ratio) => {
      const tight = finishedKnot(kind, { heldDiameter: ratio }).tyingLength;
      const estimate = estimatedTyingLength(kind, ratio);
      expect(Math.abs(estimate / tight - 1)).toBeLessThan(BAND);
    },
  );

  it('is never less than the wraps could take', () => {
    // A clove hitch goes round 2.5 times (Ashley 1944, nos 1184 and 1662 to 1671), half a turn
    // of which the neighbours share, on a circle through the middle of the thread.
    const { tying } = tightMeasures();
    for (const kind of KNOT_KINDS) expect(tying[kind]).toBeGreaterThan(2 * 2 * Math.PI);
  });

  it('makes a band about four times as long in thread as in length, as makers say', () => {
    // Common practice, no source: "cut about four times the finished length" for a lead and its
    // share of the base strings. One column: a lead's knot and a base string for each row height.
    const { tying, rowHeight, pitch } = tightMeasures();
    const perRow = (tying.forward + rowHeight) / 2;
    expect(perRow / rowHeight).toBeGreaterThan(2);
    expect(perRow / rowHeight).toBeLessThan(6);
    expect(pitch).toBeGreaterThan(2);
  });
});
