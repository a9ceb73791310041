import { planAlpha } from '@halfhitch/core';
import { describe, expect, it } from 'vitest';
import { Fabric } from '../../src/fabric/index.js';
import { finishedSize } from '../../src/thread/finished-size.js';
import { tightMeasures } from '../../src/thread/tight-measures.js';
import { Lengths } from '../../src/thread/usage.js';
import { drawn } from '../support/charts.js';

describe('size of a finished piece', () => {
  it.each(['straight', 'wrapped'] as const)('is that of its fabric: %s edges', (edge) => {
    const rows = Array<string>(8).fill('aaaaaaaaaaaa');
    const fabric = new Fabric(planAlpha(drawn(...rows), { edge }), { diameter: 0.6 });
    const size = finishedSize(8, 12, new Lengths(tightMeasures(edge), 0.6));
    expect(size.width / fabric.size.width).toBeCloseTo(1, 2);
    expect(size.length / fabric.size.length).toBeCloseTo(1, 2);
    expect(size.aspect / fabric.size.aspect).toBeCloseTo(1, 2);
  });
});
