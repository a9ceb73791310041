import { EDGE_TECHNIQUES, planAlpha } from '@halfhitch/core';
import { describe, expect, it } from 'vitest';
import { lengthOf } from '../../src/curve/polyline.js';
import { Fabric } from '../../src/fabric/fabric.js';
import { tightMeasures } from '../../src/thread/tight-measures.js';
import { Lengths, usageOf } from '../../src/thread/usage.js';
import { drawn } from '../support/charts.js';
import { ALL_CHANGES, piecesOf } from './strands.js';

const PLAIN = Array<string>(12).fill('aaaaaaaa');
const BANDS = Array<string>(9).fill('aaabbbaaa');

/** How far the fabric's own length may be from the sum of measures, by what is knotted. */
const WITHIN = { plain: 0.002, changes: 0.06 } as const;

describe('thread in a fabric', () => {
  it.each([
    ['plain', PLAIN, WITHIN.plain],
    ['bands', BANDS, WITHIN.changes],
    ['all changes', ALL_CHANGES, WITHIN.changes],
  ] as const)('is as long as the measures say: %s', (_name, rows, within) => {
    for (const edge of EDGE_TECHNIQUES) {
      const plan = planAlpha(drawn(...rows), { edge });
      const pieces = piecesOf(new Fabric(plan));
      for (const use of usageOf(plan, new Lengths(tightMeasures(edge), 1))) {
        const real = pieces
          .filter(({ string, part }) => string === use.string && part !== 'tail')
          .reduce((sum, { points }) => sum + lengthOf(points), 0);
        const said = use.knots + use.travel + use.floats + use.hanging;
        expect(Math.abs(said / real - 1)).toBeLessThan(within);
      }
    }
  });

  it('is as wide and long as the measures say', () => {
    for (const edge of EDGE_TECHNIQUES) {
      const { size } = new Fabric(planAlpha(drawn(...PLAIN), { edge }));
      const measures = tightMeasures(edge);
      expect(size.length).toBeCloseTo(12 * measures.rowHeight, 6);
      expect(size.thickness).toBeCloseTo(measures.thickness, 6);
    }
  });
});
