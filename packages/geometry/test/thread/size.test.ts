import { EDGE_TECHNIQUES, planAlpha, START_SIDES } from '@halfhitch/core';
import { describe, expect, it } from 'vitest';
import { Fabric } from '../../src/fabric/index.js';
import { finishedSize } from '../../src/thread/finished-size.js';
import { tightMeasures } from '../../src/thread/tight-measures.js';
import { Lengths } from '../../src/thread/usage.js';
import { piecesOf } from '../fabric/strands.js';
import { drawn } from '../support/charts.js';

describe('size of a finished piece', () => {
  it.each(EDGE_TECHNIQUES)('is that of its fabric: %s edges', (edge) => {
    const rows = Array<string>(8).fill('aaaaaaaaaaaa');
    const fabric = new Fabric(planAlpha(drawn(...rows), { edge }), { diameter: 0.6 });
    const size = finishedSize(8, 12, new Lengths(tightMeasures(edge), 0.6));
    expect(size.width / fabric.size.width).toBeCloseTo(1, 2);
    expect(size.length / fabric.size.length).toBeCloseTo(1, 2);
    expect(size.aspect / fabric.size.aspect).toBeCloseTo(1, 2);
  });

  describe.each(EDGE_TECHNIQUES)('reaches as far out as its thread does: %s edges', (edge) => {
    it.each(START_SIDES)('begun on the %s', (start) => {
      const fabric = new Fabric(planAlpha(drawn(...Array(8).fill('aaaaaaaa')), { edge, start }));
      let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
      for (const { points, radius } of piecesOf(fabric)) {
        for (let i = 0; i < points.length; i += 3) {
          // Above and below, tails of the lead reach out further than what is knotted.
          const rowsDown = Math.abs(points[i + 1] as number) / fabric.rowHeight;
          if (rowsDown < 1.5 || rowsDown > 5.5) continue;
          least = Math.min(least, (points[i] as number) - radius);
          most = Math.max(most, (points[i] as number) + radius);
        }
      }
      expect(most - least).toBeCloseTo(fabric.size.width, 1);
      expect(fabric.size.width).toBeGreaterThan(7 * fabric.pitch);
    });
  });
});
