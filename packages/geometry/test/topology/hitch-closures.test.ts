import type { KnotKind } from '@halfhitch/core';
import { describe, expect, it } from 'vitest';
import {
  closedHitch,
  determinantOf,
  diagramOf,
  finishedKnot,
  gaussLinking,
  jonesPolynomial,
  linkingNumber,
} from '../../src/index.js';

const closedBy = (kind: KnotKind, side: 'front' | 'behind', heldDiameter: number) =>
  closedHitch(finishedKnot(kind, { heldDiameter }).tying, side);

/** Two half hitches one way are a clove hitch, two opposite ones a cow hitch: same values as theirs. */
describe.each([0.5, 0.7, 1, 1.3, 2])('finished knots, held string %s times the lead', (held) => {
  it.each([
    ['forward', -1],
    ['backward', 1],
  ] as const)('%s closes like a clove hitch', (kind, hand) => {
    const front = closedBy(kind, 'front', held);
    const behind = closedBy(kind, 'behind', held);
    expect(linkingNumber(diagramOf(front))).toBe(2 * hand);
    expect(linkingNumber(diagramOf(behind))).toBe(3 * hand);
    expect(gaussLinking(front[0], front[1])).toBeCloseTo(2 * hand, 6);
    expect(gaussLinking(behind[0], behind[1])).toBeCloseTo(3 * hand, 6);
    expect(determinantOf(diagramOf(front))).toBe(12);
    expect(determinantOf(diagramOf(behind))).toBe(6);
  });

  it.each(['forward-backward', 'backward-forward'] as const)(
    '%s closes like a cow hitch',
    (kind) => {
      const link = closedBy(kind, 'front', held);
      expect(linkingNumber(diagramOf(link))).toBe(0);
      expect(determinantOf(diagramOf(link))).toBe(0);
      expect([...jonesPolynomial(diagramOf(link))].sort()).toEqual([
        [-1, -1],
        [1, -1],
      ]);
    },
  );

  it('is an unknotted thread when the held string is drawn out', () => {
    for (const kind of ['forward', 'backward-forward'] as const) {
      const [lead] = closedBy(kind, 'front', held);
      expect([...jonesPolynomial(diagramOf([lead]))]).toEqual([[0, 1]]);
    }
  });
});
