import { KNOT_KINDS, planAlpha, readTextChart, verifyPlan } from '@halfhitch/core';
import { expect, it } from 'vitest';
import { drawSample, kindsOf } from '../../src/picture/knotted.js';
import { IN_SAMPLE, SAMPLE } from '../../src/picture/sample.js';

it('has each kind of knot in the sample where it is looked for', () => {
  const { rows, columns } = SAMPLE;
  const chart = {
    name: '',
    rows,
    columns,
    colours: [{ key: 'a', hex: '#1f6fb2', name: '' }],
    cells: new Uint8Array(rows * columns),
  };
  const kinds = kindsOf(chart, { edge: 'straight', start: 'left' });
  for (const kind of KNOT_KINDS) {
    const { row, column } = IN_SAMPLE[kind];
    expect(KNOT_KINDS[kinds?.[row * columns + column] as number]).toBe(kind);
  }
  expect(drawSample('#1f6fb2')).toContain('#1f6fb2');
});

it('gives the kinds that the plan is proven to tie, and none for a very large chart', () => {
  const { chart } = readTextChart('name Heron\na #1f6fb2\nb #f4f1e8\n\nabab\nbbaa\naaab\n');
  const choice = { edge: 'wrapped', start: 'right' } as const;
  expect(kindsOf(chart, choice)).toEqual(verifyPlan(planAlpha(chart, choice), chart).kinds);
  const large = { ...chart, rows: 10_000, cells: new Uint8Array(40_000) };
  expect(kindsOf(large, choice)).toBeNull();
});
