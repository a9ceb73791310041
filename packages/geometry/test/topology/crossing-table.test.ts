import type { KnotKind } from '@halfhitch/core';
import { describe, expect, it } from 'vitest';
import {
  crossingsOf,
  heldCrossings,
  knotPose,
  STAGE_ENDS,
  turningNumber,
} from '../../src/index.js';

/**
 * What each knot's lead does at the held string, in order, written down from the description of the
 * half hitch (bar over, round behind, up through the loop) and not from the generator.
 */
const AFTER_FIRST: Record<KnotKind, readonly string[]> = {
  forward: ['over LR', 'under RL'],
  backward: ['over RL', 'under LR'],
  'forward-backward': ['over LR', 'under RL', 'over LR'],
  'backward-forward': ['over RL', 'under LR', 'over RL'],
};
const WHOLE: Record<KnotKind, readonly string[]> = {
  forward: ['over LR', 'under RL', 'over LR', 'under RL', 'over LR'],
  backward: ['over RL', 'under LR', 'over RL', 'under LR', 'over RL'],
  'forward-backward': ['over LR', 'under RL', 'over LR', 'over RL', 'under LR', 'over RL'],
  'backward-forward': ['over RL', 'under LR', 'over RL', 'over LR', 'under RL', 'over LR'],
};
const KINDS = Object.keys(WHOLE) as KnotKind[];

describe.each(KINDS)('%s knot', (kind) => {
  it.each([0.5, 0.8, 1, 1.4, 2])('crosses the held string as tabled, ratio %s', (heldDiameter) => {
    const table = (t: number) => {
      const pose = knotPose(kind, t, { heldDiameter });
      return heldCrossings(pose.tying, pose.held).map((c) => `${c.level} ${c.direction}`);
    };
    expect(table(0)).toEqual([]);
    expect(table(1 - 1e-6)).toEqual(AFTER_FIRST[kind]);
    expect(table(1)).toEqual(AFTER_FIRST[kind]);
    expect(table(2)).toEqual(WHOLE[kind]);
  });

  it.each([0.5, 1, 2])('has its free end through the loop before it is pulled, ratio %s', (r) => {
    for (const half of [0, 1] as const) {
      const pose = knotPose(kind, half + STAGE_ENDS['through-loop'] - 1e-6, { heldDiameter: r });
      const found = heldCrossings(pose.tying, pose.held).map((c) => `${c.level} ${c.direction}`);
      expect(found).toEqual(half === 0 ? AFTER_FIRST[kind] : WHOLE[kind]);
      // What has come through hangs down, below the place where it came up.
      const n = pose.tying.length;
      const tip = pose.tying[n - 2]!;
      const last = heldCrossings(pose.tying, pose.held).at(-1)!;
      expect(tip).toBeGreaterThan(last.y + 1);
    }
  });

  it('passes under the held string above its bar, nearer the finished work', () => {
    // In the tight knots the second bar is the riding part, which slants across the front.
    for (const t of [0.7, 1, 1.7]) {
      const { tying, held } = knotPose(kind, t);
      const found = heldCrossings(tying, held);
      const under = found.findIndex((c, i) => c.level === 'under' && (t <= 1 || i > 1));
      expect(found[under]!.y).toBeLessThan(found[under - 1]!.y);
    }
  });

  it('crosses over its own bar only when the second half starts from the same side', () => {
    const { tying, held } = knotPose(kind, 0.77);
    const same = kind === 'forward' || kind === 'backward';
    const seen = same ? aside(tying, kind) : tying;
    const own = crossingsOf(seen, held).filter((c) => c.with === 'own');
    expect(own.map((c) => c.level)).toEqual(same ? ['over'] : []);
  });
});

/** Seen a little from the side, as the hanging loop's legs are exactly behind each other. */
function aside(points: Float64Array, kind: KnotKind): Float64Array {
  const out = Float64Array.from(points);
  const side = kind.startsWith('forward') ? -0.1 : 0.1;
  for (let i = 0; i < out.length; i += 3) out[i] = out[i]! + side * out[i + 2]!;
  return out;
}

/**
 * Two half hitches in the same direction make a clove hitch, in opposite directions a cow hitch
 * (C. W. Ashley, The Ashley Book of Knots, 1944, nos 1184 and 1662-1671; D. Pawson, The Handbook of
 * Knots). Turns about the held string tell them apart: 2.5 and 0. The free end hangs down at the
 * side rather than running out level, so up to a quarter turn at each end is not on the curve.
 */
describe('turning number about the held string', () => {
  const turns = (kind: KnotKind) => turningNumber(knotPose(kind, 2).tying);
  it('is about 2.5 for clove hitches, opposite ways, and about 0 for cow hitches', () => {
    expect(Math.abs(turns('forward') - 2.5)).toBeLessThan(0.5);
    expect(Math.abs(turns('backward') + 2.5)).toBeLessThan(0.5);
    expect(Math.abs(turns('forward-backward'))).toBeLessThan(0.25);
    expect(Math.abs(turns('backward-forward'))).toBeLessThan(0.25);
  });
});
